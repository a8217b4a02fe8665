import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { Rung, RungItem } from '../../practice/ladder/draw-ladder.ts';
import { capital } from '../../words/capital.ts';
import { branchWords } from '../../words/practice/ladder-words.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { pointWords } from '../../words/things/place-words.ts';

export interface ShownLadder {
  readonly rungs: readonly Rung[];
  readonly name: string;
  readonly probes: readonly PointId[];
  readonly onPut: (point: PointId) => void;
}

/** The same as the drawing: each terminal, the parts that it lies between, and a key that puts a probe there. */
export function LadderTable({ rungs, name, probes, onPut }: ShownLadder) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard
    <section className="ladder-scroll" tabIndex={0} aria-label={name}>
      <table className="practice-table ladder-table">
        <caption>{name}</caption>
        <thead>
          <tr>
            <th scope="col">{PRACTICE.terminal}</th>
            <th scope="col">{PRACTICE.between}</th>
            <th scope="col">{PRACTICE.probe}</th>
          </tr>
        </thead>
        <tbody>
          {rungs.flatMap(({ items }) =>
            items.flatMap((item, at) =>
              item.kind !== 'terminal'
                ? []
                : [
                    <tr key={item.point}>
                      <th scope="row">{capital(pointWords(item.point))}</th>
                      <td>
                        {[partBeside(items.slice(0, at).reverse()), partBeside(items.slice(at + 1))]
                          .filter(Boolean)
                          .join(' · ')}
                      </td>
                      <td>
                        <button
                          type="button"
                          className="key"
                          aria-pressed={probes.includes(item.point)}
                          aria-label={PRACTICE.place(pointWords(item.point))}
                          onClick={() => onPut(item.point)}
                        >
                          {PRACTICE.put}
                        </button>
                      </td>
                    </tr>,
                  ],
            ),
          )}
        </tbody>
      </table>
    </section>
  );
}

function partBeside(items: readonly RungItem[]): string | undefined {
  const part = items.find((item) => item.kind === 'part');
  return part?.kind === 'part' ? `${branchWords(part.branch)}${part.known === 'not-said' ? ' ?' : ''}` : undefined;
}
