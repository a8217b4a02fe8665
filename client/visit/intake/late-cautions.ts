import { cautionKey } from '../../../grammar/visit/facts.ts';
import type { PromptOutcome } from '../../../grammar/visit/inputs.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { cautionById } from '../../words/talk/caution-words.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { liveCaution } from '../rules/cautions-due.ts';

type LateCaution = VisitContext['late'][number];

/** A volunteered live reading is taken, and cautioned of at once; recorded once that was given whole. */
export function cautionLate(turn: Turn, zone: ZoneId): void {
  const id = liveCaution(zone);
  const key = cautionKey(id, zone);
  const { acknowledged, caution: pending, saidLate, late } = turn.context;
  const isSaid = acknowledged.includes(key) || saidLate.includes(key);
  if (isSaid || pending?.spoken.some((one) => one.id === id) || late.some((one) => isBeingGiven(one, id))) return;
  const { words, source } = cautionById(id);
  const prompt = turn.say('caution', words);
  const others = late.filter((one) => one.caution !== id);
  turn.talk({ late: [...others, { prompt, caution: id, words, source, zone, why: BECAUSE.readFirst, stands: 'due' }] });
}

function isBeingGiven({ caution, stands }: LateCaution, id: string): boolean {
  return caution === id && stands === 'due';
}

/** Whether a prompt that is over was a late caution: recorded where it was given whole, kept for "say again" where not. */
export function lateFinished(turn: Turn, prompt: string, outcome: PromptOutcome): boolean {
  const { late } = turn.context;
  const ended = late.find((one) => one.prompt === prompt);
  if (ended === undefined) return false;
  const stands = outcome === 'cut' ? ('cut' as const) : ('given' as const);
  turn.talk({ late: late.map((one) => (one === ended ? { ...one, stands } : one)) });
  if (outcome === 'cut') return true;
  const { caution, words, source, zone, why } = ended;
  const shown = outcome === 'shown' ? { shown: true as const } : {};
  turn.record({ type: 'caution.spoken', caution, words, source, zone, late: why, ...shown });
  return true;
}

/** A late caution that was cut and is said again counts as it did: recorded once it was given whole. */
export function sayLateAgain(turn: Turn, words: string): boolean {
  const { late } = turn.context;
  const cut = late.find((one) => one.stands === 'cut' && one.words === words);
  if (cut === undefined) return false;
  const prompt = turn.say('caution', words);
  turn.talk({ late: late.map((one) => (one === cut ? { ...one, prompt, stands: 'due' as const } : one)) });
  return true;
}

/** Acknowledges what was cautioned of late, once it was given. Returns whether anything was. */
export function acknowledgeLate(turn: Turn): boolean {
  const given = lateToAcknowledge(turn.context);
  for (const { caution, zone } of given) turn.record({ type: 'caution.acknowledged', caution, zone });
  turn.talk({ late: turn.context.late.filter((one) => !given.includes(one)) });
  return given.length > 0;
}

/** Late cautions that were given and not acknowledged, while what they warn of is still live. */
export function lateToAcknowledge({ late, energy, acknowledged }: VisitContext): readonly LateCaution[] {
  return late.filter(
    ({ stands, zone, caution }) =>
      stands === 'given' && energy[zone] === 'live' && !acknowledged.includes(cautionKey(caution, zone)),
  );
}

/** Late cautions that are being given: they come before all else that is shown. */
export function lateBeingGiven({ late }: Pick<VisitContext, 'late'>): readonly LateCaution[] {
  return late.filter(({ stands }) => stands === 'due');
}
