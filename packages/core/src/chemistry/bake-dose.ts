import { type Figure, given } from "../figure/figure.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { definition } from "../figure/source.ts";
import type { DecimalInput } from "../number/decimal.ts";
import type { Baked, BakingSalt } from "./baking.ts";
import { pure } from "./composition.ts";
import { convert, type Swapped } from "./convert.ts";

/** A dose of pure carbonate and the baked salt that takes its place. */
export interface BakedDose {
  readonly wanted: Figure;
  readonly swapped: Swapped;
}

/**
 * How much baked salt meets a dose of pure anhydrous carbonate, alkalinity M held; problems as in `convert`.
 *
 * @param wanted - g of the carbonate
 */
export function bakeDose(baked: Baked, salt: BakingSalt, wanted: DecimalInput): Outcome<BakedDose> {
  const [formula, carbonate] =
    salt === "NaHCO3" ? (["Na2CO3", "sodium carbonate"] as const) : (["K2CO3", "potassium carbonate"] as const);
  const swapped = convert({
    from: { name: carbonate, composition: pure(formula), mass: wanted },
    to: [{ name: "the baked salt", composition: baked.composition }],
    hold: "M",
  });
  if (!swapped.ok) return swapped;
  const dose = given({
    id: "baking.wanted",
    label: `${carbonate} asked for`,
    unit: "g",
    places: 2,
    value: wanted,
    by: "the formula",
    sources: [definition],
  });
  return answer({ wanted: dose, swapped: swapped.value }, swapped.notes);
}
