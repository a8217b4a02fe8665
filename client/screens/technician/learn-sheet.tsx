import { useEffect, useRef, useState } from 'react';
import type { SaidAloud } from '../../listening/profile/as-heard.ts';
import type { Learnt } from '../../listening/profile/learn-voice.ts';
import { forgetVoice, type KeptVoice, keepVoice, readKeptVoice } from '../../listening/worker/kept-voice.ts';
import type { LearnNews, LearnOrder } from '../../listening/worker/learn-messages.ts';
import { PAGE } from '../../words/pages/page-words.ts';
import { LEARN } from '../../words/pages/sound-words.ts';
import { FEWEST_READ, READ_ALOUD } from '../../words/talk/read-aloud-words.ts';
import { readSoundSettings } from '../session/sound-settings.ts';
import type { VisitSession } from '../session/visit-session.ts';
import { Sheet } from './sheet.tsx';

interface LearnSheetProps {
  readonly session: VisitSession;
  readonly onClose: () => void;
}

type Stage =
  | { readonly stage: 'ready' | 'forgotten' | 'impossible' | 'unheard' }
  | { readonly stage: 'reading'; readonly index: number }
  | { readonly stage: 'working'; readonly share: number }
  | { readonly stage: 'learnt'; readonly learnt: Learnt; readonly kept: boolean }
  | { readonly stage: 'failed'; readonly detail: string };

/** Somebody reads aloud, and the ear of this device learns how they say it: what that brings is told before it is used. */
export function LearnSheet({ session, onClose }: LearnSheetProps) {
  const [stage, setStage] = useState<Stage>({ stage: 'ready' });
  const [kept, setKept] = useState<KeptVoice>();
  const press = useRef<'repeat' | 'enough' | undefined>(undefined);
  const worker = useRef<Worker | undefined>(undefined);
  const gone = useRef(false);
  useEffect(() => {
    gone.current = false;
    readKeptVoice().then(setKept, () => undefined);
    return () => {
      gone.current = true;
      press.current = 'enough';
      worker.current?.terminate();
    };
  }, []);

  const begin = async () => {
    press.current = undefined;
    const read = await session.talk.readAloud(READ_ALOUD, {
      ask: (index) => setStage({ stage: 'reading', index }),
      pressed: () => {
        const pressed = press.current;
        press.current = undefined;
        return pressed;
      },
    });
    if (gone.current) return;
    if (typeof read === 'string') return setStage({ stage: read });
    if (read.length < FEWEST_READ) return setStage({ stage: 'unheard' });
    setStage({ stage: 'working', share: 0 });
    learn(read);
  };
  const learn = (read: readonly SaidAloud[]) => {
    const learning = new Worker(new URL('../../listening/worker/learn-worker.ts', import.meta.url), { type: 'module' });
    worker.current = learning;
    learning.onerror = ({ message }) => setStage({ stage: 'failed', detail: message });
    learning.onmessage = async ({ data }: MessageEvent<LearnNews>) => {
      if (data.news === 'share') return setStage({ stage: 'working', share: data.share });
      learning.terminate();
      if (data.news === 'fault') return setStage({ stage: 'failed', detail: data.detail });
      const { learnt } = data;
      const helps = learnt.after > learnt.before;
      if (helps) await keepVoice({ ...learnt, learntAt: Date.now() });
      setKept(await readKeptVoice());
      setStage({ stage: 'learnt', learnt, kept: helps });
    };
    learning.postMessage({ models: readSoundSettings().models, read } satisfies LearnOrder);
  };
  const forget = async () => {
    await forgetVoice();
    setKept(undefined);
    setStage({ stage: 'forgotten' });
  };

  const busy = stage.stage === 'reading' || stage.stage === 'working';
  return (
    <Sheet title={LEARN.title} onClose={onClose}>
      <h2>{LEARN.title}</h2>
      <div role="status" data-learn={stage.stage}>
        <Told stage={stage} />
        {kept === undefined || busy || stage.stage === 'learnt' ? null : <Kept voice={kept} />}
      </div>
      <div className="keys">
        {stage.stage === 'reading' ? (
          <Reading
            index={stage.index}
            onPress={(pressed) => {
              press.current = pressed;
            }}
          />
        ) : null}
        {busy ? null : (
          <button type="button" className="key first" onClick={() => void begin()}>
            {stage.stage === 'ready' ? LEARN.begin : LEARN.again}
          </button>
        )}
        {kept === undefined || busy ? null : (
          <button type="button" className="key" onClick={() => void forget()}>
            {LEARN.forget}
          </button>
        )}
        <button type="button" className="key" onClick={onClose}>
          {PAGE.back}
        </button>
      </div>
    </Sheet>
  );
}

function Told({ stage }: { readonly stage: Stage }) {
  switch (stage.stage) {
    case 'ready':
      return <p>{LEARN.ready}</p>;
    case 'forgotten':
      return <p>{LEARN.forgotten}</p>;
    case 'impossible':
      return <p>{LEARN.needsOffline}</p>;
    case 'unheard':
      return <p>{LEARN.noSound}</p>;
    case 'failed':
      return <p>{LEARN.failed(stage.detail)}</p>;
    case 'working':
      return <p>{LEARN.working(stage.share)}</p>;
    case 'reading':
      return (
        <>
          <p className="quiet">
            {LEARN.sayNow} · {LEARN.place(stage.index + 1, READ_ALOUD.length)}
          </p>
          <p className="check-asked" data-read-aloud={stage.index}>
            {READ_ALOUD[stage.index]?.words}
          </p>
        </>
      );
    case 'learnt':
      return (
        <>
          <p data-before={stage.learnt.before} data-after={stage.learnt.after} data-of={stage.learnt.of}>
            {LEARN.gained(stage.learnt.before, stage.learnt.after, stage.learnt.of)}
          </p>
          <p>{stage.kept ? LEARN.kept : LEARN.notKept}</p>
        </>
      );
  }
}

function Kept({ voice: { learntAt, before, after, of } }: { readonly voice: KeptVoice }) {
  const day = new Date(learntAt).toLocaleDateString('en', { dateStyle: 'medium' });
  return (
    <p className="quiet" data-kept>
      {LEARN.since(day)} {LEARN.gained(before, after, of)}
    </p>
  );
}

interface ReadingProps {
  readonly index: number;
  readonly onPress: (pressed: 'repeat' | 'enough') => void;
}

function Reading({ index, onPress }: ReadingProps) {
  const more = FEWEST_READ - index;
  return (
    <>
      <button type="button" className="key" disabled={index === 0} onClick={() => onPress('repeat')}>
        {LEARN.repeat}
      </button>
      <button type="button" className="key" disabled={more > 0} onClick={() => onPress('enough')}>
        {LEARN.enough}
        {more > 0 ? <small>{LEARN.tooFew(more)}</small> : null}
      </button>
    </>
  );
}
