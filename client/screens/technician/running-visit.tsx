import { useCallback, useEffect, useState, useSyncExternalStore } from 'react';
import { VISIT } from '../../words/pages/visit-words.ts';
import type { TouchKey } from '../glance/touch-key.ts';
import type { HeldInput } from '../session/held-inputs.ts';
import type { VisitSession } from '../session/visit-session.ts';
import { EnergyBand } from '../show/energy-band.tsx';
import { ReadingTable } from '../show/reading-table.tsx';
import { SuspectBars } from '../show/suspect-bars.tsx';
import { WhyPanel } from '../show/why-panel.tsx';
import { WireBoard } from '../show/wire-board.tsx';
import { CarriedOn } from './carried-on.tsx';
import { rememberEar, useEarHabit } from './ear-habit.ts';
import { HeardPanel } from './heard-panel.tsx';
import { longWord } from './long-word.ts';
import { NowPanel } from './now-panel.tsx';
import type { Open, OpenSheet as OpenSheetType } from './open-sheet.tsx';
import { StatusStrip } from './status-strip.tsx';
import { TalkKey } from './talk-key.tsx';
import { TypeLine } from './type-line.tsx';
import { useWakeLock } from './use-wake-lock.ts';

/**
 * All sheets, fetched when the visit begins: a key that is pressed later waits for nothing and needs no server.
 *
 * @param isWanted one is to be shown: where they did not come before, they are asked for again
 */
function useSheets(isWanted: boolean): typeof OpenSheetType | undefined {
  const [sheets, setSheets] = useState<{ readonly OpenSheet: typeof OpenSheetType }>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked for again where a key asks
  useEffect(() => {
    if (sheets === undefined) import('./open-sheet.tsx').then(setSheets, () => undefined);
  }, [isWanted]);
  return sheets?.OpenSheet;
}

interface RunningVisitProps {
  readonly session: VisitSession;
  readonly onLeave: () => void;
  readonly onTakeAgain: (visit: string) => void;
}

/** The technician's page while a visit runs. */
export function RunningVisit({ session, onLeave, onTakeAgain }: RunningVisitProps) {
  const state = useSyncExternalStore(session.subscribe, session.state);
  const [open, setOpen] = useState<Open>();
  useWakeLock();
  useEarHabit(session);
  const { glance, ear, mouth, outbox, problem, busy, building, elsewhere, left } = state;
  const earOn = ear.ear !== 'off' && ear.ear !== 'failed';
  const toggleEar = () => {
    rememberEar(!earOn);
    void (earOn ? session.talk.stopEar() : session.talk.startEar());
  };
  const press = ({ does }: TouchKey) => {
    if (does.do === 'command') session.touch(does.command);
    else if (does.do === 'enter') session.enter(does.meaning, does.words);
    else if (does.do === 'pad') setOpen({ sheet: 'pad', pad: does.pad });
    else setOpen({ sheet: does.sheet });
  };
  // What is to be done next is in sight whenever it changes, whatever was scrolled to or typed in.
  // biome-ignore lint/correctness/useExhaustiveDependencies: when these change, and only then
  useEffect(() => {
    for (const one of document.querySelectorAll('.visit, .visit-read')) one.scrollTop = 0;
  }, [glance.asked.words, glance.heard?.times]);
  const OpenSheet = useSheets(open !== undefined);
  const close = () => setOpen(undefined);
  const hold = useCallback((down: boolean) => session.talk.holdToTalk(down), [session]);
  if (elsewhere !== undefined) {
    const { site, visit } = glance;
    return <CarriedOn site={site} by={elsewhere} onTakeAgain={() => onTakeAgain(visit)} onBack={onLeave} />;
  }
  return (
    <main className="visit" aria-busy={busy} data-phase={glance.phase} data-heard-count={glance.heard?.times ?? 0}>
      <h1 className="reader-only">{VISIT.at(glance.site)}</h1>
      <div className="visit-now">
        <div className="visit-read">
          <StatusStrip
            ear={ear}
            mouth={mouth}
            outbox={outbox}
            pace={glance.pace}
            onEar={toggleEar}
            onTalk={() => session.touch(glance.pace === 'full' ? 'short-talk' : 'full-talk')}
            onRetry={() => session.retryNow()}
          />
          <EnergyBand energy={glance.energy} />
          <Notices
            session={session}
            problem={problem}
            left={left}
            earFault={ear.fault ?? ear.instead}
            stopped={outbox.link.link === 'stopped' ? outbox.link.sentence : undefined}
          />
          {earOn && glance.heard === undefined ? (
            <p className="check-first">
              <button type="button" className="control" onClick={() => setOpen({ sheet: 'sound-check' })}>
                {VISIT.checkFirst}
              </button>
            </p>
          ) : null}
          <NowPanel glance={glance} building={building} />
          <HeardPanel heard={glance.heard} said={glance.said} shown={`${glance.warned} ${glance.asked.words}`} />
        </div>
        <TypeLine
          onType={problem === undefined ? (text, back) => session.type(text, back) : undefined}
          left={left}
          onDraft={(draft) => session.hold(draft)}
        />
        <nav className="keys visit-keys" aria-label={VISIT.answersByTouch}>
          {earOn && ear.attention !== 'always' ? <TalkKey down={ear.attending} onHold={hold} /> : null}
          {glance.keys.map((key) => (
            <button
              type="button"
              key={key.label}
              className={`key ${key.tone === 'plain' ? '' : key.tone} ${key.width === 1 ? longWord(key.label) : 'wide'}`}
              disabled={glance.cautionToCome || problem !== undefined}
              onClick={() => press(key)}
            >
              {key.label}
            </button>
          ))}
          <LastKey
            speaking={mouth.speaking !== undefined}
            closed={glance.closed}
            onStop={() => session.touch('stop')}
            onMore={() => setOpen({ sheet: 'more' })}
            onLeave={onLeave}
          />
        </nav>
      </div>
      <aside className="so-far" aria-label={VISIT.soFar}>
        <h2>{glance.repaired ? VISIT.elseSuspects : VISIT.suspects}</h2>
        <SuspectBars suspects={glance.suspects} />
        <WhyPanel parts={glance.why} />
        {glance.wires.length === 0 ? null : (
          <>
            <h2>{VISIT.wires}</h2>
            <WireBoard rows={glance.wires} />
          </>
        )}
        <h2>{VISIT.readings}</h2>
        <ReadingTable readings={glance.readings} />
      </aside>
      {open === undefined || OpenSheet === undefined ? null : (
        <OpenSheet open={open} session={session} show={setOpen} close={close} earOn={earOn} toggleEar={toggleEar} />
      )}
    </main>
  );
}

