import { describe, expect, it } from 'vitest';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** Sentences of one kind, the zone where hands are by them, and how that is said. Zones: common practice. */
const KINDS: Readonly<Record<string, { readonly zone: ZoneId; readonly sentences: readonly string[] }>> = {
  'a wire is lifted or landed': {
    zone: 'outdoor-load',
    sentences: [
      'lifted the red wire from T one',
      'lifted the brown wire from fan',
      'landed the red wire on T one',
      'landed brown on fan',
    ],
  },
  'a control wire is lifted or landed': {
    zone: 'control',
    sentences: ['landed the blue wire on C at the thermostat', 'landed the red wire on R at the air handler'],
  },
  'a jumper is put on or taken off': {
    zone: 'outdoor-load',
    sentences: ['put a jumper across leg one and T one', 'jumper on from L one to T one'],
  },
  'a control jumper is put on': { zone: 'control', sentences: ['jumper on from R to Y', 'jumped R to G'] },
  'a part is taken out': {
    zone: 'outdoor-load',
    sentences: ['took the contactor out', 'pulled the fuses', 'removed the fan motor', 'the dual capacitor is out'],
  },
  'a part is put back in': { zone: 'outdoor-load', sentences: ['contactor is back in', 'put the capacitor back in'] },
  'a part is fitted': {
    zone: 'outdoor-load',
    sentences: [
      'fitted a contactor',
      'installed a hard start kit',
      'fitted a forty five over five dual capacitor four forty volt',
    ],
  },
  'a part is fitted indoors': { zone: 'air-handler', sentences: ['fitted a blower motor', 'fitted a transformer'] },
  'a breaker is fitted': { zone: 'disconnect-line', sentences: ['fitted a thirty amp breaker'] },
  'a control part is fitted': { zone: 'control', sentences: ['fitted a thermostat', 'fitted a float switch'] },
  'the terminal cover is off': {
    zone: 'outdoor-load',
    sentences: ['the terminal cover is off', 'took the terminal cover off', 'compressor terminals are exposed'],
  },
  'ohms, continuity or microfarads': {
    zone: 'outdoor-load',
    sentences: [
      'fan common to fan run twelve ohms',
      'compressor common to run open',
      'herm section forty four microfarads',
    ],
  },
  'ohms of the control circuit': { zone: 'control', sentences: ['coil twelve ohms'] },
  'work done': {
    zone: 'outdoor-load',
    sentences: ['tightened the lugs', 'cleaned the contacts', 'freed up the fan', 'cleaned the outdoor coil'],
  },
};

const SAID: Readonly<Partial<Record<ZoneId, string>>> = {
  'outdoor-load': 'Outdoor unit: not proven dead.',
  control: '24 volt control: not proven dead.',
  'air-handler': 'Air handler: not proven dead.',
  'disconnect-line': 'Disconnect line side: not proven dead.',
};
const REFUSED = /^Refused: not proven dead/;

describe.each(Object.entries(KINDS))('that %s', (_, { zone, sentences }) => {
  it.each(sentences)('in a zone not proven dead is said at once, recorded and taken back: %s', async (sentence) => {
    const visit = await TypedVisit.open();
    const count = visit.mouth.said.length;
    await visit.type(sentence);
    const [first] = visit.mouth.said.slice(count);
    expect(first?.kind).toBe('warning');
    if (!REFUSED.test(first?.text ?? '')) expect(first?.text).toBe(SAID[zone]);
    expect(visit.of('work.unproven')).toEqual([expect.objectContaining({ zone, state: 'unknown' })]);
    await visit.type('finish the visit');
    expect(visit.of('close.refused').at(-1)?.why.join(' ')).toContain('Not proven dead, ');
    await visit.type('take that back');
    expect(visit.run.context.unproven).toEqual([]);
  });
});

describe('in a unit that is proven dead', () => {
  it.each([
    'lifted the brown wire from fan',
    'took the contactor out',
    'the terminal cover is off',
    'fitted a forty five over five dual capacitor four forty volt',
    'fan common to fan run twelve ohms',
    'tightened the lugs',
    'put a jumper across leg one and T one',
  ])('nothing is held against it: %s', async (sentence) => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD);
    expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
    const count = visit.mouth.said.length;
    await visit.type(sentence);
    expect(visit.of('work.unproven')).toEqual([]);
    expect(visit.mouth.said.slice(count).filter(({ kind }) => kind === 'warning')).toEqual([]);
  });

  it('each part of a breath is judged by what the part before it left', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'outdoor disconnect is back in, lifted the brown wire from fan');
    expect(visit.of('work.unproven')).toEqual([expect.objectContaining({ zone: 'outdoor-load', state: 'live' })]);
  });

  it('ohms across two zones want both of them proven dead', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'fuse one line end to fuse one load end open');
    expect(visit.of('reading.refused')).toMatchObject([{ reason: 'not-proven-dead' }]);
    expect(visit.of('work.unproven')).toMatchObject([{ zone: 'disconnect-line' }]);
  });
});

