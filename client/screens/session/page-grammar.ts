import type { PhraseNow } from '../../../grammar/export/find-phrases.ts';
import type { Expectation, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { UnderstandOptions } from '../../../grammar/phrases/understand.ts';
import type { GrammarAnswer, GrammarAsked } from '../worker/grammar-asked.ts';
import { AskedWorker } from './asked-worker.ts';

/**
 * The grammar in a worker of its own: the page carries neither its rules nor its words, and stays free while a long
 * sentence is taken apart.
 */
export class PageGrammar {
  readonly #worker = new AskedWorker<GrammarAsked, GrammarAnswer>(
    () => new Worker(new URL('../worker/understand-worker.ts', import.meta.url), { type: 'module' }),
    async (asked) => (await import('../worker/answer-grammar.ts')).answerGrammar(asked),
  );

  constructor() {
    this.#worker.ready();
  }

  async understand(text: string, expectation: Expectation, options: UnderstandOptions): Promise<Understanding> {
    const answer = await this.#worker.ask({ text, expectation, options });
    if (!('understood' in answer)) throw new Error('the grammar answered something else');
    return answer.understood;
  }

  /** What may be said at a moment, what is asked first. */
  async phrasesAt(expectation: Expectation): Promise<readonly PhraseNow[]> {
    const answer = await this.#worker.ask({ phrasesAt: expectation });
    return 'phrases' in answer ? answer.phrases : [];
  }

  end(): void {
    this.#worker.end();
  }
}
