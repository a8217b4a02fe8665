/** Something that makes words heard. */
export interface Voice {
  readonly name: string;
  /** @param rate 1 as the voice has it, 2 twice as fast */
  say(text: string, rate: number): Saying;
}

export interface Saying {
  /** `failed`: the voice is not to be relied on any more. Whatever it is after a cut does not matter. */
  readonly outcome: Promise<'spoken' | 'failed'>;
  cut(): void;
}