describe('what touches no live part', () => {
  it.each(['fitted a filter', 'cleaned the filter', 'opened the vents', 'set the thermostat right', 'cover is off'])(
    'is no work in a zone: %s',
    async (sentence) => {
      const visit = await TypedVisit.open();
      await visit.type(sentence);
      expect(visit.of('work.unproven')).toEqual([]);
    },
  );
});

describe('a close after work in a zone not proven dead', () => {
  const REASON = 'note the main was off, tested with a pen';

  it.each([
    'note',
    'note finish anyway',
    'note ok',
    'note just close it',
    'note yes',
    'note because',
    'yes',
    'finish the visit',
  ])('is not got by words that are no reason: %s', async (sentence) => {
    const visit = await TypedVisit.open();
    await visit.type('took the contactor out', 'finish the visit', sentence);
    expect(visit.run.context.phase).not.toBe('closed');
    await visit.type(REASON);
    expect(visit.run.context.phase).toBe('closed');
  });

  it('stands open in the summary, in the record and in its print', async () => {
    const visit = await TypedVisit.open();
    await visit.type('took the contactor out', 'lifted the red wire from T one', 'finish the visit', REASON);
    const { summary, unproven } = foldVisit(visit.events());
    const open = summary?.openItems.join('. ') ?? '';
    expect(open).toContain('Not proven dead, outdoor unit: contactor taken out; red wire lifted from T one.');
    expect(open).toContain('closed all the same: the main was off, tested with a pen');
    expect(open).toContain('contactor was taken out and not put back');
    expect(unproven.map(({ what }) => what)).toEqual(['contactor taken out', 'red wire lifted from T one']);
    expect(toVisitRecord(visit.events()).unproven).toMatchObject([
      { what: 'contactor taken out', zone: 'outdoor-load', state: 'unknown' },
      { what: 'red wire lifted from T one', zone: 'outdoor-load', state: 'unknown' },
    ]);
  });

  it.each([
    ['a cover left off', 'cover is off', 'the cover of the unit was left off'],
    ['a switch left open', 'outdoor disconnect is pulled', 'the outdoor disconnect was left open'],
  ])('names %s', async (_, sentence, item) => {
    const visit = await TypedVisit.open();
    await visit.type(sentence, 'finish the visit');
    expect(foldVisit(visit.events()).summary?.openItems).toContain(item);
  });
});

describe('a compressor', () => {
  it.each([
    'compressor common to compressor run two ohms on the bench',
    'compressor common to shell open on the bench',
    'compressor start to compressor run five ohms on the bench',
  ])('is never on the bench: %s', async (sentence) => {
    const visit = await TypedVisit.open();
    await visit.type(sentence);
    expect(visit.of('reading.refused')).toMatchObject([{ reason: 'not-on-the-bench' }]);
    expect(visit.mouth.said.map(({ text }) => text).join(' ')).toContain('is not measured on the bench');
    await visit.type('yes');
    expect(visit.of('reading.logged')).toEqual([]);
    expect(visit.run.context.evidenceNumber).toBe(0);
  });

  it.each(['fan section five microfarads on the bench', 'fan common to fan run twelve ohms on the bench'])(
    'is not what comes out: %s',
    async (sentence) => {
      const visit = await TypedVisit.open();
      await visit.type(sentence);
      expect(visit.of('reading.logged')).toHaveLength(1);
    },
  );
});

describe('hands that may be hurt', () => {
  const WARNED: Readonly<Record<string, { readonly words: RegExp; readonly sentences: readonly string[] }>> = {
    'press a contactor': {
      words: /Never push a contactor in by hand/,
      sentences: [
        'pressed the contactor by hand',
        'pushed in the contactor with a screwdriver',
        'held the contactor in',
      ],
    },
    'bypass a switch': {
      words: /bypassed protects nothing/,
      sentences: [
        'bypassed the high pressure switch',
        'jumpered the float switch',
        'jumped high switch side one to high switch side two',
        'jumped low switch side one to low switch side two',
      ],
    },
    'are at a shell': {
      words: /Hand off the shell/,
      sentences: [
        'compressor is too hot to touch',
        'touched the compressor',
        'put my hand on the shell',
        'leg one to leg two two forty, compressor is too hot to touch, zero',
      ],
    },
    'turn a fan': {
      words: /not proven dead/,
      sentences: ['outdoor fan spins freely by hand', 'outdoor fan is stiff'],
    },
  };

  it.each(
    Object.entries(WARNED).flatMap(([kind, { words, sentences }]) =>
      sentences.map((one) => [kind, one, words] as const),
    ),
  )('%s: warned of as it is told: %s', async (_, sentence, words) => {
    const visit = await TypedVisit.open();
    const count = visit.mouth.said.length;
    await visit.type(sentence);
    const warnings = visit.mouth.said.slice(count).filter(({ kind }) => kind === 'warning');
    expect(warnings.map(({ text }) => text).join(' ')).toMatch(words);
  });

  it('a shell and a fan of a unit that is proven dead are not warned of', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD);
    const count = visit.mouth.said.length;
    await visit.type('compressor is too hot to touch', 'outdoor fan spins freely by hand');
    expect(visit.mouth.said.slice(count).filter(({ kind }) => kind === 'warning')).toEqual([]);
  });
});

