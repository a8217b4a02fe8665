import './theme.css';
import { lazy, StrictMode, Suspense } from 'react';
import { createRoot } from 'react-dom/client';
import { PAGE } from '../words/pages/page-words.ts';
import { readAhead } from './review/read-held.ts';
import { keepForOffline } from './session/keep-for-offline.ts';
import { showBySettings } from './session/screen-settings.ts';
import { Mishap } from './show/mishap.tsx';

/** Each page is fetched where it is asked for: a technician's phone does not carry the review, nor a desk the ear. */
const technician = () =>
  import('./technician/technician-page.tsx').then((module) => ({ default: module.TechnicianPage }));
const review = () => import('./review/review-page.tsx').then((module) => ({ default: module.ReviewPage }));

/** The other pages, by the beginning of their address. */
const ASKED_FOR = [
  ['/review', review],
  ['/fleet', () => import('./review/fleet-page.tsx').then((module) => ({ default: module.FleetPage }))],
  ['/sign-in', () => import('./people/sign-in-page.tsx').then((module) => ({ default: module.SignInPage }))],
  ['/pair', () => import('./people/pair-page.tsx').then((module) => ({ default: module.PairPage }))],
  ['/people', () => import('./people/people-page.tsx').then((module) => ({ default: module.PeoplePage }))],
  ['/practice', () => import('./practice/practice-page.tsx').then((module) => ({ default: module.PracticePage }))],
] as const;

const [, shown = technician] = ASKED_FOR.find(([address]) => location.pathname.startsWith(address)) ?? [];

/** A visit in the review is asked for before all else: its events are on their way while its program is. */
const watched = shown === review ? new URLSearchParams(location.search).get('visit') : null;
if (watched !== null) readAhead(watched);

const fetched = shown();
const Shown = lazy(() => fetched);

function Page() {
  return (
    <Suspense fallback={<p className="quiet">{PAGE.loading}</p>}>
      <Shown />
    </Suspense>
  );
}

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
if (shown === technician) void sendUnsent();
else setTimeout(sendUnsent, 5_000);

/** What this device has not sent goes out whatever page is open; who reads a review does not wait for its program. */
async function sendUnsent(): Promise<void> {
  const [{ sendInBackground }, { THIS_DEVICE }] = await Promise.all([
    import('./session/send-in-background.ts'),
    import('./session/this-device.ts'),
  ]);
  sendInBackground(THIS_DEVICE);
}
