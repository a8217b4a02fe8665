import type { SignedHead } from '../../grammar/visit/signed-head.ts';
import type { GivenUp } from './given-up.ts';
import type { KeptHeads, Verifier } from './heads-file.ts';
import type { HighWater } from './high-water.ts';
import type { Finding } from './verify-stream.ts';

/** Where a server keeps its signed heads, and what stands beside them. */
export interface HeadsPlace {
  /** As sentences name it. */
  readonly name: string;
  read(signer?: Verifier): Promise<KeptHeads>;
  /**
   * Adds the head that `next` makes of those that stand there, while no other server adds one.
   *
   * @param known the heads as this server knows them
   * @returns all that stand there then
   */
  add(
    known: readonly SignedHead[],
    next: (heads: readonly SignedHead[]) => Promise<SignedHead | undefined>,
  ): Promise<readonly SignedHead[]>;
  /** Keeps apart what is not as it was signed, so that heads begin anew. */
  setAside(time: number): Promise<void>;
  givenUp(): Promise<readonly GivenUp[]>;
  giveUp(findings: readonly Finding[], time: number): Promise<void>;
  /** What the number of what was acknowledged speaks against, with the number of the latest event that is held. */
  waterSentence(held: number, leftInOrder: boolean): string | undefined;
  /** Begins to write that number; undefined where none is kept. */
  openWater(latest: number): HighWater | undefined;
}
