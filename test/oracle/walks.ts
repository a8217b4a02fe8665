import * as fc from 'fast-check';
import {
  CIRCUIT_CLOSED_AGAIN,
  CONTROL_PROOF,
  HANDLER_PROOF,
  LINE_SIDE_PROOF,
  POWER_BACK,
  PROOF_BY_POINTS,
  PROOF_PARTS,
  RESET_ON_GROUNDED,
  TAKEN_BACK,
  VOLTAGE,
  WHOLE_PROOF,
  WORK,
  WORLD,
} from './lines.ts';

const one = fc.constantFrom(...PROOF_PARTS, ...POWER_BACK, ...VOLTAGE, ...WORK);
const breath = fc.array(one, { minLength: 2, maxLength: 3 }).map((lines) => lines.join(', '));
const back = fc.constantFrom(...TAKEN_BACK);
const world = fc.constantFrom(...WORLD);

/** A line said between others: often two in one breath, taken back or set right. */
const between = fc.oneof(
  { weight: 4, arbitrary: one },
  { weight: 4, arbitrary: breath },
  { weight: 3, arbitrary: back },
  { weight: 2, arbitrary: world },
);

/** A proof or other work in its order, now and then with a line left out or something said between. */
const proof = fc
  .tuple(
    fc.constantFrom<readonly string[]>(
      WHOLE_PROOF,
      WHOLE_PROOF,
      PROOF_BY_POINTS,
      LINE_SIDE_PROOF,
      HANDLER_PROOF,
      CONTROL_PROOF,
      RESET_ON_GROUNDED,
      CIRCUIT_CLOSED_AGAIN,
    ),
    fc.option(fc.nat({ max: 12 }), { freq: 3 }),
    fc.option(fc.tuple(fc.nat({ max: 12 }), between), { freq: 3 }),
    fc.boolean(),
  )
  .map(([lines, without, put, joined]) => {
    const left = lines.filter((_, index) => index !== without);
    if (put !== null) left.splice(Math.min(put[0], left.length), 0, put[1]);
    const first = left.slice(0, 2);
    return joined && left.length > 3 && !first.some((line) => line.startsWith('@'))
      ? [`${left[0]}, ${left[1]}`, ...left.slice(2)]
      : left;
  });

const setting = fc.constantFrom<readonly string[]>([], [], [], ['@trainee'], ['@unit flammable'], ['@unit hard-start']);

/** A history of so many lines, about. */
export function history(length: number): fc.Arbitrary<readonly string[]> {
  const piece = fc.oneof({ weight: 2, arbitrary: proof }, { weight: 5, arbitrary: between.map((line) => [line]) });
  return fc
    .tuple(setting, fc.array(piece, { minLength: length, maxLength: length }))
    .map(([first, pieces]) => [...first, ...pieces.flat().slice(0, length)]);
}
