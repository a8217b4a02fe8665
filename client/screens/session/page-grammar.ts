import type { Understanding } from '../../../grammar/phrases/meaning.ts';
import type { UnderstandAsked } from '../worker/understand-asked.ts';
import { AskedWorker } from './asked-worker.ts';

/**
 * The grammar in a worker of its own: the page carries neither its rules nor its words, and stays free while a long
 * sentence is taken apart.
 */
export function startGrammar(): AskedWorker<UnderstandAsked, Understanding> {
  const grammar = new AskedWorker<UnderstandAsked, Understanding>(
    () => new Worker(new URL('../worker/understand-worker.ts', import.meta.url), { type: 'module' }),
    understandHere,
  );
  grammar.ready();
  return grammar;
}

async function understandHere({ text, expectation, options }: UnderstandAsked): Promise<Understanding> {
  const { understand } = await import('../../../grammar/phrases/understand.ts');
  return understand(text, expectation, options);
}
