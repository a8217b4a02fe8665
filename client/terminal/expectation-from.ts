import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { MEASURANDS } from '../../grammar/vocabulary/measurands.ts';
import { wrongUse } from './read-arguments.ts';
import type { Tool } from './tool.ts';

/**
 * What `--expect` names: readings by their points ("L1,ground" or "compressor"), several apart by ";". Each set of
 * points stands for the first quantity that the table has there. Undefined where a set is in no row.
 */
export function expectationFrom(text: string): Expectation | undefined {
  const readings: { quantity: (typeof MEASURANDS)[number]['quantity']; at: (typeof MEASURANDS)[number]['at'] }[] = [];
  for (const set of text.split(';')) {
    const points = set
      .split(',')
      .map((point) => point.trim().toLowerCase())
      .sort()
      .join();
    const rows = MEASURANDS.filter(
      (row) =>
        [...row.at]
          .map((point) => point.toLowerCase())
          .sort()
          .join() === points,
    );
    if (rows.length === 0) return undefined;
    readings.push(...rows.slice(0, 1).map(({ quantity, at }) => ({ quantity, at })));
  }
  return { readings };
}

/** The option by which tools take an expectation. */
export const EXPECT_OPTION = {
  value: 'POINTS',
  says: 'what a bare value belongs to: points such as L1,ground or compressor; several sets apart by ";"',
} as const;

/** The expectation that a tool's option names. @throws {TerminalError} usage, where no reading has such points */
export function expectationOf(tool: Tool, text: string | undefined): Expectation | undefined {
  const expectation = text === undefined ? undefined : expectationFrom(text);
  if (text !== undefined && expectation === undefined) throw wrongUse(tool, `No reading is taken at "${text}"`);
  return expectation;
}
