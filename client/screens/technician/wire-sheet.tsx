import type { LandingRow } from '../../visit/rules/landings.ts';
import { MORE } from '../../words/pages/key-words.ts';
import { WireBoard } from '../show/wire-board.tsx';
import { Sheet } from './sheet.tsx';

/** The wires that moved, over the page: for a screen that has no room beside the talk. */
export function WireSheet({ rows, onClose }: { readonly rows: readonly LandingRow[]; readonly onClose: () => void }) {
  return (
    <Sheet title={MORE.wires} onClose={onClose} withBack>
      <WireBoard rows={rows} />
    </Sheet>
  );
}
