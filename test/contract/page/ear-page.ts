import { BrowserEar, browserRecogniser } from '../../../client/listening/browser/browser-ear.ts';
import { MicrophoneEar } from '../../../client/listening/browser/microphone-ear.ts';
import type { PageEar } from '../../../client/listening/browser/page-ear.ts';
import type { EarFault, Utterance } from '../../../client/listening/ear.ts';

const MAKES: Readonly<Record<'offline' | 'browser', () => PageEar>> = {
  offline: () => new MicrophoneEar(() => undefined),
  browser: () =>
    new BrowserEar({
      recogniser: browserRecogniser(),
      onlyHere: false,
      changed: () => undefined,
      now: () => performance.now(),
    }),
};

/** An ear in a real page, for a test that stands outside it. */
const page = {
  ear: undefined as PageEar | undefined,
  utterances: [] as Utterance[],
  faults: [] as [EarFault, string][],

  make(kind: 'offline' | 'browser'): void {
    page.ear = MAKES[kind]();
  },

  async start(): Promise<void> {
    await page.ear?.start({
      onUtterance: (utterance) => page.utterances.push(utterance),
      onFault: (fault, detail) => page.faults.push([fault, detail]),
    });
  },
};

export type EarPage = typeof page;
Object.assign(globalThis, { earPage: page });
