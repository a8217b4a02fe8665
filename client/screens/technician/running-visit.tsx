import { useState, useSyncExternalStore } from 'react';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { OBSERVATIONS, type ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { VisitSession } from '../session/visit-session.ts';
import { EnergyBand } from '../show/energy-band.tsx';
import { ReadingTable } from '../show/reading-table.tsx';
import { SuspectList } from '../show/suspect-list.tsx';
import { rememberEar, useEarHabit } from './ear-habit.ts';
import { HeardPanel } from './heard-panel.tsx';
import { type MoreChoice, MoreSheet } from './more-sheet.tsx';
import { NowPanel, nowAsked } from './now-panel.tsx';
import { PadSheet } from './pad-sheet.tsx';
import { PartPicker } from './part-picker.tsx';
import { PickSheet } from './pick-sheet.tsx';
import { ReadingPicker } from './reading-picker.tsx';
import { StatusStrip } from './status-strip.tsx';
import { SupervisorSheet } from './supervisor-sheet.tsx';
import { SwitchPicker } from './switch-picker.tsx';
import type { PadRequest, TouchKey } from './touch-key.ts';
import { keysFor, readingToSetRight } from './touch-keys.ts';
import { useWakeLock } from './use-wake-lock.ts';

interface RunningVisitProps {
  readonly session: VisitSession;
  readonly onLeave: () => void;
}

type Open =
  | { readonly sheet: 'more' | 'reading' | 'seen' | 'switched' | 'part' | 'supervisor' }
  | { readonly sheet: 'pad'; readonly pad: PadRequest };

/** The technician's page while a visit runs. */
export function RunningVisit({ session, onLeave }: RunningVisitProps) {
  const state = useSyncExternalStore(session.subscribe, session.state);
  const [open, setOpen] = useState<Open>();
  useWakeLock();
  useEarHabit(session);
  const { folded, context, ear, mouth, outbox, problem, busy } = state;
  const earOn = ear.ear !== 'off' && ear.ear !== 'failed';
  const toggleEar = () => {
    rememberEar(!earOn);
    void (earOn ? session.stopEar() : session.startEar());
  };
  const press = ({ does }: TouchKey) => {
    if (does.do === 'command') session.touch(does.command);
    else if (does.do === 'enter') session.enter(does.meaning, does.words);
    else if (does.do === 'pad') setOpen({ sheet: 'pad', pad: does.pad });
    else setOpen({ sheet: does.sheet });
  };
  const close = () => setOpen(undefined);
  const cautionBeingSpoken = context.caution !== undefined && mouth.speaking?.id === context.caution.prompt;
  return (
    <main className="visit" aria-busy={busy} data-phase={context.phase} data-heard-count={folded.heard.length}>
      <h1 className="reader-only">Visit at {folded.site}</h1>
      <div className="visit-now">
        <StatusStrip
          ear={ear}
          mouth={mouth}
          outbox={outbox}
          pace={context.pace}
          onEar={toggleEar}
          onTalk={() => session.touch(context.pace === 'full' ? 'short-talk' : 'full-talk')}
          onRetry={() => session.retryNow()}
        />
        <EnergyBand energy={folded.energy} />
        <Notices
          session={session}
          problem={problem}
          earFault={ear.fault}
          stopped={outbox.link.link === 'stopped' ? outbox.link.sentence : undefined}
        />
        <NowPanel folded={folded} context={context} />
        <HeardPanel
          folded={folded}
          shown={nowAsked(folded, context).words}
          onType={problem === undefined ? (text) => session.type(text) : undefined}
        />
        <nav className="keys visit-keys" aria-label="Answers by touch">
          {keysFor(context).map((key) => (
            <button
              type="button"
              key={key.label}
              className={`key ${key.tone === 'plain' ? '' : key.tone} ${key.width === 1 ? '' : 'wide'}`}
              disabled={cautionBeingSpoken || problem !== undefined}
              onClick={() => press(key)}
            >
              {key.label}
            </button>
          ))}
          <LastKey
            speaking={mouth.speaking !== undefined}
            closed={folded.summary !== undefined}
            onStop={() => session.touch('stop')}
            onMore={() => setOpen({ sheet: 'more' })}
            onLeave={onLeave}
          />
        </nav>
      </div>
      <aside className="so-far" aria-label="So far">
        <h2>Suspects</h2>
        <SuspectList suspects={context.assessment?.suspects ?? []} most={6} />
        <h2>Readings</h2>
        <ReadingTable readings={folded.readings} />
      </aside>
      {open === undefined ? null : (
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
        Stop
      </button>
    );
  }
  return closed ? (
    <button type="button" className="key first full" onClick={onLeave}>
      To the visits
    </button>
  ) : (
    <button type="button" className="key" onClick={onMore}>
      More
    </button>
  );
}

interface NoticesProps {
  readonly session: VisitSession;
  readonly problem: string | undefined;
  readonly earFault: string | undefined;
  readonly stopped: string | undefined;
}

/** What went wrong at an edge: one sentence each, with what to do. */
function Notices({ session, problem, earFault, stopped }: NoticesProps) {
  return (
    <div className="notices">
      {problem === undefined ? null : (
        <div className="notice stop" role="alert" data-problem>
          <p>
            <strong>Stopped: the last entry is not saved.</strong> {problem}
          </p>
          <button type="button" className="control" onClick={() => void session.takeUpAgain()}>
            Try again
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
          {stopped} The visit goes on here and is kept on this device.
        </p>
      )}
    </div>
  );
}

interface OpenSheetProps {
  readonly open: Open;
  readonly session: VisitSession;
  readonly show: (open: Open | undefined) => void;
  readonly close: () => void;
  readonly earOn: boolean;
  readonly toggleEar: () => void;
}

function OpenSheet({ open, session, show, close, earOn, toggleEar }: OpenSheetProps) {
  const { context } = session.state();
  const enter = (meaning: Meaning, words: string) => session.enter(meaning, words);
  const choose = (choice: MoreChoice) => {
    const reading = readingToSetRight(context);
    if (choice === 'ear') toggleEar();
    if (choice === 'hurt') enter({ kind: 'report', report: { type: 'injury' } }, 'somebody is hurt');
    if (choice === 'ear' || choice === 'hurt') close();
    else if (choice !== 'set-right') show({ sheet: choice });
    else if (reading !== undefined) show({ sheet: 'pad', pad: { kind: 'set-right', reading } });
  };
  const see = (observation: ObservationId) => {
    enter({ kind: 'report', report: { type: 'observation', observation } }, nameOf(observation));
    close();
  };
  switch (open.sheet) {
    case 'more':
      return (
        <MoreSheet
          context={context}
          earOn={earOn}
          onChoose={choose}
          onClose={close}
          onCommand={(command) => {
            session.touch(command);
            close();
          }}
        />
      );
    case 'reading':
      return <ReadingPicker onPicked={(pad) => show({ sheet: 'pad', pad })} onClose={close} />;
    case 'seen':
      return <PickSheet title="Something seen" picks={SEEN} onPick={see} onClose={close} />;
    case 'switched':
      return <SwitchPicker onEnter={enter} onClose={close} />;
    case 'part':
      return <PartPicker onEnter={enter} onClose={close} />;
    case 'supervisor':
      return <SupervisorSheet onAcknowledge={(name) => session.acknowledgeAsSupervisor(name)} onClose={close} />;
    case 'pad':
      return <PadSheet request={open.pad} onEnter={enter} onClose={close} />;
  }
}

const SEEN = OBSERVATIONS.map(({ id, name }) => ({ label: name, value: id }));

function nameOf(observation: ObservationId): string {
  return OBSERVATIONS.find(({ id }) => id === observation)?.name ?? observation;
}
