import { input, type Lists, remark, type Texts } from "./entry.ts";

export const figure = {
  "figure.unknown": input(({ id }: Texts<"id">) => ({
    found: `"${id}"`,
    expected: "the id of a figure in the graph",
    advice: "take an id of the graph",
  })),
  "figure.worked-out": input(({ id, inputs }: Texts<"id"> & Lists<"inputs">) => ({
    found: `"${id}", which is worked out`,
    expected: "a figure that was given or found",
    advice: `change what it rests on: ${inputs.length === 0 ? "nothing that can change" : inputs.join(", ")}`,
  })),
  "figure.no-number": input(({ id, value, places, digits }: Texts<"id" | "value" | "places" | "digits">) => ({
    found: `"${value}" for "${id}"`,
    expected: `a number of at most ${digits} digits, the first within ${places} places of the point`,
    advice: "write it in the unit of the figure, without the unit",
  })),
  "figure.impossible": input(({ id, value, unit, least, most, whole }: Texts<"id" | "value" | "unit"> & Limits) => ({
    found: `${value} ${unit} for "${id}"`,
    expected: `${whole ? "a whole number, " : ""}${within(least, most)} ${unit}`.trimEnd(),
    advice: "take a value within these limits",
  })),
  "figure.no-value": input(({ id, formula, inputs }: Texts<"id" | "formula"> & Lists<"inputs">) => ({
    found: `"${id}" has no value: ${formula}`,
    expected: "values that the formula can be worked out with, none of which it divides by 0",
    advice: `change one of what it rests on: ${inputs.join(", ")}`,
  })),
  "figure.found-before": remark(
    ({ labels }: Lists<"ids" | "labels">) =>
      `found or decided with the old values, and left as they were with all that rests on them: ${labels.join(", ")}; change the noodle and ask it anew for them`,
  ),
};

/** Ends that a value keeps to, and whether it is counted. */
export interface Limits {
  readonly least?: string | undefined;
  readonly most?: string | undefined;
  readonly whole: boolean;
}

function within(least: string | undefined, most: string | undefined): string {
  if (most === undefined) return `at least ${least}`;
  return least === undefined ? `at most ${most}` : `${least} to ${most}`;
}
