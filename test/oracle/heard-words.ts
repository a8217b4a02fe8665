import type { FittedPartId } from '../../grammar/vocabulary/parts.ts';
import type { ZoneId } from '../../grammar/vocabulary/zones.ts';

/**
 * What the words themselves can mean, also where the sentence was understood by half or not at all. Written from the
 * paper's own examples and the plain ways to say the same.
 */

const POWER_BACK = [
  /\b(power|juice|current|voltage)( is|'s)? (back|on|restored|live|came back)\b/,
  /\bpower (came|has come|is) back\b/,
  /\b(restored|turned on|switched on) (the )?power\b/,
  /\b(it|that|everything|this)( is|'s) (live|hot|energi[sz]ed|on again|back on)\b/,
  /\bi hear (the )?(compressor|fan|blower|contactor|unit)\b/,
  /\b(compressor|fan|blower|unit|condenser|motor)( is|'s)? (running|humming|hums|runs|started|starts)\b/,
  /\b(light|lamp|led|display)( is|'s)? (on|lit|lights up)\b/,
];
const LOCK_OFF = [
  /\block( is|'s)? (off|gone|open)\b/,
  /\b(took|taken|take) (the )?lock off\b/,
  /\b(somebody|someone|he|she|they)( has| have)? (flipped|turned|switched|reset|closed|threw|pushed|took)\b/,
  /\b(somebody|someone) (is|was)? ?at the (switch|panel|breaker|disconnect)\b/,
];
const HURT = [
  /\bi got (a )?(shock|shocked|bit|zapped|hurt|hit)\b/,
  /\bgot (shocked|zapped|electrocuted)\b/,
  /\b(am|i'm|is|was|got) (hurt|injured)\b/,
];

const some = (patterns: readonly RegExp[], heard: string): boolean => patterns.some((one) => one.test(heard));

/** f: power, a part that runs, somebody hurt: any word of it counts. */
export function canMeanPowerBack(heard: string): boolean {
  return some(POWER_BACK, heard) || canMeanLockOff(heard) || some(HURT, heard);
}

/** f: the lock is off or somebody else is at the switch: nothing stays locked by that. */
export function canMeanLockOff(heard: string): boolean {
  return some(LOCK_OFF, heard);
}

const NUMBER_WORDS =
  /^(?:(?:zero|oh|nought|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[a-z]+teen|[a-z]+ty|hundred|and|a|half|quarters?|point|minus|open|infinite|volts?|ohms?|microfarads?|dc|ac|d|c)\b[ ,]*)+$/;

/** A number, perhaps with its unit, and no place. */
export function isNumberAlone(heard: string): boolean {
  return NUMBER_WORDS.test(heard);
}

/** a: a terminal cover off. */
export function saysCoverOff(heard: string): boolean {
  return /\bterminal cover( is|'s)? off\b|\b(took|pulled|removed) (off )?the terminal cover\b/.test(heard);
}

/** a: a part taken out. */
export function saysPartOut(heard: string): ZoneId | undefined {
  if (/\bbench\b/.test(heard)) return undefined;
  return /\b(took|pulled|removed) (out )?the (contactor|capacitor|cap|fan motor)\b/.test(heard)
    ? 'outdoor-load'
    : undefined;
}

/** m: a flame. */
export function saysFlame(heard: string): boolean {
  return /\b(torch|braz(ed|ing)|flame|solder(ed|ing)?)\b/.test(heard) && !/\b(no|without)\b/.test(heard);
}

/** r: the contactor pressed by hand. */
export function saysContactorByHand(heard: string): boolean {
  return /\b(press|push|held|hold)(ed|ing)? (in )?the contactor\b/.test(heard);
}

/** r: a hand near the hot shell. */
export function saysHandOnShell(heard: string): boolean {
  return /\bcompressor (is too hot to touch|feels)\b/.test(heard);
}

/** The zone in which a part sits, for the parts that carry line voltage or 24 V. */
export const PART_ZONES: Partial<Record<FittedPartId, ZoneId>> = {
  'dual-capacitor': 'outdoor-load',
  capacitor: 'outdoor-load',
  'hard-start': 'outdoor-load',
  contactor: 'outdoor-load',
  'fan-motor': 'outdoor-load',
  compressor: 'outdoor-load',
  'crankcase-heater': 'outdoor-load',
  'blower-motor': 'air-handler',
  'blower-relay': 'air-handler',
  transformer: 'air-handler',
  'door-switch': 'air-handler',
  'control-fuse': 'control',
  thermostat: 'control',
  'float-switch': 'control',
  'pressure-switch': 'control',
  disconnect: 'disconnect-line',
  breaker: 'disconnect-line',
};

const NAMED_PAIR =
  /\b(leg|line|l|t) (one|two)(?: to (ground|(?:leg|line|l|t) (?:one|two)))?\b|\b(leg to leg|line to line|ground to ground)\b/g;

/**
 * c: the pairs that were named within a proof said in one breath, in their order: "T1 ground", "L1 L2", or "?" for what
 * is no pair. Empty where none was named.
 */
export function pairsNamed(heard: string): readonly string[] {
  return [...heard.matchAll(NAMED_PAIR)].map(([, side, number, other, whole]) => {
    if (whole !== undefined) return whole === 'ground to ground' ? '?' : 'L1 L2';
    const tip = `${side === 't' ? 'T' : 'L'}${number === 'one' ? 1 : 2}`;
    if (other === undefined || other === 'ground') return `${tip} ground`;
    const second = `${other.startsWith('t') ? 'T' : 'L'}${other.endsWith('one') ? 1 : 2}`;
    return [tip, second].sort().join(' ');
  });
}

/** The proofs that were each said in one breath within a sentence: from "meter" to "meter". */
export function breathsIn(heard: string): readonly string[] {
  return [...heard.matchAll(/\bmeter\b.*?\bmeter\b/g)].map(([breath]) => breath);
}
