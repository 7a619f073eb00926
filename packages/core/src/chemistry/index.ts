// The door to the alkaline salts: products, strengths, solutions, and their reports.
export { fridge } from "../batch/remedy.ts";
export { hundredOfFlour, onFlour } from "../formula/on-flour.ts";
export { alkalinityForms, readAlkalinity, readNormality } from "../materials/alkalinity-text.ts";
export type { KnownProduct } from "../materials/known-products.ts";
export { nearestNames } from "../materials/nearest.ts";
export { readProduct } from "../materials/product-text.ts";
export type { DoseBeside } from "../materials/several.ts";
export {
  moduli,
  readModulus,
  readRatio,
  readStrength,
  type StrengthTerms,
  strengthForms,
} from "../materials/strength-text.ts";
export { listSalts } from "../noodle/list-materials.ts";
export { type KitchenScale, loadsInStock, type StockNeeds, stockNeeds } from "../noodle/stock-needs.ts";
export { convertReport } from "../report/alkali-convert-report.ts";
export { assayReport, bakeReport, idealBakeReport } from "../report/alkali-product-report.ts";
export { type RecipeTelling, recipeReport } from "../report/alkali-recipe-report.ts";
export { stockReport } from "../report/alkali-stock-report.ts";
export { type StrengthTelling, strengthReport } from "../report/alkali-strength-report.ts";
export { type Correction, correct, type Dilution, dilute } from "./adjust.ts";
export type { FitDoubt, VolumeModel } from "./apparent-volume.ts";
export { type BakedDose, bakeDose } from "./bake-dose.ts";
export { type Bake, type Baked, type BakingSalt, bakedSalt, idealYield } from "./baking.ts";
export type { BaumeName } from "./baume.ts";
export { type Carried, carriedBy, type Product, potassiumOf, type Weighed } from "./carried.ts";
export type { CommonStock, CommonStockWish, StockScale } from "./common-stock.ts";
export {
  type Composition,
  compositionOf,
  equivalentsIn,
  hydrate,
  mixture,
  type Portion,
  percentOf,
  pure,
  type SaltParts,
  saltsIn,
} from "./composition.ts";
export { convert, type Swapped } from "./convert.ts";
export { solutionDensity } from "./density.ts";
export type { Element } from "./elements.ts";
export { additiveLimits, type FoodLimits, foodLimits } from "./food-limits.ts";
export { additivesIn, type Hazard, hazardOf, type Statement } from "./hazard.ts";
export type { StatementCode } from "./hazard-statements.ts";
export {
  type DensityReading,
  type Reading,
  type ReadStrength,
  readHydrometer,
  readWeighedVolume,
  type WeighedVolume,
} from "./hydrometer.ts";
export { type Blend as StockBlend, blend as blendStocks, type MakeUp, makeUp } from "./make-up.ts";
export { solutionPh } from "./ph.ts";
export type { Anion } from "./pitzer.ts";
export type { InRatio, RatioBy } from "./ratio.ts";
export type { Conditions, Recipe } from "./recipe.ts";
export type { RoundedRecipe } from "./rounded-recipe.ts";
export type { SaltShare } from "./salt-content.ts";
export type {
  FoodLimit,
  HazardEntry,
  Known,
  Product as SaltProduct,
  ProductNames,
  Salt,
  SolubilityTable,
} from "./salts/record.ts";
export { type Clarity, type Solubility, solubilityOf, staysClear } from "./solubility.ts";
export {
  type Additive,
  type DissolvingSalt,
  type Hydrate,
  type HydrateName,
  hydrates,
  type Species,
  type SpeciesName,
  species,
} from "./species.ts";
export { type PlainMeasure, type StatedStrength, solutionAt } from "./stated-strength.ts";
export { type Stock, type StockWish, severalStock } from "./stock.ts";
export { type Amount, gramsOf, type Strength, strengthOf, type VolumeStrength } from "./strength.ts";
export type { Held, Swap } from "./swap-amounts.ts";
export {
  type AcidUsed,
  type AlkalinityStandard,
  type Assayed,
  assayed,
  type ProductFigures,
  type Split,
  type StatedAlkalinity,
  splitByEndPoints,
  type TwoEndPoints,
} from "./titration.ts";
