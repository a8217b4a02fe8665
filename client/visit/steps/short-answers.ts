import type { AnswerMeant, Meaning, Report } from '../../../grammar/phrases/meaning.ts';
import type { AnswerId } from '../../../grammar/vocabulary/answers.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import type { JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { ActionDone, Step, VisitContext } from '../chart/context.ts';
import { unreadSections } from '../rules/charged-sections.ts';
import { placesOpening, type Switch, switchOf, switchToldLast } from '../rules/isolation.ts';
import { missingPairs } from '../rules/proof-plan.ts';

/** What short answers say at a step; "yes", "no" and "done" are orders of their own, and mean the same here. */
export type ShortAnswers = Readonly<Partial<Record<AnswerId | 'yes' | 'no' | 'done', Meaning>>>;

const report = (one: Report): Meaning => ({ kind: 'report', report: one });
const seen = (observation: ObservationId): Meaning => report({ type: 'observation', observation });
const item = (id: JobItemId): Meaning => report({ type: 'job-item', item: id });
const order = (command: CommandId): Meaning => ({ kind: 'command', command });
const switched = ({ device, place }: Switch, state: 'open' | 'locked' | 'closed'): Meaning =>
  report({ type: 'energy', device, place, state });

/** What was asked for is done, however that is said. */
const doneBy = (means: Meaning): ShortAnswers => ({ yes: means, done: means, did: means });
/** Not done yet: nothing is asked until something is said. */
const NOT_YET: ShortAnswers = { 'not-yet': { kind: 'command', command: 'hold', moment: true } };

const RUNNING = ['running', 'on', 'good'] as const;
const STANDS = ['not-running', 'off', 'none'] as const;

/** Which answers say that this is what was seen, where it is looked for. Empty: it is said in its own words. */
const SEEN_BY: Readonly<Record<ObservationId, readonly AnswerId[]>> = {
  'fan-not-turning': STANDS,
  'fan-turning': RUNNING,
  'fan-spins-freely': ['free', 'good'],
  'fan-stiff': ['stiff'],
  'fan-hums': ['hums'],
  'compressor-running': RUNNING,
  'compressor-not-running': STANDS,
  'compressor-hums-and-trips': ['hums', 'hums-and-trips'],
  'compressor-runs-then-trips': ['runs-then-trips'],
  'compressor-very-hot': ['very-hot'],
  'compressor-not-hot': ['not-hot'],
  'contactor-pulled-in': ['pulled-in', 'in'],
  'contactor-not-pulled-in': ['not-pulled-in', 'pulled'],
  'contacts-burnt': ['burnt', 'dirty'],
  'contacts-clean': ['clean', 'good'],
  'contacts-stuck': ['stuck'],
  'capacitor-swollen': ['swollen'],
  'capacitor-not-swollen': ['not-swollen', 'good'],
  'blower-running': RUNNING,
  'blower-not-running': STANDS,
  'blower-spins-freely': ['free', 'good'],
  'blower-stiff': ['stiff'],
  'filter-dirty': ['dirty'],
  'filter-clean': ['clean', 'good'],
  'coil-iced': ['iced'],
  'coil-clear': ['no-ice', 'good', 'clean'],
  'outdoor-coil-dirty': ['dirty'],
  'outdoor-coil-clean': ['clean', 'good'],
  'drain-pan-full': ['full'],
  'drain-pan-dry': ['dry', 'good'],
  'oil-stain': ['oily'],
  'no-oil-stain': ['no-oil', 'clean', 'dry', 'good', 'none'],
  'thermostat-blank': ['blank', 'dead'],
  'thermostat-calling': ['calling', 'on'],
  'thermostat-not-calling': ['not-calling', 'off'],
  'breaker-tripped': ['tripped'],
  'breaker-on': ['set', 'on', 'good'],
  'disconnect-in': ['in', 'on', 'good'],
  'disconnect-out': ['pulled', 'off'],
  'covers-on': ['on'],
  'second-stage-loads': [],
  'second-stage-no-change': [],
};

/** A look: each answer that belongs to one of what may be seen there, and to no other of them. */
function atLook(answers: readonly ObservationId[]): ShortAnswers {
  const said = answers.flatMap((one) => SEEN_BY[one].map((answer) => [answer, one] as const));
  return Object.fromEntries(
    said
      .filter(([answer]) => said.filter(([other]) => other === answer).length === 1)
      .map(([answer, one]) => [answer, seen(one)]),
  );
}

