import { lazy, Suspense } from 'react';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { OBSERVATIONS, OBSERVATIONS_BY_ID, type ObservationId } from '../../../grammar/vocabulary/observations.ts';
import { MORE } from '../../words/pages/key-words.ts';
import type { PadRequest } from '../glance/touch-key.ts';
import { PAD } from '../session/held-inputs.ts';
import type { VisitSession } from '../session/visit-session.ts';
import { DictatedSheet } from './dictated-sheet.tsx';
import { type MoreChoice, MoreSheet } from './more-sheet.tsx';
import { PadSheet } from './pad-sheet.tsx';
import { PartPicker } from './part-picker.tsx';
import { PhotoSheet } from './photo-sheet.tsx';
import { PhraseSheet } from './phrase-sheet.tsx';
import { PickSheet } from './pick-sheet.tsx';
import { PlateSheet } from './plate-sheet.tsx';
import { ReadingPicker } from './reading-picker.tsx';
import { ScreenSheet } from './screen-sheet.tsx';
import { SoundCheckSheet } from './sound-check-sheet.tsx';
import { SoundSheet } from './sound-sheet.tsx';
import { SupervisorSheet } from './supervisor-sheet.tsx';
import { SwitchPicker } from './switch-picker.tsx';
import { WireSheet } from './wire-sheet.tsx';
import { WriteSheet } from './write-sheet.tsx';

/** Read once, or never: it is fetched when it is asked for. */
const LearnSheet = lazy(async () => ({ default: (await import('./learn-sheet.tsx')).LearnSheet }));

/** Which sheet is open. */
export type Open =
  | {
      readonly sheet:
        | 'more'
        | 'reading'
        | 'seen'
        | 'switched'
        | 'part'
        | 'plate'
        | 'supervisor'
        | 'write'
        | 'dictated'
        | 'photo'
        | 'wires'
        | 'sound'
        | 'sound-check'
        | 'phrases'
        | 'learn'
        | 'screen';
    }
  | { readonly sheet: 'pad'; readonly pad: PadRequest };

interface OpenSheetProps {
  readonly open: Open;
  readonly session: VisitSession;
  readonly show: (open: Open | undefined) => void;
  readonly close: () => void;
  readonly earOn: boolean;
  readonly toggleEar: () => void;
}

/** The sheet that is open over the page, and what comes of it. */
export function OpenSheet({ open, session, show, close, earOn, toggleEar }: OpenSheetProps) {
  const { glance, expectation } = session.state();
  const { sheets } = glance;
  const enter = (meaning: Meaning, words: string) => session.enter(meaning, words);
  const choose = (choice: MoreChoice) => {
    const reading = sheets.toSetRight;
    switch (choice) {
      case 'ear':
        toggleEar();
        return close();
      case 'hurt':
        enter({ kind: 'report', report: { type: 'injury' } }, MORE.hurtHeard);
        return close();
      case 'proof':
        return show({ sheet: 'pad', pad: sheets.proof });
      case 'set-right':
        return reading === undefined ? close() : show({ sheet: 'pad', pad: { kind: 'set-right', reading } });
      case 'reading':
      case 'seen':
      case 'switched':
      case 'part':
      case 'write':
      case 'dictated':
      case 'photo':
      case 'wires':
      case 'sound':
      case 'sound-check':
      case 'phrases':
      case 'screen':
        return show({ sheet: choice });
      default:
        choice satisfies never;
    }
  };
  const see = (observation: ObservationId) => {
    enter({ kind: 'report', report: { type: 'observation', observation } }, OBSERVATIONS_BY_ID[observation].name);
    close();
  };
  switch (open.sheet) {
    case 'more':
      return (
        <MoreSheet
          glance={glance}
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
      return <PickSheet title={MORE.seen} picks={SEEN} onPick={see} onClose={close} />;
    case 'switched':
      return <SwitchPicker onEnter={enter} onClose={close} />;
    case 'part':
      return <PartPicker onEnter={enter} onClose={close} />;
    case 'dictated':
      return (
        <DictatedSheet facts={sheets.dictated} onWrite={(of, text) => session.writeOver(of, text)} onClose={close} />
      );
    case 'photo':
      return <PhotoSheet taken={sheets.photos} onPhoto={(of, file) => session.keepPhoto(of, file)} onClose={close} />;
    case 'plate':
      return <PlateSheet fields={sheets.plate} onEnter={enter} onClose={close} />;
    case 'sound':
      return (
        <SoundSheet
          onChanged={() => (earOn ? void session.talk.startEar() : undefined)}
          onLearn={() => show({ sheet: 'learn' })}
          onClose={close}
        />
      );
    case 'sound-check':
      return <SoundCheckSheet session={session} onClose={close} />;
    case 'phrases':
      return <PhraseSheet expectation={expectation} session={session} onClose={close} />;
    case 'learn':
      return (
        <Suspense fallback={null}>
          <LearnSheet session={session} onClose={close} />
        </Suspense>
      );
    case 'screen':
      return <ScreenSheet units={glance.units} onUnits={(units) => session.chooseUnits(units)} onClose={close} />;
    case 'supervisor':
      return <SupervisorSheet onAcknowledge={(name) => session.acknowledgeAsSupervisor(name)} onClose={close} />;
    case 'wires':
      return <WireSheet rows={glance.wires} onClose={close} />;
    case 'write':
      return <WriteSheet signatures={sheets.dictated.signatures} onEnter={enter} onClose={close} />;
    case 'pad':
      return (
        <PadSheet
          request={open.pad}
          units={glance.units}
          onEnter={enter}
          onSoFar={(words) => session.hold({ id: PAD, by: 'pad', words })}
          onClose={close}
        />
      );
  }
}

const SEEN = OBSERVATIONS.map(({ id, name }) => ({ label: name, value: id }));
