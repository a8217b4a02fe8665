import { performance } from 'node:perf_hooks';
import { loadHearing, loadHearingParts } from '../../../client/listening/node/load-hearing.ts';
import { GATES } from '../../../client/listening/recogniser/gates.ts';
import { Recogniser } from '../../../client/listening/recogniser/recogniser.ts';
import { visitGrammar } from '../../../client/listening/visit-hearing.ts';
import { PRONUNCIATIONS } from '../../../grammar/export/pronunciations.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import { type Figure, quantile } from '../figures.ts';
import type { Plan } from './plan.ts';

const MB = 2 ** 20;

/** What it costs to open the ear, to change what is expected, and to keep it warm. */
export async function speed(plan: Plan): Promise<Figure[]> {
  plan.progress('opening, grammar switches, memory');
  const before = process.memoryUsage().rss;
  const opened = performance.now();
  const hearing = await loadHearing(plan.settings);
  const openMs = performance.now() - opened;
  const kept = process.memoryUsage().rss - before;
  hearing.close();

  const parts = await loadHearingParts(plan.settings);
  const recogniser = await Recogniser.open(parts.speech, parts.model, PRONUNCIATIONS, GATES[parts.model.id]);
  const switches = MEASURANDS.map(({ quantity, at }) => {
    const began = performance.now();
    recogniser.setExpected(visitGrammar({ readings: [{ quantity, at }] }));
    return performance.now() - began;
  });
  const all = visitGrammar('all') ?? '';
  const began = performance.now();
  recogniser.setEverything(all);
  const everythingMs = performance.now() - began;
  const heap = parts.speech.HEAP8.length;
  recogniser.close();
  return [
    { name: 'opening the ear', value: openMs, unit: 'ms' },
    {
      name: 'grammar switch to one expected reading, p50',
      value: quantile(switches, 0.5),
      unit: 'ms',
      against: `${switches.length} readings; all sentences: ${everythingMs.toFixed(0)} ms`,
    },
    { name: 'grammar switch to one expected reading, p95', value: quantile(switches, 0.95), unit: 'ms' },
    { name: 'memory of one model kept warm (WebAssembly heap)', value: heap / MB, unit: 'MB' },
    { name: 'memory of the whole ear (resident, with the packages)', value: kept / MB, unit: 'MB' },
  ];
}
