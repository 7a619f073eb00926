import type { DecimalText } from "../number/decimal.ts";

/** Something that is not exactly what it should be: a weighing, a protein, a moisture, a strength, a loss. */
export interface Cause {
  /** The figure of the graph that is off. */
  readonly id: string;
  readonly label: string;
  readonly value: DecimalText;
  /** It may be so much more or less, and anything between is as likely. */
  readonly plusMinus: DecimalText;
  readonly unit: string;
  /** What the error was assumed from, where nobody states it. */
  readonly assumed?: string;
  /** It errs anew in every load, as a weighing does; all else is as far off in one load as in another. */
  readonly anew?: true;
}

/** A figure of which the error is asked. */
export interface Output {
  /** Its name in the answer. */
  readonly id: string;
  /** The figure of the graph. */
  readonly figure: string;
  readonly label: string;
  readonly unit: string;
  readonly places: number;
}