interface LastKeyProps {
  readonly speaking: boolean;
  readonly closed: boolean;
  readonly onStop: () => void;
  readonly onMore: () => void;
  readonly onLeave: () => void;
}

/** The key that is always there: stop while it speaks, else everything else that can be said. */
function LastKey({ speaking, closed, onStop, onMore, onLeave }: LastKeyProps) {
  if (speaking) {
    return (
      <button type="button" className="key" onClick={onStop}>
        {VISIT.stop}
      </button>
    );
  }
  return closed ? (
    <button type="button" className="key first full" onClick={onLeave}>
      {VISIT.toTheVisits}
    </button>
  ) : (
    <button type="button" className="key" onClick={onMore}>
      {VISIT.more}
    </button>
  );
}

interface NoticesProps {
  readonly session: VisitSession;
  readonly problem: string | undefined;
  readonly left: readonly HeldInput[];
  readonly earFault: string | undefined;
  readonly stopped: string | undefined;
}

/** What went wrong at an edge: one sentence each, with what to do. */
function Notices({ session, problem, left, earFault, stopped }: NoticesProps) {
  const touched = left.filter(({ by }) => by !== 'line');
  return (
    <div className="notices">
      {problem === undefined ? null : (
        <div className="notice stop" role="alert" data-problem>
          <p>
            <strong>{VISIT.notSaved}</strong> {problem}
          </p>
          <button type="button" className="control" onClick={() => void session.takeUpAgain()}>
            {VISIT.tryAgain}
          </button>
        </div>
      )}
      {touched.length === 0 ? null : (
        <div className="notice" role="alert" data-left>
          <p>{VISIT.notInRecord(touched.map(({ words }) => words))}</p>
          <button type="button" className="control" onClick={() => session.dropHeld(touched.map(({ id }) => id))}>
            {VISIT.seen}
          </button>
        </div>
      )}
      {earFault === undefined ? null : (
        <p className="notice" role="alert" data-ear-fault>
          {earFault}
        </p>
      )}
      {stopped === undefined ? null : (
        <p className="notice" role="alert" data-link-stopped>
          {stopped} {VISIT.keptHere}
        </p>
      )}
    </div>
  );
}
