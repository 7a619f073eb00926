import { exact, type Figure, worked } from "../figure/figure.ts";
import { type Published, publish, published } from "../figure/graph.ts";
import { type Note, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import { type Decimal, type DecimalInput, dec, fixedText, HUNDRED } from "../number/decimal.ts";
import { type Composition, fromMasses } from "./composition.ts";
import { atomicWeightSource, molarMass } from "./elements.ts";
import { molarMassFigure, named, percent } from "./named.ts";
import { type ProductFigures, productFigures } from "./titration.ts";

/** The bicarbonates and the carbonates that the oven turns them into. */
const bakes = {
  NaHCO3: { to: "Na2CO3", monohydrateWater: "1" },
  KHCO3: { to: "K2CO3", monohydrateWater: "1.5" },
} as const;

/** A salt that the oven turns into another. */
export type BakingSalt = keyof typeof bakes;

/** A tray before and after the oven. Masses in any one unit, the tray itself taken off. */
export interface Bake {
  readonly salt: BakingSalt;
  readonly before: DecimalInput;
  readonly after: DecimalInput;
  /** Water in the baked salt when it was weighed, taken up from the air; none where nothing is stated. */
  readonly moisture?: DecimalInput;
  /** % of the bicarbonate in the salt before; 100 where nothing is stated. */
  readonly assay?: DecimalInput;
}

/** What bicarbonate became in the oven. */
export interface Baked extends ProductFigures {
  /** Share of the bicarbonate that was converted, %. */
  readonly conversion: Figure;
  /** Mass left of 100 at full conversion. */
  readonly idealYield: Figure;
  readonly composition: Composition;
}

/** What a salt is taken for that is said to be baked and was not weighed. */
export const bakedAsAssumed: readonly (string | Note)[] = [
  note("baking.assumed", [], {}),
  "bake it in a thin layer at 120 to 150 °C for about an hour, and on until its weight stays: common practice, no source",
];

/** Advice for the oven. Source: common practice, no source. */
export const ovenCautions: readonly string[] = [
  "Baked soda is far more alkaline than what went into the oven, and looks the same: label it, and keep it out of reach of children.",
  "The tray and the powder are hot: let them cool before you weigh or sieve. No aluminium tray or foil.",
];

/** Weighing to 1 % of the loss lets a full conversion come out a little above 100 %. */
const SLACK = "1";

/**
 * Mass that 100 parts of bicarbonate leave when they are wholly converted: 2 NaHCO3 → Na2CO3 + H2O + CO2.
 *
 * @example idealYield("NaHCO3").value.slice(0, 7) // => "63.0835"
 */
export function idealYield(salt: BakingSalt): Published<Figure> {
  const naming = percent("baking.ideal-yield", "mass left of 100 at full conversion");
  const from = { carbonate: molarMassFigure(bakes[salt].to), bicarbonate: molarMassFigure(salt) };
  return published(worked(naming, "100 * carbonate / (2 * bicarbonate)", from, atomicWeightSource));
}

/**
 * How far a bicarbonate was converted in the oven, from its mass before and after, and what it is now.
 *
 * Problems: `baking.mass`, `baking.heavier`, `baking.lighter`.
 * @example shown(bakedSalt({ salt: "NaHCO3", before: 500, after: 330 }).value.conversion) // => "92.1 %"
 */
export function bakedSalt(bake: Bake): Outcome<Published<Baked>> {
  const before = dec(bake.before);
  const after = dec(bake.after);
  const moisture = dec(bake.moisture ?? 0);
  const assay = dec(bake.assay ?? HUNDRED);
  const masses = before.gt(0) && after.gt(0) && !moisture.isNegative() && moisture.lt(after);
  if (!masses || assay.lte(0) || assay.gt(HUNDRED)) return refuse(problem("baking.mass", [], {}));
  const conversion = worked(
    { id: "baking.conversion", label: "bicarbonate converted to carbonate", unit: "%", places: 1 },
    "100 * (before - (after - moisture)) / (before * assay / 100 * (1 - yield / 100))",
    {
      before: named("baking.before", "mass before", "g", before, "the weighing"),
      after: named("baking.after", "mass after", "g", after, "the weighing"),
      moisture: named("baking.moisture", "moisture taken up", "g", moisture, "the weighing"),
      assay: named("baking.assay", "assay before", "%", assay, "the label"),
      yield: idealYield(bake.salt),
    },
    massBalance,
    atomicWeightSource,
  );
  const converted = exact(conversion);
  if (converted.isNegative()) return refuse(problem("baking.heavier", [], {}));
  if (converted.gt(HUNDRED.plus(SLACK))) {
    const least = exact(idealYield(bake.salt)).times(assay).div(HUNDRED).plus(HUNDRED).minus(assay);
    const left = after.minus(moisture).times(HUNDRED).div(before);
    return refuse(problem("baking.lighter", [], { left: fixedText(left, 1), least: fixedText(least, 1) }));
  }
  const full = converted.gt(HUNDRED) ? HUNDRED : converted;
  const composition = fromMasses(left(bake.salt, before, moisture, assay, full));
  const figures = productFigures(composition, "the masses before and after");
  return publish({ conversion, idealYield: idealYield(bake.salt), composition, ...figures }, [keepDry(bake.salt)]);
}

function left(salt: BakingSalt, before: Decimal, moisture: Decimal, assay: Decimal, percent: Decimal) {
  const bicarbonate = before.times(assay).div(HUNDRED);
  const gone = bicarbonate.times(percent).div(HUNDRED);
  const carbonate = gone.times(molarMass(bakes[salt].to)).div(molarMass(salt).times(2));
  return {
    species: { [salt]: bicarbonate.minus(gone), [bakes[salt].to]: carbonate },
    water: moisture,
    inert: before.minus(bicarbonate),
  };
}

function keepDry(salt: BakingSalt): Note {
  const { to, monohydrateWater } = bakes[salt];
  const gain = molarMass("H2O").times(monohydrateWater).times(HUNDRED).div(molarMass(to));
  const hydrate = `${to}.${monohydrateWater === "1" ? "" : monohydrateWater}H2O`;
  return note("baking.keep-dry", [], { hydrate, gain: fixedText(gain, 1) });
}
