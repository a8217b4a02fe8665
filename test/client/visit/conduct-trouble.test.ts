import { describe, expect, it } from 'vitest';
import { TypedVisit } from './typed-visit.ts';

/** A proof, in order, number by number. */
const PROOF = [
  'thermostat is calling',
  'leg one to ground one eighteen',
  'leg two to ground one eighteen',
  'thermostat is off',
  'outdoor disconnect is pulled and locked',
  'the meter reads two forty on a known source',
  'leg one to ground zero',
  'leg two to ground zero',
  'leg one to leg two zero',
  'T one to ground zero',
  'T two to ground zero',
  'T one to T two zero',
  'the meter reads two forty on a known source',
  'herm section zero volts d c',
  'fan section zero volts d c',
] as const;

/** Plain and rough ways to say that something is wrong, by kind (common practice; none of them is a phrase of the grammar's). */
const TROUBLE: Readonly<Record<string, readonly string[]>> = {
  'a voltage is told, as a correction too': [
    'no T one to ground was one eighteen',
    'sorry T one to T two was two oh eight not zero',
    'I meant T two to ground two thirty',
    'T one to ground is not zero',
    'my meter says one twenty',
    'reads one eighteen again',
    'still showing twenty seven',
    'I am seeing voltage',
    "I'm reading voltage",
    'my meter shows voltage',
    'I am getting volts on T two',
    'meter is showing something',
    "that's weird the meter jumped",
  ],
  'the proof was none': [
    'I did not actually measure it',
    'I made those numbers up',
    'I skipped T two',
    'I misread T one to ground',
    'the meter was on ohms',
    'the leads were in the amps jack',
    'meter battery is dead',
    'the meter is broken',
    'I had the probes on the wrong terminals',
  ],
  'it is the wrong thing that is off, or there is another feed': [
    'this is the wrong unit',
    'I think I locked out the other unit',
    "that's the heat pump next door I killed",
    'this is not the right breaker',
    "the lock isn't mine",
    "there's a second feed in here",
    'there are two disconnects',
    'solar is feeding it',
    'transfer switch just went over',
  ],
  'the unit is one that no proof here covers': [
    'nameplate drive inverter',
    'nameplate refrigerant is R two ninety',
    'compressor is inverter',
    "it's an inverter",
    'this is a mini split',
    'variable speed unit',
  ],
  'a charge, or a capacitor that nobody read': [
    'there is still a charge in the cap',
    'capacitor is charged',
    'found a hard start kit',
    'there is a second run capacitor in here',
  ],
  'something moves, switches, gives light, cold or heat': [
    'the blades are moving',
    'prop is turning',
    'the fan jerked',
    'something is whirring',
    'it came back to life',
    "it's doing it again",
    'the contactor slammed shut',
    'the display on the thermostat just lit',
    'cold air coming out of the vents',
    'the crankcase heater is warm',
    "she's hot",
  ],
  'a note tells of it': [
    "customer says it's cooling now",
    'note the air is blowing cold again',
    'note the compressor woke up',
    "note I skipped the meter check, and now it's running",
  ],
  'a switch, a block or a fuse may be in again': [
    'switched it back',
    'put it back',
    'I shoved the block back in',
    'fuses are in',
  ],
  'something burns, smokes or flashes': [
    'big flash',
    "there's smoke coming off it",
    'the insulation is smoking',
    'wires are melting',
    'it is sizzling',
    'it shorted',
    'my screwdriver vaporized',
    'I smell something burning',
    'Joe is at the panel',
  ],
  'somebody is at the supply, the lock or its key': [
    'the plumber is at the breaker box',
    'the landlord is in the electrical room',
    "there's a guy at the meter",
    'gave the key to the homeowner',
    'the key is missing',
    'I got knocked on my butt',
  ],
  'somebody may be hurt': [
    'my apprentice is on the ground',
    'call an ambulance',
    'call nine one one',
    'my arm is numb',
    'ouch',
    "I'm having chest pain",
  ],
};

