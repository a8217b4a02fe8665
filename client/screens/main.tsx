import './theme.css';
import { lazy, StrictMode, Suspense } from 'react';
import { createRoot } from 'react-dom/client';
import { PAGE } from '../words/pages/page-words.ts';
import { keepForOffline } from './session/keep-for-offline.ts';
import { showBySettings } from './session/screen-settings.ts';
import { sendInBackground } from './session/send-in-background.ts';
import { THIS_DEVICE } from './session/this-device.ts';
import { Mishap } from './show/mishap.tsx';
import { TechnicianPage } from './technician/technician-page.tsx';

/** Fetched only where it is asked for: a technician's phone does not carry it. */
const ReviewPage = lazy(() => import('./review/review-page.tsx').then((module) => ({ default: module.ReviewPage })));

const SignInPage = lazy(() => import('./people/sign-in-page.tsx').then((module) => ({ default: module.SignInPage })));
const PairPage = lazy(() => import('./people/pair-page.tsx').then((module) => ({ default: module.PairPage })));
const PracticePage = lazy(() =>
  import('./practice/practice-page.tsx').then((module) => ({ default: module.PracticePage })),
);
const PeoplePage = lazy(() => import('./people/people-page.tsx').then((module) => ({ default: module.PeoplePage })));

/** The pages that are fetched where they are asked for, by the beginning of their address. */
const ASKED_FOR = [
  ['/review', ReviewPage],
  ['/sign-in', SignInPage],
  ['/pair', PairPage],
  ['/people', PeoplePage],
  ['/practice', PracticePage],
] as const;

function Page() {
  const [, Asked] = ASKED_FOR.find(([address]) => location.pathname.startsWith(address)) ?? [];
  if (Asked === undefined) return <TechnicianPage />;
  return (
    <Suspense fallback={<p className="quiet">{PAGE.loading}</p>}>
      <Asked />
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
sendInBackground(THIS_DEVICE);
