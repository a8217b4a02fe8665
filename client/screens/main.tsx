import './theme.css';
import { lazy, StrictMode, Suspense } from 'react';
import { createRoot } from 'react-dom/client';
import { PAGE } from '../words/pages/page-words.ts';
import { readAhead } from './review/read-held.ts';
import { keepForOffline } from './session/keep-for-offline.ts';
import { showBySettings } from './session/screen-settings.ts';
import { Mishap } from './show/mishap.tsx';

/** Each page is fetched where it is asked for: a technician's phone does not carry the review, nor a desk the ear. */
const TechnicianPage = lazy(() =>
  import('./technician/technician-page.tsx').then((module) => ({ default: module.TechnicianPage })),
);
const ReviewPage = lazy(() => import('./review/review-page.tsx').then((module) => ({ default: module.ReviewPage })));

const FleetPage = lazy(() => import('./review/fleet-page.tsx').then((module) => ({ default: module.FleetPage })));
const SignInPage = lazy(() => import('./people/sign-in-page.tsx').then((module) => ({ default: module.SignInPage })));
const PairPage = lazy(() => import('./people/pair-page.tsx').then((module) => ({ default: module.PairPage })));
const PracticePage = lazy(() =>
  import('./practice/practice-page.tsx').then((module) => ({ default: module.PracticePage })),
);
const PeoplePage = lazy(() => import('./people/people-page.tsx').then((module) => ({ default: module.PeoplePage })));

/** The pages that are fetched where they are asked for, by the beginning of their address. */
const ASKED_FOR = [
  ['/review', ReviewPage],
  ['/fleet', FleetPage],
  ['/sign-in', SignInPage],
  ['/pair', PairPage],
  ['/people', PeoplePage],
  ['/practice', PracticePage],
] as const;

const [, Shown = TechnicianPage] = ASKED_FOR.find(([address]) => location.pathname.startsWith(address)) ?? [];

function Page() {
  return (
    <Suspense fallback={<p className="quiet">{PAGE.loading}</p>}>
      <Shown />
    </Suspense>
  );
}

/** A visit in the review is asked for at once: its events are on their way while its program is. */
const watched = Shown === ReviewPage ? new URLSearchParams(location.search).get('visit') : null;
if (watched !== null) readAhead(watched);

showBySettings();
const place = document.getElementById('page');
if (place === null) throw new Error('index.html has no place for the page');
createRoot(place).render(
  <StrictMode>
    <Mishap>
      <Page />
    </Mishap>
  </StrictMode>,
);
keepForOffline();
// Beside another page it waits until that is drawn.
if (Shown === TechnicianPage) void sendUnsent();
else setTimeout(sendUnsent, 5_000);

/** What this device has not sent goes out whatever page is open; who reads a review does not wait for its program. */
async function sendUnsent(): Promise<void> {
  const [{ sendInBackground }, { THIS_DEVICE }] = await Promise.all([
    import('./session/send-in-background.ts'),
    import('./session/this-device.ts'),
  ]);
  sendInBackground(THIS_DEVICE);
}
