import { type Figure, given, worked } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
import type { DecimalText } from "../number/decimal.ts";
import type { Weighed } from "./carried.ts";

/** The dose that is replaced, g. */
export function doseOf({ name, mass }: Weighed): Figure {
  return given({ id: "convert.dose", label: name, unit: "g", places: 2 }, mass, "the dose asked for", definition);
}

/** The dose and what takes its place, on the flour that it is for. */
export function sharesOfFlour(masses: readonly Figure[], flour: DecimalText): readonly Figure[] {
  const flourFigure = given(
    { id: "convert.flour", label: "flour", unit: "g", places: 0 },
    flour,
    "the flour the dose is for",
    definition,
  );
  return masses.map((mass, index) =>
    worked(
      { id: `convert.share.${index}`, label: `${mass.label}, on flour`, unit: "% of flour", places: 3 },
      "100 * mass / flour",
      { mass, flour: flourFigure },
      definition,
    ),
  );
}
