import type { Understanding } from '../../../grammar/phrases/meaning.ts';
import type { HeardUtterance, VisitInput } from '../../../grammar/visit/inputs.ts';
import { isUsualChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { heedDenied } from './ask-still-off.ts';
import { chooseUnits } from './choose-units.ts';
import { gateUnit } from './gate-unit.ts';
import { goToTest } from './go-elsewhere.ts';
import { heedCircuit } from './heed-circuit.ts';
import { heedCircuitTold } from './heed-circuit-told.ts';
import { heedClock } from './heed-clock.ts';
import { endReached, heedPower } from './heed-power.ts';
import { heedTrouble, tellsOfInjury } from './heed-trouble.ts';
import { lateFinished } from './late-cautions.ts';
import { passOptional } from './pass-optional.ts';
import { settleTurn } from './settle-turn.ts';
import { takeAnswer } from './take-answer.ts';
import { takeDictation, writeWords } from './take-dictation.ts';
import { takeSupervisor } from './take-job.ts';
import { heedProofAge } from './take-proof.ts';
import { sayInjury, takeInjury } from './take-report.ts';
import { takeTimer } from './take-timer.ts';
import { takeOverVisit, takeUpVisit } from './take-up-visit.ts';
import { takeTouched, takeUtterance } from './take-utterance.ts';

type Input<T extends VisitInput['type']> = Extract<VisitInput, { type: T }>;

/** What an open visit makes of each kind of input. */
const TAKE: { readonly [T in VisitInput['type']]: (turn: Turn, input: Input<T>) => void } = {
  'opened.visit': openVisit,
  'chose.units': (turn, { units }) => chooseUnits(turn, units),
  'restored.visit': takeUpVisit,
  'took.over.visit': takeOverVisit,
  'heard.utterance': takeHeard,
  'touched.command': (turn, { command }) => takeTouched(turn, command),
  'went.to-test': (turn, { test }) => goToTest(turn, test),
  'mouth.finished': promptFinished,
  'diagnosis.answered': (turn, { answer }) => takeAnswer(turn, answer),
  'timer.elapsed': (turn, { timer }) => takeTimer(turn, timer),
  'supervisor.acknowledged': supervise,
  'remarked.visit': (turn, { author, text }) => turn.record({ type: 'remark.made', author, text }),
  'wrote.words': (turn, { of, text }) => writeWords(turn, of, text),
  'took.photo': (turn, { of, sha256 }) => turn.record({ type: 'photo.taken', of, sha256 }),
  'edge.failed': (turn, { edge, fault, sentence }) => {
    turn.record({ type: 'edge.interrupted', edge, fault, sentence });
    if (sentence !== turn.context.saidFault) turn.say('warning', sentence);
    turn.talk({ saidFault: sentence });
  },
};

/** These move no step by themselves. */
const ASIDE: readonly VisitInput['type'][] = ['mouth.finished', 'remarked.visit', 'wrote.words', 'took.photo'];

/** Takes an input: what its time alone has ended, then what it says, then what the turn has brought about. */
export function takeInput(turn: Turn, input: VisitInput): void {
  const { now } = turn.context;
  turn.take(input);
  if (isSaid(input)) turn.talk({ waits: false, wasWaiting: turn.context.waits });
  if (input.type !== 'remarked.visit') {
    heedClock(turn, input, now);
    heedProofAge(turn);
  }
  (TAKE[input.type] as (turn: Turn, input: VisitInput) => void)(turn, input);
  heedCircuit(turn);
  if (!turn.goesOn && !ASIDE.includes(input.type)) settleTurn(turn);
}

/** Somebody spoke, or pressed a key. */
function isSaid(input: VisitInput): boolean {
  return input.type === 'touched.command' || (input.type === 'heard.utterance' && input.utterance.accepted);
}

/** A closed visit takes remarks, words written over a dictation, photos, and a call for help; whatever else is said is answered, and changes nothing. */
export function takeAfterClose(turn: Turn, input: VisitInput): void {
  turn.take(input);
  if (input.type === 'remarked.visit') TAKE['remarked.visit'](turn, input);
  if (input.type === 'wrote.words') TAKE['wrote.words'](turn, input);
  if (input.type === 'took.photo') TAKE['took.photo'](turn, input);
  if (input.type === 'touched.command') turn.say('answer', SAY.visitIsClosed);
  if (input.type !== 'heard.utterance') return;
  // What was proven for the visit is not proven for whoever stays at the unit.
  heedPower(turn, input.utterance);
  const { meaning } = input.utterance.understanding;
  if (meaning.kind === 'report' && meaning.report.type === 'injury') {
    endReached(turn, ZONES, BECAUSE.maybeBack(input.utterance.understanding.heard));
    takeInjury(turn);
  } else turn.say('answer', SAY.visitIsClosed);
}

function openVisit(turn: Turn, input: Input<'opened.visit'>): void {
  const { visit, site, complaint, role, unit, software, exercise } = input;
  if (turn.context.visit !== '') return void turn.say('answer', SAY.openAlready);
  const named = exercise === undefined ? {} : { exercise };
  turn.record({ type: 'visit.opened', visit, site, complaint, role, unit, software, ...named });
  turn.record({ type: 'phase.entered', phase: 'arrive' });
  if (input.units !== undefined && !isUsualChoice(input.units))
    turn.record({ type: 'units.chosen', units: input.units });
  turn.say('answer', SAY.opened(site));
  gateUnit(turn);
}

/** A proof ends before anything else is made of the words, and what they mean is judged by what is left. */
function takeHeard(turn: Turn, { utterance }: Input<'heard.utterance'>): void {
  const isHurt = tellsOfInjury(utterance);
  if (isHurt) sayInjury(turn);
  takeWords(turn, utterance);
  // Whatever else was made of the words: who was told to stop is held.
  if (isHurt && !turn.context.hurt && !turn.goesOn) takeInjury(turn);
}

function takeWords(turn: Turn, utterance: HeardUtterance): void {
  heedDenied(turn, utterance);
  heedPower(turn, utterance);
  heedCircuitTold(turn, utterance);
  if (heedTrouble(turn, utterance)) return;
  if (!takeDictation(turn, utterance)) takeUtterance(turn, utterance);
  if (!isAsking(utterance.understanding)) turn.talk({ heard: utterance.understanding });
  passOptional(turn, utterance);
}

/** An order of the talk: what was heard before it is still what one asks after. */
function isAsking({ meaning, verdict }: Understanding): boolean {
  return verdict === 'logged' && meaning.kind === 'command';
}

/** What was cut is kept for "say again"; a caution counts only where it was spoken, or shown, whole. */
function promptFinished(turn: Turn, { prompt, outcome }: Input<'mouth.finished'>): void {
  if (outcome === 'cut') keepSilenced(turn, prompt);
  if (lateFinished(turn, prompt, outcome)) return;
  const { caution } = turn.context;
  if (caution?.prompts.includes(prompt) !== true) return;
  const left = caution.prompts.filter((one) => one !== prompt);
  const shown = outcome === 'shown' ? { isShown: true as const } : {};
  turn.talk({ caution: { ...caution, ...shown, prompts: outcome === 'cut' ? [] : left } });
  if (outcome === 'cut') turn.raise({ type: 'caution.cut' });
  else if (left.length === 0) turn.raise({ type: 'caution.over' });
}

function keepSilenced(turn: Turn, id: string): void {
  const { lately, silenced } = turn.context;
  turn.talk({ silenced: lately.filter((one) => one.id === id || silenced.includes(one)) });
}

/** A trainee's live steps want a supervisor's word; it lapses when the visit is held or power comes back. */
function supervise(turn: Turn, { supervisor, from }: Input<'supervisor.acknowledged'>): void {
  takeSupervisor(turn, supervisor, from);
}
