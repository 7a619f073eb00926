import type { DecimalText } from "../number/decimal.ts";

/** Something that is not exactly what it should be: a weighing, a protein, a moisture, a strength, a loss. */
export interface Cause {
  /** The figure of the graph that is off. */
  readonly id: string;
  /** What is off. A weighing errs anew in every load; all else is as far off in one load as in another. */
  readonly kind: "weighing" | "moisture" | "protein" | "strength" | "loss";
  /** The ingredient, or the stage of a loss. */
  readonly name: string;
  /** What a protein is stated on. */
  readonly basis?: string;
  readonly value: DecimalText;
  /** It may be so much more or less, and anything between is as likely. */
  readonly plusMinus: DecimalText;
  readonly unit: string;
  /** What the error was assumed from, where nobody states it. */
  readonly assumed?: string;
}

/** What is off, in words. @example causeWords({ kind: "loss", name: "sheeting" }) // => "loss at sheeting" */
export function causeWords({ kind, name, basis }: Pick<Cause, "kind" | "name" | "basis">): string {
  return [kind, kind === "loss" ? "at" : "of", name, ...(basis === undefined ? [] : [basis])].join(" ");
}

/** A figure of which the error is asked. */
export interface Output {
  /** Its name in the answer. */
  readonly id: string;
  /** The figure of the graph, and what it is called here. */
  readonly figure: string;
  readonly label: string;
}
