import type { Decimal, DecimalText } from "../number/decimal.ts";

/** Something that is not exactly what it should be: a weighing, a protein, a moisture, a strength, a loss. */
export interface Cause {
  /** Name of the input of the model. */
  readonly id: string;
  readonly label: string;
  readonly value: DecimalText;
  /** It may be so much more or less, and anything between is as likely. */
  readonly plusMinus: DecimalText;
  readonly unit: string;
  /** What the error was assumed from, where nobody states it. */
  readonly assumed?: string;
}

/** What comes out of a model: plain numbers by name. */
export interface Output {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly places: number;
}

/** A calculation from the inputs to one output, by name; it must rise or fall steadily in each input, as sums, products and quotients do. */
export type Model = (inputs: Readonly<Record<string, Decimal>>, output: string) => Decimal;