/** Said beside a proof, and nothing that touches it. */
const INNOCENT = [
  "it's hot out here today",
  'before I turn it on I want to check the windings',
  'it used to hum',
  'when I got here the fan was running',
  'customer says the breaker tripped last night',
  'thanks',
  'nice and quiet now',
  'let me write that down',
  'herm section forty four point two microfarads',
  'the wires are brittle',
  'I need a new contactor',
  'where is the wiring diagram',
  'this one is rusty',
  'ants in the contactor',
  'bring me the ladder',
  'common is black',
  "I'll be back in a minute",
  'the customer wants to know how long',
  'give me a second',
  'what next',
  'is it dead',
  'is it safe',
  'capacitor is bulging',
  'two screws are missing',
  "it's a forty five five",
] as const;

const after = async (line: string): Promise<TypedVisit> => {
  const visit = await TypedVisit.open();
  await visit.type(...PROOF, line);
  return visit;
};

describe.each(Object.entries(TROUBLE))('a proof that stands ends where %s', (_, lines) => {
  it.each(lines)('%s', async (line) => {
    const { energy } = (await after(line)).run.context;
    expect(['proven-dead', 'in-doubt']).not.toContain(energy['outdoor-load']);
  });
});

describe('a proof that stands is left standing by', () => {
  it.each(INNOCENT)('%s', async (line) => {
    const visit = await after(line);
    await visit.saysStillOff();
    expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
    expect(visit.run.context.energy['capacitor-herm']).toBe('proven-dead');
  });
});

/** Speech has no commas: what is harmless stands in one breath with what is not. */
describe('a proof that stands ends by what follows a harmless beginning in one breath', () => {
  it.each(
    [
      "it's hot out here",
      'when I got here it was dead',
      'it used to hum',
      'I need to tell you',
      'last night it tripped',
    ].flatMap((before) =>
      ['the compressor is running', 'the blades are moving', 'power is back on'].map((after) => `${before} ${after}`),
    ),
  )('%s', async (line) => {
    expect(['proven-dead', 'in-doubt']).not.toContain((await after(line)).run.context.energy['outdoor-load']);
  });
});

describe('somebody who may be hurt', () => {
  it.each(TROUBLE['somebody may be hurt'] ?? [])('%s: help comes first, and the visit is held', async (line) => {
    const visit = await TypedVisit.open();
    await visit.type(line);
    expect(visit.mouth.last()).toMatch(/Call for help/);
    expect(visit.run.context.held).toBe(true);
  });
});

describe('a fuse or a winding, told in words that are not understood', () => {
  it.each(['found a blown fuse in the disconnect', 'one of the fuses is burnt out', 'the fuse blew again'])(
    '%s: power that comes back meets unread windings',
    async (line) => {
      const visit = await TypedVisit.open();
      await visit.type('outdoor disconnect is pulled', line, 'outdoor disconnect is back in');
      expect(visit.mouth.said.map(({ text }) => text).join(' ')).toMatch(/not every winding was read to its shell/);
    },
  );

  it.each(['the run winding is grounded', "it's a dead short to ground", 'found a burned compressor terminal'])(
    '%s: power that comes back is warned of',
    async (line) => {
      const visit = await TypedVisit.open();
      await visit.type('outdoor disconnect is pulled', line, 'outdoor disconnect is back in');
      expect(visit.mouth.said.map(({ text }) => text).join(' ')).toMatch(/Power on a winding that reads to its shell/);
    },
  );

  it.each(['the compressor is not grounded', 'no blown fuses here', 'all windings are clear'])(
    '%s: nothing is said of it',
    async (line) => {
      const visit = await TypedVisit.open();
      await visit.type('outdoor disconnect is pulled', line, 'outdoor disconnect is back in');
      expect(visit.mouth.said.map(({ text }) => text).join(' ')).not.toMatch(/winding/);
    },
  );
});

describe('a zero at a capacitor that nobody called d.c.', () => {
  it('is asked for its function before it counts', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...PROOF.slice(0, -2), 'outdoor air ninety', 'herm section zero volts');
    expect(visit.mouth.last()).toMatch(/Meter on DC\?$/);
    expect(['proven-dead', 'in-doubt']).not.toContain(visit.run.context.energy['capacitor-herm']);
    await visit.type('yes');
    expect(visit.run.context.energy['capacitor-herm']).toBe('proven-dead');
  });
});