/** Opened, and locked where both were asked for. */
const openedAt = (at: Switch): ShortAnswers => ({
  ...doneBy(switched(at, 'locked')),
  locked: switched(at, 'locked'),
  pulled: switched(at, 'open'),
  off: switched(at, 'open'),
  in: switched(at, 'closed'),
  on: switched(at, 'closed'),
  ...NOT_YET,
});

const CALLS: ShortAnswers = {
  calling: seen('thermostat-calling'),
  on: seen('thermostat-calling'),
  'not-calling': seen('thermostat-not-calling'),
  off: seen('thermostat-not-calling'),
  blank: seen('thermostat-blank'),
  dead: seen('thermostat-blank'),
  ...NOT_YET,
};

/** Covers that are on; "off" is told of the cabinet's. */
const COVERS: ShortAnswers = {
  ...doneBy(seen('covers-on')),
  on: seen('covers-on'),
  in: seen('covers-on'),
  off: report({ type: 'cover', cover: 'unit', state: 'off' }),
  ...NOT_YET,
};

/** The meter's number is missing: a reading that shows nothing proves no meter. */
const NO_METER = report({ type: 'meter-proof', value: 0 });
const METER: ShortAnswers = { none: NO_METER, dead: NO_METER, 'all-zero': NO_METER, ...NOT_YET };

/** What was done is still to be said: the step is put again. */
const SAID_AGAIN: ShortAnswers = { ...doneBy(order('what-next')), all: order('what-next'), ...NOT_YET };

type OfStep = (step: Step, context: VisitContext) => ShortAnswers;

const AT_ACTION: Readonly<Record<ActionDone, ShortAnswers | OfStep>> = {
  'call-on': { ...CALLS, ...doneBy(seen('thermostat-calling')), running: seen('thermostat-calling') },
  'call-off': { ...CALLS, ...doneBy(seen('thermostat-not-calling')) },
  'power-off': ({ zone }) => openedAt(switchOf(zone)),
  'breaker-off': openedAt({ device: 'breaker', place: 'panel' }),
  'disconnect-locked': openedAt(switchOf('outdoor-load')),
  'clamps-placed': COVERS,
  'absence-proved': METER,
  'meter-again': METER,
  'source-opened': SAID_AGAIN,
  'capacitors-discharged': ({ zone }, context) => dischargedAll(zone, context),
  'charge-left': { ...doneBy(order('done')), discharged: order('done'), ...NOT_YET },
  'part-fitted': SAID_AGAIN,
  'wires-landed': SAID_AGAIN,
  'tug-tested': {
    ...doneBy(order('done')),
    tight: order('done'),
    good: order('done'),
    none: order('done'),
    ...NOT_YET,
  },
  'covers-on': COVERS,
  'power-on': ({ zone }, context) => closedAt(switchToClose(zone, context)),
  'consent-asked': {
    ...doneBy(item('consent-given')),
    agreed: item('consent-given'),
    good: item('consent-given'),
    refused: item('consent-refused'),
    no: item('consent-refused'),
    ...NOT_YET,
  },
  'sound-agreed': { yes: item('sound-kept'), no: item('sound-not-kept') },
  'meter-named': {
    two: item('meter-category-two'),
    three: item('meter-category-three'),
    four: item('meter-category-four'),
  },
  'nameplate-read': { all: order('pass'), done: order('pass'), no: order('pass') },
  'leak-searched': { leak: item('leak-found'), none: item('no-leak-found'), no: item('no-leak-found'), ...SAID_AGAIN },
  'vacuum-isolated': {
    ...doneBy(item('vacuum-isolated')),
    'valved-off': item('vacuum-isolated'),
    off: item('vacuum-isolated'),
    ...NOT_YET,
  },
  'thermostat-agreed': {
    ...doneBy(item('thermostat-as-agreed')),
    'as-they-want': item('thermostat-as-agreed'),
    good: item('thermostat-as-agreed'),
    ...NOT_YET,
  },
  recommended: {
    no: item('nothing-to-recommend'),
    none: item('nothing-to-recommend'),
    all: item('nothing-to-recommend'),
    good: item('nothing-to-recommend'),
  },
  'technician-signed': {},
  'customer-signed': { 'not-here': item('customer-not-present') },
  'visit-finished': { ...doneBy(order('finish')), all: order('finish') },
};

