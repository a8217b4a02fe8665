import { describe, expect, it } from 'vitest';
import { landingRows } from '../../../client/visit/rules/landings.ts';
import type { WireMove } from '../../../grammar/visit/events.ts';

const off = (colour: string, from: string): WireMove => ({ action: 'lifted', colour, from });
const on = (colour: string, to: string): WireMove => ({ action: 'landed', colour, to });

describe('the table of wires', () => {
  it('holds each wire once, with where it came off and where it is', () => {
    expect(landingRows([off('brown', 'cap-FAN'), off('yellow', 'cap-HERM'), on('brown', 'cap-FAN')])).toEqual([
      { number: 1, colour: 'brown', from: 'cap-FAN', to: 'cap-FAN', state: 'landed' },
      { number: 2, colour: 'yellow', from: 'cap-HERM', state: 'off' },
    ]);
  });

  it('shows a wire on another terminal as where it is, not where it was', () => {
    expect(landingRows([off('brown', 'cap-FAN'), on('brown', 'cap-HERM')])).toMatchObject([
      { from: 'cap-FAN', to: 'cap-HERM', state: 'landed' },
    ]);
  });

  it('keeps a jumper until it is off', () => {
    const jumper: WireMove = { action: 'jumper-on', from: 'R@condenser', to: 'Y@condenser' };
    expect(landingRows([jumper])).toMatchObject([{ state: 'jumper' }]);
    expect(landingRows([jumper, { ...jumper, action: 'jumper-off' }])).toEqual([]);
  });

  it('shows a wire that was landed without having been lifted', () => {
    expect(landingRows([on('red', 'T1')])).toMatchObject([{ colour: 'red', to: 'T1', state: 'landed' }]);
  });

  it('lifts a landed wire again as a row of its own', () => {
    expect(landingRows([off('red', 'T1'), on('red', 'T1'), off('red', 'T1')]).map((row) => row.state)).toEqual([
      'landed',
      'off',
    ]);
  });
});
