import { useState } from 'react';
import { judgePlace, type PlaceMeasured } from '../../listening/sound/judge-place.ts';
import { PAGE } from '../../words/pages/page-words.ts';
import { PLACE_ADVICE, SOUND_CHECK } from '../../words/pages/sound-words.ts';
import type { CheckStep } from '../session/sound-check.ts';
import type { VisitSession } from '../session/visit-session.ts';
import { Sheet } from './sheet.tsx';

interface SoundCheckSheetProps {
  readonly session: VisitSession;
  readonly onClose: () => void;
}

type Stage = 'ready' | CheckStep | { readonly measured: PlaceMeasured } | 'impossible';

/** Listens to the place, to the own voice and to a test number; says what hinders and what to do. */
export function SoundCheckSheet({ session, onClose }: SoundCheckSheetProps) {
  const [stage, setStage] = useState<Stage>('ready');
  const begin = async () => {
    const measured = await session.talk.checkSound(setStage);
    setStage(measured === undefined ? 'impossible' : { measured });
  };
  const running = stage === 'quiet' || stage === 'echo' || stage === 'number';
  return (
    <Sheet title={SOUND_CHECK.title} onClose={onClose}>
      <h2>{SOUND_CHECK.title}</h2>
      <div role="status" data-check={typeof stage === 'string' ? stage : 'done'}>
        {stage === 'ready' ? <p>{SOUND_CHECK.ready}</p> : null}
        {running ? <p className="check-asked">{SOUND_CHECK.asked[stage]}</p> : null}
        {stage === 'impossible' ? <p>{SOUND_CHECK.impossible}</p> : null}
        {typeof stage === 'object' ? <Found measured={stage.measured} /> : null}
      </div>
      <div className="keys">
        <button type="button" className="key first" onClick={() => void begin()} disabled={running}>
          {stage === 'ready' ? SOUND_CHECK.begin : SOUND_CHECK.again}
        </button>
        <button type="button" className="key" onClick={onClose}>
          {PAGE.back}
        </button>
      </div>
    </Sheet>
  );
}

function Found({ measured }: { readonly measured: PlaceMeasured }) {
  const faults = judgePlace(measured);
  const { floorDb, speechDb, echoDb } = measured;
  return (
    <>
      <dl className="check-figures">
        <Figure title={SOUND_CHECK.place} db={floorDb} />
        {speechDb === undefined ? null : <Figure title={SOUND_CHECK.yourVoice} db={speechDb} over={floorDb} />}
        {echoDb === undefined ? null : <Figure title={SOUND_CHECK.ownVoice} db={echoDb} over={floorDb} />}
      </dl>
      {faults.length === 0 ? <p>{SOUND_CHECK.fine}</p> : null}
      <ul>
        {faults.map((fault) => (
          <li key={fault} data-place-fault={fault}>
            {PLACE_ADVICE[fault]}
          </li>
        ))}
      </ul>
    </>
  );
}

function Figure({ title, db, over }: { readonly title: string; readonly db: number; readonly over?: number }) {
  const heard = Math.max(LEAST_DB, db);
  const above = over === undefined ? undefined : Math.round(heard - Math.max(LEAST_DB, over));
  return (
    <div className="check-figure">
      <dt>{title}</dt>
      <dd>{SOUND_CHECK.level(Math.round(heard), above)}</dd>
    </div>
  );
}

/** The quietest that 16 bits can tell. */
const LEAST_DB = -96;
