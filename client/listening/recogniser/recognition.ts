/** What was heard in one stretch of speech. */
export interface Recognition {
  readonly text: string;
  /** False when the sound did not fit the grammar: `text` is then the nearest sentence, not to be believed. */
  readonly accepted: boolean;
  /** Taken, but it fits so badly that a value in it is to be asked. */
  readonly doubtful: boolean;
  readonly confidence: number;
  /** Score against the phone loop for each frame of speech. */
  readonly margin: number;
  /** Which grammar the words come from. */
  readonly pass: 'expected' | 'everything';
  /** How many times the sound was decoded before the words were believed. */
  readonly looks: number;
  /** Other sentences that fit the sound about as well. */
  readonly alternatives: readonly string[];
  /** What it is most easily taken for: the other grammar's sentence, and the same with another number in one place. */
  readonly rivals: readonly Rival[];
}

/** What an utterance that goes on was heard as so far. */
export interface SoFar {
  readonly text: string;
  /** Score against the phone loop for each frame of speech. */
  readonly margin: number;
  /** Whether it fits so well that a whole sentence would be taken without another look. */
  readonly sure: boolean;
  /** Whether it fits well enough to tell anything: the words of a few expected sentences come out of whatever is said. */
  readonly fits: boolean;
}

/** What is made of talk that was not listened to until its end. */
export const givenUp = ({ text, margin }: SoFar): Recognition => ({
  text,
  accepted: false,
  doubtful: true,
  confidence: 0,
  margin,
  pass: 'expected',
  looks: 1,
  alternatives: [],
  rivals: [],
});

/** Another sentence, and by how much of the score it fits worse. */
export interface Rival {
  readonly text: string;
  readonly behind: number;
  /** One model heard this, the other that which it is a rival of. */
  readonly contested?: true;
}

/** Each once. */
export const textsOf = (rivals: readonly Rival[]): readonly string[] => [...new Set(rivals.map(({ text }) => text))];
