// The door to the alkaline salts: products, strengths, solutions, and their reports.
export { fridge } from "../batch/remedy.ts";
export type { Scale } from "../batch/weighing.ts";
export { alkaliBeyond } from "../formula/limits.ts";
export { hundredOfFlour, onFlour } from "../formula/on-flour.ts";
export { alkalinityForms, readAlkalinity, readNormality } from "../materials/alkalinity-text.ts";
export { nearestNames } from "../materials/nearest.ts";
export type { OwnMaterials } from "../materials/own.ts";
export { readProduct } from "../materials/product-text.ts";
export type { DoseBeside } from "../materials/several.ts";
export { moduli, readModulus, readRatio, readStrength, strengthForms } from "../materials/strength-text.ts";
export { type StockNeeds, stockNeeds } from "../noodle/stock-needs.ts";
export { convertReport } from "../report/alkali-convert-report.ts";
export { assayReport, bakeReport, idealBakeReport } from "../report/alkali-product-report.ts";
export { recipeReport } from "../report/alkali-recipe-report.ts";
export { stockReport } from "../report/alkali-stock-report.ts";
export { strengthReport } from "../report/alkali-strength-report.ts";
export { type Correction, correct, type Dilution, dilute } from "./adjust.ts";
export { gramsOf } from "./amount.ts";
export { type BakedDose, bakeDose } from "./bake-dose.ts";
export { type Bake, type Baked, bakedSalt, idealYield } from "./baking.ts";
export { type BaumeName, degreesBaume, specificGravity } from "./baume.ts";
export { type Carried, carriedBy, type Product, potassiumOf, type Weighed } from "./carried.ts";
export {
  alkalinityM,
  alkalinityP,
  anhydrousShare,
  type Composition,
  compositionOf,
  hydrate,
  mixture,
  pure,
} from "./composition.ts";
export { convert, type Swapped } from "./convert.ts";
export { solutionDensity } from "./density.ts";
export { molarMass } from "./elements.ts";
export { additiveLimits, type FoodLimits, foodLimits } from "./food-limits.ts";
export { additivesIn, type Hazard, hazardOf } from "./hazard.ts";
export { type Reading, type ReadStrength, readHydrometer, readWeighedVolume } from "./hydrometer.ts";
export { type Amount, type Blend as StockBlend, blend as blendStocks, type MakeUp, makeUp } from "./make-up.ts";
export { solutionPh } from "./ph.ts";
export type { InRatio, RatioBy } from "./ratio.ts";
export type { Recipe } from "./recipe.ts";
export { type Solubility, solubilityOf, staysClear } from "./solubility.ts";
export { type DissolvingSalt, type HydrateName, hydrates, type SpeciesName, species } from "./species.ts";
export { type StatedStrength, solutionAt } from "./stated-strength.ts";
export { type Stock, type StockWish, severalStock } from "./stock.ts";
export { type Strength, strengthOf } from "./strength.ts";
export type { Held } from "./swap-amounts.ts";
export { type Assayed, assayed, type Split, type StatedAlkalinity, splitByEndPoints } from "./titration.ts";
