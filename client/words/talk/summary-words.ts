import type { Phase, WireMove } from '../../../grammar/visit/events.ts';
import type { CoverId } from '../../../grammar/vocabulary/covers.ts';
import { DEEDS_BY_ID, type LeadsOf } from '../../../grammar/vocabulary/deeds.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import type { JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { PARTS_BY_ID, type PartId } from '../../../grammar/vocabulary/parts.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { ZONE_NAMES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { capital } from '../capital.ts';
import { COVER_NAMES } from '../things/deed-words.ts';
import { faultWords } from '../things/fault-words.ts';
import { itemWords } from '../things/job-words.ts';
import { partWords } from '../things/part-words.ts';
import { placeWords } from '../things/place-words.ts';
import { readbackWords } from '../things/reading-words.ts';
import { percentWords, valueWords } from '../things/value-words.ts';
import { wireWords } from '../things/wire-words.ts';
import { PLAIN_WORDS } from './plain-words.ts';
import { SWITCH_NAMES } from './return-words.ts';

/** Lines for the next technician, each a sentence. */
export const TECHNICAL = {
  item: (item: JobItemId) => `${capital(itemWords(item))}.`,
  notRecorded: (what: readonly string[]) => `Not recorded on arrival: ${what.join(', ')}.`,
  reading: (number: number, phase: Phase, reading: Reading, judged: string | undefined) =>
    `${number}. ${phase}: ${readbackWords(reading)}${judged === undefined ? '' : ` ${capital(judged)}.`}`,
  noFinding: 'Finding: none.',
  /** The finding with its doubt and the numbers of the readings that it stands on. */
  finding: (fault: FaultId, probability: number, readings: readonly number[]) => {
    const evidence =
      readings.length === 0 ? 'no reading out of its band' : `readings ${readings.join(', ')} out of their bands`;
    return `Finding: ${faultWords(fault)}, ${percentWords(probability)}; ${evidence}.`;
  },
  wire: (wire: WireMove) => `${capital(wireWords(wire))}.`,
  done: (words: string) => `Done: ${words}.`,
  fitted: (part: string, ratings: Readonly<Record<string, number | string>>, doubts: readonly string[]) =>
    `Fitted: ${[partWords(part, ratings), ...doubts].join('. ').replace(/\.?$/, '.')}`,
  beforeAndAfter: (before: Reading, after: Reading) => {
    const [was, is] = [before, after].map(({ value, unit }) => valueWords(value, unit));
    return `Before and after, ${placeWords(after.at)}: ${was}, then ${is}.`;
  },
  recommended: (text: string) => `Recommended: ${text}.`,
} as const;

/** What optional steps ask for, as open words when they were passed by. */
export const NOT_RECORDED: Readonly<Record<string, string>> = {
  'arrive.consent': 'consent to the work',
  'arrive.nameplate': 'nameplate',
  'arrive.meter': 'category of the meter',
};

/** A finding that is less likely than not is no finding: below this no cause is named to a customer. */
export const STANDS_OUT = 0.5;

/** Sentences for the customer. */
export const PLAIN = {
  noFault: 'A fault was not proved on this visit.',
  noneStoodOut: 'No fault stood out in what was measured: its cause is not known.',
  found: (fault: FaultId, isSure: boolean) =>
    `What was measured points to this: ${PLAIN_WORDS[fault]}.${isSure ? '' : ' Other causes are not ruled out.'}`,
  declined: 'Work was declined.',
  fitted: (parts: readonly string[]) =>
    parts.length === 0 ? 'Nothing was fitted.' : `Fitted: ${parts.map((part) => partWords(part, {})).join(', ')}.`,
  done: (works: readonly string[]) => `Done: ${works.join(', ')}.`,
  notMeasured: 'It was not measured again after that.',
  measured: (readings: number) =>
    `It was measured again after that: ${readings === 1 ? 'one reading' : `${readings} readings`} in the record.`,
  recommended: (texts: readonly string[]) => `Recommended: ${texts.join('; ')}.`,
} as const;

/** What is left open when a visit closes. */
export const OPEN = {
  notProved: 'the repair was not proved by readings',
  coverOff: (cover: CoverId) => `the ${COVER_NAMES[cover]} was left off`,
  partOut: (part: PartId) => `${nameIn(PARTS_BY_ID, part)} was taken out and not put back`,
  leadsOff: (part: LeadsOf) => `${nameIn(DEEDS_BY_ID, `${part}-leads-off`).replace(' are', '')} at the end`,
  bypassed: 'a protecting switch was bypassed',
  zoneOff: (zone: ZoneId) => `${ZONE_NAMES[zone]} was left off`,
  switchOpen: (place: IsolationPlace) => `the ${SWITCH_NAMES[place]} was left open`,
  /** What an opened refrigerant circuit lacks, by its step. */
  refrigerant: {
    recovered: 'the refrigerant recovered was not weighed',
    testStart: 'the opened circuit was not pressure tested',
    searched: 'a leak search was not reported',
    testEnd: 'the test pressure was not read again',
    evacuated: 'the circuit was not evacuated deep enough',
    isolated: 'the vacuum was not valved off to stand',
    decay: 'the vacuum was not read again after standing',
    charged: 'the refrigerant put in was not weighed',
  },
  leakLeft: 'a leak was found, and no repair of it is in this record',
  chargedOverLeak: 'a leak was found and refrigerant put in, and no repair of the leak is in this record',
  noPressureTest: 'no pressure test that held is in this record of the refrigerant circuit',
  noEvacuation: 'no evacuation deep enough is in this record of the refrigerant circuit',
  noStanding: 'no vacuum that stood is in this record of the refrigerant circuit',
  waiting: (words: string) => `${words}: read by a trainee alone, not taken`,
  covers: 'covers were not reported back on',
  thermostat: 'the thermostat was not reported as agreed',
  doubted: (part: string, doubt: string) => `${part}: ${doubt}`,
  parked: (step: string, why: string | undefined, times: number) =>
    `${step.replace(/[.?!]+$/, '')}: ${why}${times === 1 ? '' : `, ${times} times`}`,
  unsigned: {
    technician: 'the technician has not signed',
    customer: 'the customer has not signed',
  },
} as const;
