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

function Page() {
  if (!location.pathname.startsWith('/review')) return <TechnicianPage />;
  return (
    <Suspense fallback={<p className="quiet">{PAGE.loadingReview}</p>}>
      <ReviewPage />
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
