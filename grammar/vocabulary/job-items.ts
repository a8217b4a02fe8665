import { rowsBy } from './rows-by.ts';

/** A line or a coil cannot be cut, unsweated or changed without opening the circuit. */
const COIL = '(indoor | outdoor | evaporator | evap | condenser) coil';
const LINE = '([liquid | suction | discharge | refrigerant] line | lines | line set)';
const LINE_OPENED = `((cut [into | open] | sweated off | opened up) [the | a] (${LINE} | ${COIL}) | (replaced | changed [out] | swapped [out] | fitted | installed) [the | a] [new] (${COIL} | line set))`;

/** The volts that stand beside a meter's category. */
const RATED = '[[rated] [for] (six hundred | a thousand | one thousand | thousand) [volts]]';

/**
 * What belongs to the job and is no measurement: consent, the meter's category, the opened circuit, what is asked when
 * the visit closes. Reported in a word; none is evidence for the diagnosis.
 */
export const JOB_ITEMS = [
  {
    id: 'consent-given',
    name: 'customer agreed to the work',
    say: '[the] customer (agrees | agreed) [to the work] | [the] customer approved (it | the work) | [the] work is approved | consent [is] given | we have consent',
  },
  {
    id: 'consent-refused',
    name: 'customer declined the work',
    say: '[the] customer declined [it | the work] | [the] work is declined | consent [is] refused',
  },
  {
    id: 'sound-kept',
    name: 'sound may be kept',
    say: 'sound [of what is dictated] may be kept | (keep | record) [the | my] (sound | voice) [of [the | my] notes]',
  },
  {
    id: 'sound-not-kept',
    name: 'sound is not kept',
    say: "sound [of what is dictated] is not kept | (don't | do not) (keep | record) [the | my] (sound | voice) [of [the | my] notes] | [keep] no sound",
  },
  {
    id: 'meter-category-two',
    name: 'meter is category two',
    say: `[the | my] meter is [a] (cat | category) two ${RATED} | [$it] [a] (cat | category) two [meter] ${RATED}`,
  },
  {
    id: 'meter-category-three',
    name: 'meter is category three',
    say: `[the | my] meter is [a] (cat | category) three ${RATED} | [$it] [a] (cat | category) three [meter] ${RATED}`,
  },
  {
    id: 'meter-category-four',
    name: 'meter is category four',
    say: `[the | my] meter is [a] (cat | category) four ${RATED} | [$it] [a] (cat | category) four [meter] ${RATED}`,
  },
  {
    id: 'nameplate-unreadable',
    name: 'nameplate cannot be read',
    say: "[the] $plate is [all] ($unreadable | gone | missing | not $legible) | [the] $plate (cannot | can't) be read | [i | we] $cannot (read | find | see) (the | any) $plate | [there is | there's] no $plate",
  },
  {
    id: 'plate-line-unreadable',
    name: 'that line cannot be read',
    say: "[i | we] $cannot (read | make out) [it | that | this] [one] | [i | we] $cannot make (it | that | this) out | (it | that | this | [that | this] line) (cannot | can't) be read | [it is | it's | that is | that's | that one is] ($unreadable | not $legible) | [it is | it's | that is | that's] not (on it | on there | on the $plate | listed)",
  },
  {
    id: 'circuit-opened',
    name: 'refrigerant circuit is opened',
    say: `[i | i've | i have] opened the ([refrigerant] circuit | system) | [the] refrigerant circuit is (open | opened) | [i | i've | i have] ${LINE_OPENED}`,
  },
  {
    id: 'leak-found',
    name: 'leak found',
    say: "[i] found (a | the) leak [$leak-place] | leak [is] found [$leak-place] | [the] leak is $leak-place | (it is | it's) leaking $leak-place",
  },
  {
    id: 'no-leak-found',
    name: 'leak search found nothing',
    say: 'no (leak | leaks) [found] | found no (leak | leaks) | leak search found nothing',
  },
  {
    id: 'vacuum-isolated',
    name: 'vacuum pump is valved off',
    say: '[the] [vacuum] pump is (isolated | valved off) | valved off the [vacuum] pump | vacuum is isolated | decay test started',
  },
  {
    id: 'thermostat-as-agreed',
    name: 'thermostat is set as agreed',
    say: '[the] $stat (is set | set) as agreed | [the] $stat is (as agreed | as found) | [the] $stat left as found',
  },
  {
    id: 'nothing-to-recommend',
    name: 'nothing to recommend',
    say: 'nothing to recommend | no (recommendation | recommendations)',
  },
  {
    id: 'customer-not-present',
    name: 'customer is not present',
    say: '[the] customer ([is] not present | is not (here | home)) | nobody [is] home',
  },
] as const;
export type JobItemId = (typeof JOB_ITEMS)[number]['id'];
export const JOB_ITEMS_BY_ID = rowsBy('id', JOB_ITEMS);

/** What is dictated under a heading of its own, and the words before it. */
export const DICTATIONS = [
  { as: 'recommendation', name: 'recommend', say: '[i] recommend | recommendation [is]' },
  { as: 'saying', name: 'customer says', say: '[the] customer (says | said | tells me | told me)' },
  // What the law's record of refrigerant wants beside its weights (40 CFR 82.156, 82.161, 82.166).
  {
    as: 'certificate',
    name: 'certificate',
    say: '[my | the] [epa | [section] six oh eight | universal | type two] (certificate | certification)',
  },
  {
    as: 'cylinder',
    name: 'cylinder',
    say: "[recovered | recovery is | [it] went | it is | it's] [in | into | to] [the | a | my] [recovery] cylinder",
  },
  { as: 'technician', name: 'technician signs', say: '[the] technician signs [off] [as] | my name is' },
  { as: 'customer', name: 'customer signs', say: '[the] customer signs [off] [as]' },
  {
    as: 'supervisor',
    name: 'supervisor acknowledges',
    say: '[the] supervisor (acknowledges | is here | here | is with me | is watching)',
  },
] as const;
export type DictatedAs = (typeof DICTATIONS)[number]['as'];
/** What a note is about, where it stands with the refrigerant. */
export const NOTE_SUBJECTS = ['certificate', 'cylinder'] as const satisfies readonly DictatedAs[];
export type NoteSubject = (typeof NOTE_SUBJECTS)[number];
export const DICTATIONS_BY_AS = rowsBy('as', DICTATIONS);

/** Said behind "supervisor is here" or "acknowledges", and no name. */
export const GO_AHEAD: readonly string[] = [
  ...['go ahead', 'go on', 'carry on', 'now'],
  ...['me', 'us', 'it', 'that', 'this', 'them', 'him', 'her', 'my work'],
];

/** Asks for the lone-worker check: how often, or when once. */
export const CHECK_ON_ME = {
  every: 'check on me every',
  once: '(check on me | check in with me) in',
} as const;
