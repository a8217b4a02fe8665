import { useState } from 'react';
import { adviceFor, judgePlace, type PlaceMeasured } from '../../listening/sound/judge-place.ts';
import { type CheckStep, TEST_NUMBER } from '../session/sound-check.ts';
import type { VisitSession } from '../session/visit-session.ts';
import { Sheet } from './sheet.tsx';

interface SoundCheckSheetProps {
  readonly session: VisitSession;
  readonly onClose: () => void;
}

type Stage = 'ready' | CheckStep | { readonly measured: PlaceMeasured } | 'impossible';

const ASKED: Readonly<Record<CheckStep, string>> = {
  quiet: 'Be quiet for a moment: listening to the place.',
  echo: 'Listening to this device’s own voice.',
  number: `Now say: “${TEST_NUMBER}”`,
};

/** Listens to the place, to the own voice and to a test number; says what hinders and what to do. */
export function SoundCheckSheet({ session, onClose }: SoundCheckSheetProps) {
  const [stage, setStage] = useState<Stage>('ready');
  const begin = async () => {
    const measured = await session.checkSound(setStage);
    setStage(measured === undefined ? 'impossible' : { measured });
  };
  const running = stage === 'quiet' || stage === 'echo' || stage === 'number';
  return (
    <Sheet title="Sound check" onClose={onClose}>
      <h2>Sound check</h2>
      <div role="status" data-check={typeof stage === 'string' ? stage : 'done'}>
        {stage === 'ready' ? (
          <p>It takes ten seconds: the place, this device’s voice, and a number that you say.</p>
        ) : null}
        {running ? <p className="check-asked">{ASKED[stage]}</p> : null}
        {stage === 'impossible' ? (
          <p>The sound cannot be measured: switch the ear on with our own recogniser first.</p>
        ) : null}
        {typeof stage === 'object' ? <Found measured={stage.measured} /> : null}
      </div>
      <div className="keys">
        <button type="button" className="key first" onClick={() => void begin()} disabled={running}>
          {stage === 'ready' ? 'Begin' : 'Again'}
        </button>
        <button type="button" className="key" onClick={onClose}>
          Back
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
        <Figure name="the place" db={floorDb} />
        {speechDb === undefined ? null : <Figure name="your voice" db={speechDb} over={floorDb} />}
        {echoDb === undefined ? null : <Figure name="this device’s voice" db={echoDb} over={floorDb} />}
      </dl>
      {faults.length === 0 ? <p>The number was heard as said. Nothing here hinders hearing just now.</p> : null}
      <ul>
        {faults.map((fault) => (
          <li key={fault} data-place-fault={fault}>
            {adviceFor(fault)}
          </li>
        ))}
      </ul>
    </>
  );
}

function Figure({ name, db, over }: { readonly name: string; readonly db: number; readonly over?: number }) {
  const above =
    over === undefined ? '' : `, ${Math.round(Math.max(LEAST_DB, db) - Math.max(LEAST_DB, over))} dB over it`;
  return (
    <div className="check-figure">
      <dt>{name}</dt>
      <dd>
        {showDb(db)} dBFS{above}
      </dd>
    </div>
  );
}

/** The quietest that 16 bits can tell. */
const LEAST_DB = -96;

/** With a minus sign that is read as one. */
function showDb(db: number): string {
  return `${Math.round(Math.max(LEAST_DB, db))}`.replace('-', '−');
}
