/** What is held against an opened refrigerant circuit before it runs again. */
export type RefrigerantCheck = 'pressure-test' | 'evacuation' | 'decay';

/** What an opened circuit must come through, in this order. */
export type RefrigerantStage = 'recovered' | 'held' | 'evacuated' | 'stood' | 'charged';

/** What was said of the refrigerant circuit, in its order. `from` names what said it, so that it can be taken back. */
export type RefrigerantEntry = { readonly from: string } & (
  | { readonly is: 'opened' | 'leak' | 'searched' | 'vacuum' | 'vacuum-on' | 'vacuum-off' | 'vacuum-off-nitrogen' }
  /** Ounces into the circuit; what came out is negative. */
  | { readonly is: 'mass'; readonly ounces: number }
  /** Psi of nitrogen; `within`: between the floor and the limit of a test. `mono`: milliseconds of the input clock. */
  | {
      readonly is: 'nitrogen';
      readonly psi: number;
      readonly within: boolean;
      readonly fahrenheit: number | undefined;
      readonly mono: number;
    }
  | { readonly is: 'isolated'; readonly mono: number }
  | { readonly is: 'judged'; readonly check: RefrigerantCheck; readonly value: number; readonly fits: boolean }
);

/** What the log of the refrigerant circuit comes to. Weights in ounces, psi, microns, input clock in milliseconds. */
export interface RefrigerantWork {
  readonly opened: boolean;
  /** Nothing was put in since it was recovered. */
  readonly emptied: boolean;
  /** Evacuated, and neither broken nor charged since. */
  readonly inVacuum: boolean;
  /** The nitrogen in it, as it was read last. */
  readonly nitrogen?: number;
  readonly recovered?: number;
  readonly test?: {
    readonly psi: number;
    readonly fahrenheit: number | undefined;
    readonly mono: number;
    readonly from: string;
  };
  readonly held?: true;
  readonly searched?: true;
  readonly microns?: number;
  readonly isolatedAt?: number;
  readonly stood?: true;
  readonly charged?: number;
}

/** Nothing was done to the circuit. */
export const UNTOUCHED: RefrigerantWork = { opened: false, emptied: false, inVacuum: false };
