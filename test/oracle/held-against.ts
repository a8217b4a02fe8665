import type { EnergyState, ZoneId } from '../../grammar/vocabulary/zones.ts';
import { ZONES } from '../../grammar/vocabulary/zones.ts';
import type { Letter, Warning } from './facts.ts';
import { type Opinion, Oracle } from './oracle.ts';
import { type Turn, TypedWorld } from './typed-world.ts';

interface Kind {
  readonly rule: Letter;
  /** "proven dead, though …" or the warning that was not given. */
  readonly kind: string;
}

/** A way in which the machine does what the paper forbids, or is silent where the paper wants a word. */
export interface Disagreement extends Kind {
  /** The history up to the line by which it showed. */
  readonly lines: readonly string[];
  /** What the machine said in that turn. */
  readonly said: string;
}

export const keyOf = ({ rule, kind }: Kind): string => `${rule}: ${kind}`;

type Energy = Partial<Record<ZoneId, EnergyState>>;

/** Types a history into the machine and holds what comes of it against the oracle: the first of each kind. */
export async function heldAgainst(lines: readonly string[]): Promise<readonly Disagreement[]> {
  const setting = lines.filter((line) => line.startsWith('@unit') || line === '@trainee');
  const world = new TypedWorld(setting);
  const oracle = new Oracle(world.unit, world.role);
  const found = new Map<string, Disagreement>();
  let energy: Energy = {};
  let wrong: readonly ZoneId[] = [];
  const history: string[] = [];
  const compare = (turn: Turn): void => {
    const before = energy;
    energy = energyAfter(energy, turn);
    const opinion = opinionOf(oracle, turn);
    if (opinion === undefined) return;
    const isWrong = ZONES.filter((zone) => energy[zone] === 'proven-dead' && opinion.against[zone].length > 0);
    const newly = isWrong.filter((zone) => !wrong.includes(zone));
    wrong = isWrong;
    for (const one of [...called(newly, opinion), ...silent(turn, before, energy, opinion)]) {
      const said = turn.said.map(({ kind, text }) => `${kind}: ${text}`).join(' / ');
      if (!found.has(keyOf(one))) found.set(keyOf(one), { rule: one.rule, kind: one.kind, lines: [...history], said });
    }
  };
  compare(await world.open());
  for (const line of lines) {
    history.push(line);
    if (!setting.includes(line)) compare(await world.do(line));
  }
  return [...found.values()];
}

/** The oracle's opinion after all inputs of a turn, with every warning that fell due on the way. */
function opinionOf(oracle: Oracle, turn: Turn): Opinion | undefined {
  const due: Warning[] = [];
  let opinion = turn.reloaded ? oracle.after({ type: 'reloaded' }) : undefined;
  for (const event of turn.events) {
    if (event.type !== 'input.taken') continue;
    opinion = oracle.after(event.input);
    due.push(...opinion.due);
  }
  return opinion && { ...opinion, due };
}

function energyAfter(before: Energy, turn: Turn): Energy {
  const after = { ...before };
  for (const event of turn.events) if (event.type === 'energy.changed') after[event.zone] = event.to;
  return after;
}

/** Zones that came to be called proven dead, or are still called so though they may no longer be. */
function called(zones: readonly ZoneId[], opinion: Opinion): readonly Kind[] {
  return zones.flatMap((zone) =>
    opinion.against[zone].map(({ rule, reason }) => ({ rule, kind: `proven dead, though ${reason}` })),
  );
}

function silent(turn: Turn, before: Energy, after: Energy, opinion: Opinion): readonly Kind[] {
  return opinion.due.filter(
    (warning) => !endsNothing(warning, before) && !follows(warning, before, after) && !satisfied(warning, turn),
  );
}

/** Where the machine has told already that nothing is proven, there is no proof to lapse or to end aloud. */
function endsNothing({ kind, ends = ZONES }: Warning, before: Energy): boolean {
  const inProof: readonly (EnergyState | undefined)[] = ['proving', 'reads-dead', 'proven-dead'];
  const isEnd = kind === 'proof lapsed' || kind === 'power back where it was proven dead';
  return isEnd && !ends.some((zone) => inProof.includes(before[zone]));
}

/** The machine holds the zone for dead: that is another disagreement, and this one only follows from it. */
function follows({ zone, wants }: Warning, before: Energy, after: Energy): boolean {
  if (zone === undefined) return false;
  const dead: readonly (EnergyState | undefined)[] =
    wants === 'not-taken' ? ['reads-dead', 'proven-dead'] : ['proven-dead'];
  return dead.includes(before[zone]) || dead.includes(after[zone]);
}

function satisfied({ wants, at, quantity }: Warning, { events, said }: Turn): boolean {
  const warned =
    said.some(({ kind }) => kind === 'warning') ||
    events.some((event) => event.type === 'caution.spoken' && event.late !== undefined) ||
    (events.some((event) => event.type === 'reading.refused') && said.length > 0);
  if (wants === 'not-taken')
    return !events.some(
      (event) =>
        event.type === 'reading.logged' &&
        event.reading.at.join() === at?.join() &&
        (quantity === undefined || event.reading.quantity === quantity),
    );
  if (wants === 'doubted') return said.length > 0 && events.some((event) => event.type === 'part.doubted');
  if (wants === 'aloud') return warned || said.some(({ kind }) => kind === 'question' || kind === 'answer');
  return warned;
}

/** Leaves out lines, and parts of lines, one after another for as long as the same kind still shows. */
export async function shortest(found: Disagreement): Promise<Disagreement> {
  let best = found;
  const shows = async (lines: readonly string[]): Promise<boolean> => {
    const again = (await heldAgainst(lines)).find((one) => keyOf(one) === keyOf(found));
    if (again !== undefined) best = again;
    return again !== undefined;
  };
  for (let share = 8; share >= 1; share = Math.floor(share / 2)) {
    for (let index = best.lines.length - share; index >= 0; index -= 1) {
      await shows([...best.lines.slice(0, index), ...best.lines.slice(index + share)]);
    }
  }
  for (let index = best.lines.length - 1; index >= 0; index -= 1) {
    for (const part of best.lines[index]?.split(', ') ?? []) {
      if (part !== best.lines[index] && (await shows(best.lines.with(index, part)))) break;
    }
  }
  return best;
}