const closedAt = (at: Switch): ShortAnswers => ({
  ...doneBy(switched(at, 'closed')),
  on: switched(at, 'closed'),
  in: switched(at, 'closed'),
  off: switched(at, 'open'),
  pulled: switched(at, 'open'),
  ...NOT_YET,
});

/** The switch that power was taken off at; the nearest one where none is known. */
function switchToClose(zone: ZoneId | 'none', context: VisitContext): Switch {
  const opened = zone === 'none' ? undefined : placesOpening([zone]).find((place) => isToldOpen(place, context));
  return opened === 'panel' ? { device: 'breaker', place: 'panel' } : switchOf(zone);
}

const isToldOpen = (place: IsolationPlace, { isolation }: VisitContext): boolean =>
  isolation[place] === 'open' || isolation[place] === 'locked';

/** Every section that is not read yet; each is read all the same. */
function dischargedAll(zone: ZoneId | 'none', context: VisitContext): ShortAnswers {
  const sections = zone === 'none' ? [] : unreadSections(zone, context);
  const parts = sections.map((one) => report({ type: 'discharged', zone: one.zone }));
  const [first] = parts;
  if (first === undefined) return NOT_YET;
  const told: Meaning = parts.length === 1 ? first : { kind: 'several', parts };
  return { ...doneBy(told), discharged: told, ...NOT_YET };
}

/** Where "nothing" is a number; in ohms it may be none of them, or no path. */
const SHOWS_NOTHING: readonly Reading['quantity'][] = ['voltage', 'voltage-dc', 'current', 'pressure'];

/** Fuses, switches and the poles of the contactor: what is closed there shows no ohms. */
const CONTACTS = /^(fuse-|[LT][12]$|float-|door-|(high|low)-switch-)/;

/** A reading: what names no number is asked for it, and "all zero" for the first pair, since one word is one number. */
function atReading({ ask }: Step, context: VisitContext): ShortAnswers {
  if (ask.kind !== 'reading') return {};
  const [next] = context.proof === undefined ? [] : missingPairs(context.proof);
  const numberWanted: Meaning = { kind: 'unclear', reason: 'no-value', alternatives: [], at: next ?? ask.at };
  const open: Meaning = { kind: 'value', value: 'open' };
  const zero: Meaning = { kind: 'value', value: 0 };
  const nothing = SHOWS_NOTHING.includes(ask.quantity) ? zero : numberWanted;
  return {
    none: nothing,
    dead: ask.quantity === 'voltage' ? zero : numberWanted,
    'all-zero': numberWanted,
    did: numberWanted,
    // Told that it is, with the number still to be read.
    ...(ask.quantity === 'voltage-dc' ? { discharged: numberWanted } : {}),
    done: numberWanted,
    all: numberWanted,
    good: numberWanted,
    ...(ask.quantity === 'resistance' && ask.at.every((point) => CONTACTS.test(point)) ? { in: zero } : {}),
    blown: ask.quantity === 'resistance' ? open : numberWanted,
    ...NOT_YET,
  };
}

/** What each short answer says at a step. "Locked it" is said of the switch that was told open last, whatever is asked. */
export function shortAnswers(step: Step, context: VisitContext): ShortAnswers {
  return { ...lockOfOpened(context), ...atStep(step, context) };
}

function lockOfOpened(context: VisitContext): ShortAnswers {
  const last = switchToldLast(context);
  return last !== undefined && context.isolation[last.place] === 'open' ? { locked: switched(last, 'locked') } : {};
}

function atStep(step: Step, context: VisitContext): ShortAnswers {
  switch (step.ask.kind) {
    case 'look':
      return { ...atLook(step.ask.answers), ...NOT_YET };
    case 'reading':
      return atReading(step, context);
    case 'action': {
      const at = AT_ACTION[step.ask.done];
      return typeof at === 'function' ? at(step, context) : at;
    }
  }
}

/** What needs no step: it is said of what was told before. */
export const toldBefore = (context: VisitContext): readonly AnswerMeant[] => meantBy(lockOfOpened(context));

/** The same for whoever understands words: orders are understood without it. */
export const answersMeant = (step: Step, context: VisitContext): readonly AnswerMeant[] =>
  meantBy(shortAnswers(step, context));

function meantBy({ yes: _yes, no: _no, done: _done, ...answers }: ShortAnswers): readonly AnswerMeant[] {
  return (Object.entries(answers) as [AnswerId, Meaning][]).map(([answer, means]) => ({ answer, means }));
}
