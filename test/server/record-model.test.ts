import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sha256 } from '../../client/record/node/sha256.ts';
import { verifyChain } from '../../grammar/visit/verify-chain.ts';
import { SEED, tries } from '../how-much.ts';
import { tellFigure } from '../promises/tell-figure.ts';
import { type Faults, ModelWorld } from './record-model.ts';

type Move =
  | { readonly move: 'write' | 'deliver' | 'turns'; readonly count: number }
  | { readonly move: 'restore'; readonly backup: number }
  | { readonly move: 'pry'; readonly way: number }
  | { readonly move: 'cut' | 'crash' | 'reopen' | 'wait' | 'double' | 'swap' };

const moves = (restores: boolean): fc.Arbitrary<Move[]> =>
  fc.array(
    fc.oneof(
      {
        weight: 4,
        arbitrary: fc.record({ move: fc.constant('write' as const), count: fc.integer({ min: 1, max: 5 }) }),
      },
      {
        weight: 8,
        arbitrary: fc.record({ move: fc.constant('deliver' as const), count: fc.integer({ min: 1, max: 8 }) }),
      },
      {
        weight: 6,
        arbitrary: fc.record({ move: fc.constant('turns' as const), count: fc.integer({ min: 1, max: 4 }) }),
      },
      {
        weight: 4,
        arbitrary: fc.record({
          move: fc.constantFrom('cut', 'crash', 'reopen', 'wait', 'wait', 'double', 'swap'),
        }) as fc.Arbitrary<Move>,
      },
      { weight: 2, arbitrary: fc.record({ move: fc.constant('pry' as const), way: fc.nat({ max: 29 }) }) },
      ...(restores
        ? [{ weight: 1, arbitrary: fc.record({ move: fc.constant('restore' as const), backup: fc.nat({ max: 20 }) }) }]
        : []),
    ),
    { minLength: 5, maxLength: 40 },
  );

async function make(world: ModelWorld, move: Move): Promise<void> {
  switch (move.move) {
    case 'write':
      await world.outbox.append(Array.from({ length: move.count }, (_, at) => `{"n":${at}}`));
      return;
    case 'deliver':
      return world.deliver(move.count);
    case 'turns':
      return world.turns(move.count);
    case 'restore':
      return world.restore(move.backup);
    case 'pry':
      return world.pry(move.way);
    case 'cut':
    case 'crash':
    case 'reopen':
    case 'wait':
    case 'double':
    case 'swap':
      return world[move.move]();
  }
}

/** What must hold after every move. */
async function holds(world: ModelWorld): Promise<void> {
  const durable = world.disk.of(world.stream);
  const written = await world.log.read(1);
  // The server's log is a prefix of the device's.
  expect(durable.map(({ hash }) => hash)).toEqual(written.slice(0, durable.length).map(({ hash }) => hash));
  // Nobody reads another company's visit: nothing of ours is told to those who pry, and nothing of theirs is kept.
  const told = world.overheard.join('\n');
  expect(written.filter(({ hash }) => told.includes(hash))).toEqual([]);
  expect([...world.disk.durable.keys()].filter((name) => !name.startsWith(`${world.stream.company}/`))).toEqual([]);
  // What the device holds for acknowledged is on the server's disk.
  if (!world.setBack) expect(world.outbox.state().acknowledged).toBeLessThanOrEqual(durable.length);
}

async function run(list: readonly Move[], faults: Faults = {}): Promise<void> {
  const world = await ModelWorld.begin('model', faults);
  try {
    await runIn(world, list);
  } finally {
    world.end();
  }
}

async function runIn(world: ModelWorld, list: readonly Move[]): Promise<void> {
  await world.turns(2);
  for (const move of list) {
    await make(world, move);
    await holds(world);
  }
  // It converges once the network heals, and both chains verify.
  expect(await world.converges()).toBe(true);
  await holds(world);
  for (const entries of [world.disk.of(world.stream), await world.log.read(1)]) {
    expect(await verifyChain(world.stream, entries, sha256)).toMatchObject({ intact: true });
  }
}

/** How many courses it takes until a fault is found. */
async function coursesUntilFound(faults: Faults): Promise<number | undefined> {
  const found = await fc.check(
    fc.asyncProperty(moves(false), (list) => run(list, faults)),
    { numRuns: 500, seed: SEED, endOnFailure: true },
  );
  return found.failed ? found.numRuns : undefined;
}

describe('the record as a model: whatever is doubled, swapped, cut, killed, set back and pried into', {
  timeout: 900_000,
}, () => {
  test('its chain verifies, what is acknowledged is on the disk, the server has a prefix, it converges, nobody else reads it', async () => {
    await fc.assert(
      fc.asyncProperty(moves(true), (list) => run(list)),
      { numRuns: tries(300, 10_000), seed: SEED },
    );
    tellFigure('courses of the model', tries(300, 10_000));
  });

  test('an event that comes once more behind newer ones does not hold back what is told of those', async () => {
    const connected: readonly Move[] = [
      { move: 'deliver', count: 3 },
      { move: 'turns', count: 4 },
      { move: 'deliver', count: 3 },
      { move: 'turns', count: 4 },
    ];
    const behind: readonly Move[] = [
      { move: 'write', count: 2 },
      { move: 'turns', count: 4 },
      { move: 'double' },
      { move: 'deliver', count: 1 },
      { move: 'swap' },
      { move: 'deliver', count: 9 },
    ];
    await run([...connected, ...behind]);
  });

  test('a server that acknowledges before the disk has it is found', async () => {
    const courses = await coursesUntilFound({ hasty: true });
    expect(courses).toBeDefined();
    tellFigure('courses until a hasty server is found', courses ?? 0);
  });

  test('a server that reads visits of any company by their name is found', async () => {
    const courses = await coursesUntilFound({ blind: true });
    expect(courses).toBeDefined();
    tellFigure('courses until a blind server is found', courses ?? 0);
  });
});