describe('what is understood with a doubt', () => {
  it.each(['brown wire popped off fan'])(
    'is said at once, before it is asked, and recorded at the yes: %s',
    async (sentence) => {
      const visit = await TypedVisit.open();
      const count = visit.mouth.said.length;
      await visit.type(sentence);
      expect(visit.mouth.said.slice(count).map(({ kind }) => kind)).toEqual(['warning', 'question']);
      expect(visit.of('work.unproven')).toEqual([]);
      await visit.type('yes');
      expect(visit.of('work.unproven')).toHaveLength(1);
    },
  );
});

describe('covers', () => {
  it('back on by their own report answer the question of the covers, and taken back ask it again', async () => {
    const visit = await TypedVisit.open();
    await visit.type('cover is off', 'put the cover back on');
    expect(visit.run.context.settled).toContain('energy.covers-on');
    await visit.type('take that back');
    expect(visit.run.context.settled).not.toContain('energy.covers-on');
  });

  it('that come off again ask it again, until that is taken back', async () => {
    const visit = await TypedVisit.open();
    await visit.type('covers are on', 'the terminal cover is off');
    expect(visit.run.context.settled).not.toContain('energy.covers-on');
    await visit.type('take that back');
    expect(visit.run.context.settled).toContain('energy.covers-on');
  });
});

/** Rough words of the trade that the grammar does not take: hands were there all the same (common practice). */
const HANDS_NOT_UNDERSTOOD: Readonly<Record<string, readonly string[]>> = {
  'Outdoor unit': [
    'yanked them leads off the contactor',
    'ohmed out the compressor',
    'megged the compressor',
    'got my fingers in the condenser',
    'unhooked the fan motor leads',
    'rang out the condenser fan motor',
    'shorted the cap with a driver',
  ],
  'Air handler': ['unplugged the blower motor harness', 'jiggled the wires on the transformer'],
  '24 volt control': ['spliced the thermostat wires'],
};
/** Told of nobody's hands, or of hands that were kept away. */
const NO_HANDS = [
  "haven't touched the contactor",
  'about to unhook the compressor leads',
  'should I megg the compressor',
  'the customer changed the thermostat batteries',
  'never touched the capacitor leads',
];

describe('hands told of in words that are not understood', () => {
  const cases = Object.entries(HANDS_NOT_UNDERSTOOD).flatMap(([zone, lines]) => lines.map((line) => [zone, line]));
  it.each(cases)('%s: %s', async (zone = '', line = '') => {
    const visit = await TypedVisit.open();
    await visit.type(line);
    const warned = visit.mouth.said.filter(({ kind }) => kind === 'warning').map(({ text }) => text);
    expect(warned.join(' ')).toContain(`${zone}: not proven dead.`);
  });

  it.each(NO_HANDS)('nothing is said of: %s', async (line) => {
    const visit = await TypedVisit.open();
    await visit.type(line);
    expect(visit.mouth.said.filter(({ kind }) => kind === 'warning')).toEqual([]);
  });

  it('nothing is said where the zone is proven dead', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD);
    const before = visit.mouth.said.length;
    await visit.type('ohmed out the compressor');
    expect(visit.mouth.said.slice(before).filter(({ kind }) => kind === 'warning')).toEqual([]);
  });
});

describe('a bypassed switch', () => {
  it('holds the close until the bypass is told out', async () => {
    const visit = await TypedVisit.open();
    await visit.type('bypassed the float switch', 'finish the visit');
    expect(JSON.stringify(visit.of('close.refused').at(-1))).toContain('A switch is still bypassed');
    await visit.type('took the bypass out', 'finish the visit');
    expect(JSON.stringify(visit.of('close.refused').at(-1))).not.toContain('A switch is still bypassed');
  });
});
