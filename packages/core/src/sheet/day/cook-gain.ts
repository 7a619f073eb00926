import { type Figure, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { type Outcome, problem, refuse } from "../../figure/problem.ts";
import { definition, massBalance } from "../../figure/source.ts";
import { dryRatio } from "../../materials/moisture.ts";
import { type DecimalText, dec } from "../../number/decimal.ts";
import { asked, outsideLimits } from "../inputs.ts";

/** Raw noodles that are boiled, g. */
export const rawNoodles = { id: "cook.raw", label: "raw noodles", unit: "g", places: 0 };
/** The same noodles cooked, g. */
export const cookedNoodles = { id: "cook.cooked", label: "cooked noodles", unit: "g", places: 0 };
const naming = { id: "cook.gain", label: "measured cook gain", unit: "", places: 2 };

/**
 * Finds the cook gain from one weighed boiling: the kitchen's own, in place of the usual one.
 *
 * @param raw - g, above 0
 * @param cooked - g after draining, above 0
 * Problems: `sheet.out-of-range`.
 *
 * @example shown(gainFromWeights("500", "880").value) // => "1.76"
 */
export function gainFromWeights(raw: DecimalText, cooked: DecimalText): Outcome<Published<Figure>> {
  const problems = outsideLimits([
    { path: ["raw"], value: raw, unit: "g", above: "0" },
    { path: ["cooked"], value: cooked, unit: "g", above: "0" },
  ]);
  if (problems.length > 0) return refuse(...problems);
  const weighed = { cooked: asked(cookedNoodles, cooked), raw: asked(rawNoodles, raw) };
  return publish(worked(naming, "cooked / raw", weighed, definition));
}

/** Water before and after boiling, and the share of the solids that went into the pot; all in %. */
export interface BoiledWater {
  readonly rawWater: DecimalText;
  readonly cookedWater: DecimalText;
  readonly solidsLoss: DecimalText;
}

/**
 * Finds the cook gain from the water of raw and cooked noodles and the solids lost to the pot: the solids that stay are the
 * same before and after.
 *
 * Water from 1 to 99 %, solids lost from 0 to below 100 %. Problems: `sheet.out-of-range`, `cook.dried` when the cooked noodles
 * hold less water than the raw ones. Source: mass balance of the solids.
 *
 * @example shown(gainFromWater({ rawWater: "33", cookedWater: "65", solidsLoss: "0" }).value) // => "1.91"
 */
export function gainFromWater({ rawWater, cookedWater, solidsLoss }: BoiledWater): Outcome<Published<Figure>> {
  const share = { unit: "%", least: "1", most: "99" };
  const problems = outsideLimits([
    { path: ["rawWater"], value: rawWater, ...share },
    { path: ["cookedWater"], value: cookedWater, ...share },
    { path: ["solidsLoss"], value: solidsLoss, unit: "%", least: "0", below: "100" },
  ]);
  if (problems.length > 0) return refuse(...problems);
  if (dec(cookedWater).lt(rawWater)) return refuse(problem("cook.dried", ["cookedWater"], { cookedWater, rawWater }));
  const percent = { unit: "%", places: 1 };
  const from = {
    raw: asked({ id: "cook.raw-water", label: "water of the raw noodles", ...percent }, rawWater),
    loss: asked({ id: "cook.loss", label: "solids lost in cooking", ...percent }, solidsLoss),
    cooked: asked({ id: "cook.cooked-water", label: "water of the cooked noodles", ...percent }, cookedWater),
  };
  const bySolids = { ...naming, label: "cook gain by the solids" };
  return publish(worked(bySolids, `(1 - loss / 100) * ${dryRatio("cooked", "raw")}`, from, massBalance));
}
