import type { AnyProblem } from "./problem.ts";

/** A place in a file: line and column from 1, and how many characters are meant. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly length: number;
}

/** Where a problem stands. */
interface Placement {
  readonly file?: string;
  readonly place?: Place;
  readonly lineText?: string;
  /** The file that this place names, where the problem lies in that. */
  readonly named?: string;
  /** The flag that said it, where a flag did. */
  readonly flag?: string;
  /** A right value for the flag. */
  readonly example?: string;
  /** Lines that would be right in its place. */
  readonly lines?: readonly string[];
}

/** A problem and where in which file it stands. */
export type PlacedProblem = AnyProblem & Placement;

/** What was asked for, or the problems that stand in its way. */
export type Placed<What extends object> =
  | ({ readonly ok: true } & Readonly<What>)
  | { readonly ok: false; readonly problems: readonly PlacedProblem[] };
