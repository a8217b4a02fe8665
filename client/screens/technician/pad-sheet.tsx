import { useEffect, useState } from 'react';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { QuantityId, UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { bareUnit, type UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { UNITS } from '../../../grammar/vocabulary/units.ts';
import { PAD } from '../../words/pages/key-words.ts';
import { showReading } from '../../words/shown/show-reading.ts';
import type { PadRequest } from '../glance/touch-key.ts';
import { NumberPad } from './number-pad.tsx';
import { Sheet } from './sheet.tsx';

interface PadSheetProps {
  readonly request: PadRequest;
  /** Offered first. */
  readonly units: UnitChoice;
  readonly onEnter: (meaning: Meaning, words: string) => void;
  /** Told what was entered so far, where several numbers are asked; no words once they are given or left. */
  readonly onSoFar: (words: string) => void;
  readonly onClose: () => void;
}

/** The number pad for what is asked: one number, or several one after another. */
export function PadSheet({ request, units, onEnter, onSoFar, onClose }: PadSheetProps) {
  const [values, setValues] = useState<readonly Value[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the pad closes, and only then
  useEffect(() => () => onSoFar(''), []);
  const asked = numbersOf(request);
  const at = Math.min(values.length, asked.length - 1);
  const now = asked[at];
  if (now === undefined) return null;
  const take = (value: Value, unit: string) => {
    const all = [...values, value];
    if (all.length < asked.length) {
      onSoFar(PAD.soFar(all, asked.length));
      return setValues(all);
    }
    const { meaning, words } = meaningOf(request, all, unit as UnitCode);
    onEnter(meaning, words);
    onClose();
  };
  return (
    <Sheet title={now.title} onClose={onClose} tall>
      <NumberPad
        key={at}
        title={asked.length === 1 ? now.title : PAD.oneOf(at + 1, asked.length, now.title)}
        units={unitsOf(
          now.quantity,
          request.kind === 'set-right' ? request.reading.unit : bareUnit(now.quantity, units),
        )}
        mayBeOpen={now.quantity === 'resistance' || now.quantity === 'insulation'}
        mayBeNegative={now.quantity === 'temperature' || now.quantity === 'wet-bulb'}
        onEnter={take}
        onCancel={onClose}
      />
    </Sheet>
  );
}

interface AskedNumber {
  readonly title: string;
  readonly quantity: QuantityId;
}

/** What is read in a proof, in the order in which it is asked. */
function proofNumbers(pairs: Extract<PadRequest, { kind: 'proof' }>['pairs']): readonly string[] {
  const { meter, pair, meterAgain } = PAD.proof;
  return [meter, ...pairs.map(pair), meterAgain];
}

function numbersOf(request: PadRequest): readonly AskedNumber[] {
  switch (request.kind) {
    case 'reading':
      return [{ title: PAD.reading(request.at, request.quantity), quantity: request.quantity }];
    case 'set-right':
      return [{ title: PAD.setRight(request.reading), quantity: request.reading.quantity }];
    case 'proof':
      return proofNumbers(request.pairs).map((title) => ({ title, quantity: 'voltage' }));
    case 'discharge':
      return request.sections.map((at) => ({ title: PAD.charge(at), quantity: 'voltage-dc' }));
    case 'meter':
      return [{ title: PAD.proof.meter, quantity: 'voltage' }];
  }
}

function meaningOf(
  request: PadRequest,
  values: readonly Value[],
  unit: UnitCode,
): { readonly meaning: Meaning; readonly words: string } {
  const numbers = values.map(Number);
  switch (request.kind) {
    case 'reading': {
      const reading = readingOf(request.quantity, request.at, values[0] as Value, unit, request.bench);
      return { meaning: { kind: 'reading', reading }, words: showReading(reading) };
    }
    case 'set-right': {
      const value = values[0] as Value;
      return {
        meaning: { kind: 'command', command: 'correct', correction: { value, unit } },
        words: PAD.heard.correction(value, unit),
      };
    }
    case 'proof': {
      const [before = 0, ...rest] = numbers;
      const after = rest.pop() ?? 0;
      return {
        meaning: {
          kind: 'report',
          report: { type: 'absence-of-voltage', zone: request.zone, before, values: rest, after },
        },
        words: PAD.heard.proof(before, rest, after),
      };
    }
    case 'discharge': {
      const readings = request.sections.map((at, index) =>
        readingOf('voltage-dc', at, numbers[index] ?? 0, 'V', false),
      );
      return {
        meaning: { kind: 'several', parts: readings.map((reading) => ({ kind: 'reading', reading })) },
        words: PAD.heard.several(readings),
      };
    }
    case 'meter': {
      const [value = 0] = numbers;
      return {
        meaning: { kind: 'report', report: { type: 'meter-proof', value } },
        words: PAD.heard.meter(value),
      };
    }
  }
}

function readingOf(quantity: QuantityId, at: Reading['at'], value: Value, unit: UnitCode, bench: boolean): Reading {
  return {
    quantity,
    at,
    value,
    unit,
    ...(quantity === 'pressure' ? { gauge: true as const } : {}),
    ...(bench ? { bench: true as const } : {}),
  };
}

/** The quantity's units, the one that is likely meant first, then its base unit. */
function unitsOf(quantity: QuantityId, first: UnitCode): readonly { readonly code: UnitCode; readonly sign: string }[] {
  const units = UNITS.filter((unit) => (unit.quantities as readonly QuantityId[]).includes(quantity));
  const rank = ({ code, base }: (typeof units)[number]) => (code === first ? 2 : Number(code === base));
  const sorted = [...units].sort((a, b) => rank(b) - rank(a));
  return [...new Map(sorted.map(({ code, sign }) => [code, { code, sign }])).values()];
}
