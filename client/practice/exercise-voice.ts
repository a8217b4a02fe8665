import type { Mouth, Prompt } from '../speaking/mouth.ts';
import { EXERCISE } from '../words/practice/exercise-words.ts';
import { SAY } from '../words/talk/prompts.ts';

/** What an exercise tells: what the visit says, and what the unit and the exercise say themselves. */
export interface ExerciseLine {
  readonly by: 'visit' | 'meter' | 'eyes' | 'exercise' | 'stop' | 'hint';
  readonly text: string;
}

/** What a visit says to words that it does not know: it asks for a number, which here is the meter's. */
const ASK_A_NUMBER: readonly string[] = [SAY.notTaken, SAY.unclear];

/** The one voice of an exercise: the words of the visit and the exercise's own, one after another. */
export class ExerciseVoice {
  readonly #mouth: Mouth;
  readonly #show: (line: ExerciseLine) => void;
  #said = 0;
  /** Lines that were shown. */
  shown = 0;
  #speech: Promise<unknown> = Promise.resolve();

  constructor(mouth: Mouth, show: (line: ExerciseLine) => void) {
    this.#mouth = mouth;
    this.#show = show;
  }

  /** Shown, and not spoken. */
  show(by: ExerciseLine['by'], text: string): void {
    this.shown += 1;
    this.#show({ by, text });
  }

  /** Words of the exercise's own, spoken behind what is being spoken. */
  tell(by: ExerciseLine['by'], text: string): void {
    this.show(by, text);
    this.#said += 1;
    this.#aloud({ id: `exercise-${this.#said}`, kind: 'answer', text }).catch(() => undefined);
  }

  /** For the visit: its words, shown and spoken as any. */
  get mouth(): Mouth {
    return {
      speak: (prompt) => {
        const said = ASK_A_NUMBER.includes(prompt.text) ? { ...prompt, text: EXERCISE.notTaken } : prompt;
        this.show('visit', said.text);
        return this.#aloud(said);
      },
      hush: (evenCaution) => this.#mouth.hush(evenCaution),
    };
  }

  #aloud(prompt: Prompt): ReturnType<Mouth['speak']> {
    const spoken = this.#speech.catch(() => undefined).then(() => this.#mouth.speak(prompt));
    this.#speech = spoken;
    return spoken;
  }
}
