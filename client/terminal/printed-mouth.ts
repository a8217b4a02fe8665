import type { Mouth, Prompt } from '../speaking/mouth.ts';

/** A mouth that prints: each prompt is handed on whole and counts as shown. */
export class PrintedMouth implements Mouth {
  readonly #print: (prompt: Prompt) => void;

  constructor(print: (prompt: Prompt) => void) {
    this.#print = print;
  }

  speak(prompt: Prompt): Promise<'shown'> {
    this.#print(prompt);
    return Promise.resolve('shown');
  }

  hush(): void {
    // Printed words are out at once; there is nothing to cut short.
  }
}
