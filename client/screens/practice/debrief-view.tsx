import { useRef, useState } from 'react';
import { type RunLookedBack, stopsOf } from '../../practice/debrief.ts';
import { capital } from '../../words/capital.ts';
import { COUNT_NAMES, type CountName, DEBRIEF } from '../../words/practice/debrief-words.ts';
import { STOP_WORDS } from '../../words/practice/exercise-words.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { placeWords } from '../../words/things/place-words.ts';
import type { Looked } from './practice-session.ts';
import { RunReplay, type ShownPlace } from './run-replay.tsx';

interface DebriefViewProps {
  readonly looked: Looked;
  readonly name: string;
  readonly onAgain: () => void;
  readonly onLeave: () => void;
}

/** The debrief: near misses before anything else, counts that are never added up, both runs test by test and replayed. */
export function DebriefView({ looked, name, onAgain, onLeave }: DebriefViewProps) {
  const { debrief, trainee: own, planner: planned } = looked;
  const { trainee, planner, hidden } = debrief;
  const [place, setPlace] = useState<ShownPlace>();
  const replay = useRef<HTMLElement>(null);
  const show = (events: number) => {
    setPlace({ events });
    replay.current?.scrollIntoView();
  };
  const runs = [
    [DEBRIEF.trainee, trainee],
    [DEBRIEF.planner, planner],
  ] as const;
  return (
    <main className="practice debrief" data-stage="debrief">
      <header className="practice-head">
        <h1>
          {DEBRIEF.title} <span className="quiet">{name}</span>
        </h1>
        <p>{DEBRIEF.hidden(hidden)}</p>
        <p>
          {capital(DEBRIEF.trainee)}: {DEBRIEF.ended(trainee)}.
        </p>
        <p>
          {capital(DEBRIEF.planner)}: {DEBRIEF.ended(planner)}.
        </p>
      </header>
      <section>
        <h2>{DEBRIEF.stops}</h2>
        <Stops run={trainee} show={show} />
      </section>
      <Elsewhere run={trainee} show={show} />
      <section>
        <h2>{DEBRIEF.counts}</h2>
        <table className="practice-table counts">
          <thead>
            <tr>
              <th scope="col">{PRACTICE.what}</th>
              <th scope="col">{capital(DEBRIEF.trainee)}</th>
              <th scope="col">{capital(DEBRIEF.planner)}</th>
            </tr>
          </thead>
          <tbody>
            {(Object.keys(COUNT_NAMES) as CountName[]).map((count) => (
              <tr key={count} data-count={count}>
                <th scope="row">{capital(COUNT_NAMES[count])}</th>
                <td>{Math.round(trainee.counts[count])}</td>
                <td>{Math.round(planner.counts[count])}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="quiet">{DEBRIEF.noTotal}</p>
      </section>
      <div className="keys">
        <button type="button" className="key first" onClick={onAgain}>
          {PRACTICE.again}
        </button>
        <button type="button" className="key" onClick={onLeave}>
          {PRACTICE.other}
        </button>
      </div>
      <div className="practice-columns">
        {runs.map(([who, run]) => (
          <section key={who}>
            <h2>
              {DEBRIEF.tests}, {who}
            </h2>
            <Tests run={run} />
          </section>
        ))}
      </div>
      <section ref={replay}>
        <h2>{PRACTICE.replay}</h2>
        <div className="practice-columns">
          <RunReplay who="you" events={own} place={place} />
          <RunReplay who="planner" events={planned} />
        </div>
      </section>
    </main>
  );
}

interface StopsProps {
  readonly run: RunLookedBack;
  readonly show: (events: number) => void;
}

function Stops({ run, show }: StopsProps) {
  const stops = stopsOf(run.log);
  if (stops.length === 0) return <p>{DEBRIEF.noStops}</p>;
  return (
    <ol className="practice-stops">
      {stops.map((stop) => (
        <li
          key={`${stop.events} ${stop.what}`}
          data-weight={stop.weight}
          className={stop.weight === 'harm' ? 'notice' : ''}
        >
          {DEBRIEF.atMinute(stop.minutes)}: {STOP_WORDS[stop.error](stop)}{' '}
          <button type="button" className="control" onClick={() => show(stop.events)}>
            {PRACTICE.showIt}
          </button>
        </li>
      ))}
    </ol>
  );
}

/** Readings told of other places than those that were read: nobody was near harm by them. */
function Elsewhere({ run, show }: StopsProps) {
  const elsewhere = run.log.filter((deed) => deed.type === 'probes-elsewhere');
  if (elsewhere.length === 0) return null;
  return (
    <section>
      <h2>{DEBRIEF.elsewhereTitle}</h2>
      <ol className="practice-stops">
        {elsewhere.map((deed) => (
          <li key={`elsewhere ${deed.events}`}>
            {DEBRIEF.atMinute(deed.minutes)}:{' '}
            {DEBRIEF.elsewhere(placeWords(deed.said), placeWords(deed.stood), deed.asked)}{' '}
            <button type="button" className="control" onClick={() => show(deed.events)}>
              {PRACTICE.showIt}
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}

function Tests({ run }: { readonly run: RunLookedBack }) {
  const made = run.log.filter((deed) => deed.type === 'tested');
  if (made.length === 0) return <p>{DEBRIEF.noTests}</p>;
  return (
    <ol className="practice-tests">
      {made.map((test) => (
        <li key={`${test.events} ${test.what}`} data-redundant={test.redundant}>
          {DEBRIEF.atMinute(test.minutes)}: {test.what}:{' '}
          <b>
            {typeof test.shown === 'string'
              ? DEBRIEF.shown(test.shown, 'observation')
              : DEBRIEF.shown(test.shown.value, test.shown.unit)}
          </b>{' '}
          <span className="quiet">
            ({DEBRIEF.suspected(test.hypothesis)}
            {test.redundant ? `; ${DEBRIEF.toldNothing}` : ''})
          </span>
        </li>
      ))}
    </ol>
  );
}
