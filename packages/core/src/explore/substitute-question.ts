import type { MoistureBasis } from "../materials/fields.ts";
import { type Decimal, type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { atBasis, reached } from "./blend-limits.ts";
import type { BlendTargets, Candidate, GivenShare } from "./blend-question.ts";
import type { WaterFlour } from "./water-flour.ts";

/** A flour with what is known of the water it takes. */
export type StockedFlour = Candidate & Pick<WaterFlour, "dryGluten" | "ownWater" | "moistureRange">;

/** What of the old blend the new one has to keep. */
export type HeldFigure = "protein" | "ash" | "gluten-protein";

/** A blend whose flour is not to be had, and the flours at hand. */
export interface SubstituteQuestion {
  /** The blend as it was, % of flour, adding up to 100. */
  readonly blend: readonly GivenShare[];
  /** Every flour of the blend and every flour at hand. */
  readonly flours: readonly StockedFlour[];
  readonly missing: string;
  readonly hold: readonly HeldFigure[];
  readonly basis: MoistureBasis;
  /** How near protein has to come, ± %; 0.05 unless given. Ash may be so much of a tenth higher, gluten-forming protein so much lower. */
  readonly within?: DecimalText;
  /** Added water of the old dough, % of flour. */
  readonly water: DecimalText;
  readonly step?: DecimalText;
  readonly flourMass?: DecimalText;
  readonly alternatives?: number;
  /** Of the prices. */
  readonly currency?: string;
}

/** A flour of the blend comes as a new lot with its own certificate. */
export interface NewLotQuestion extends Omit<SubstituteQuestion, "missing"> {
  /** The new lot: the name of the flour it follows, with its own figures. */
  readonly lot: StockedFlour;
}

/** The figures of the old blend, as targets of the new one. */
export function heldTargets(
  { hold, basis, within = "0.05" }: Omit<SubstituteQuestion, "missing">,
  old: readonly StockedFlour[],
  shares: readonly Decimal[],
): BlendTargets {
  const figure = (read: (flour: Candidate) => DecimalText | undefined): Decimal =>
    reached(
      atBasis(
        old,
        old.map((flour) => dec(read(flour) ?? 0)),
        basis,
      ),
      shares,
    ) ?? dec(0);
  const targets: { -readonly [key in keyof BlendTargets]: BlendTargets[key] } = {};
  if (hold.includes("protein"))
    targets.protein = { value: decimalText(figure(({ protein }) => protein)), within, basis };
  if (hold.includes("ash"))
    targets.ash = { most: decimalText(figure(({ ash }) => ash).plus(dec(within).div(10))), basis };
  if (hold.includes("gluten-protein")) {
    targets.glutenProtein = { least: decimalText(figure(({ glutenProtein }) => glutenProtein).minus(within)), basis };
  }
  return targets;
}
