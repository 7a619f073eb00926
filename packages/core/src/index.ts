// The one door of the library: everything public is named here, folder by folder.

// batch
export { type Batch, planBatch } from "./batch/batch.ts";
export { type Cost, type CostLine, costOf } from "./batch/cost.ts";
export type { SharedOut } from "./batch/cost-shares.ts";
export { type Nutrition, type NutritionWish, nutritionOf } from "./batch/nutrition.ts";
export type { NutrientAmount } from "./batch/nutrition-amounts.ts";
export type { Declared } from "./batch/nutrition-declared.ts";
export type { NutritionRules } from "./batch/nutrition-rules.ts";
export { fridge, saltsOfLoad } from "./batch/remedy.ts";
export type { Shopping, ShoppingLine } from "./batch/shopping.ts";
export type { StockReach } from "./batch/shopping-stock.ts";
export { type Scale, scalesOf } from "./batch/weighing.ts";
// chemistry
export { type Correction, correct, type Dilution, dilute } from "./chemistry/adjust.ts";
export { gramsOf } from "./chemistry/amount.ts";
export { type BakedDose, bakeDose } from "./chemistry/bake-dose.ts";
export { type Bake, type Baked, bakedSalt, idealYield } from "./chemistry/baking.ts";
export { type BaumeName, degreesBaume, specificGravity } from "./chemistry/baume.ts";
export { type Carried, carriedBy, type Product, potassiumOf, type Weighed } from "./chemistry/carried.ts";
export {
  alkalinityM,
  alkalinityP,
  anhydrousShare,
  type Composition,
  compositionOf,
  hydrate,
  mixture,
  pure,
} from "./chemistry/composition.ts";
export { convert, type Swapped } from "./chemistry/convert.ts";
export { solutionDensity } from "./chemistry/density.ts";
export { type FoodLimit, foodLimitsFor } from "./chemistry/food-limits.ts";
export { additivesIn, cautionsFor, type Hazard, hazardOf } from "./chemistry/hazard.ts";
export { type Reading, type ReadStrength, readHydrometer, readWeighedVolume } from "./chemistry/hydrometer.ts";
export {
  type Amount,
  type Blend as StockBlend,
  blend as blendStocks,
  type MakeUp,
  makeUp,
} from "./chemistry/make-up.ts";
export { solutionPh } from "./chemistry/ph.ts";
export type { InRatio, RatioBy } from "./chemistry/ratio.ts";
export type { Recipe } from "./chemistry/recipe.ts";
export { type Solubility, solubilityOf, staysClear } from "./chemistry/solubility.ts";
export { type HydrateName, hydrates, molarMass, type SpeciesName, species } from "./chemistry/species.ts";
export { type StatedStrength, solutionAt } from "./chemistry/stated-strength.ts";
export { type Stock, type StockWish, severalStock } from "./chemistry/stock.ts";
export { type Strength, strengthOf } from "./chemistry/strength.ts";
export type { Held, Swap } from "./chemistry/swap-amounts.ts";
export { type Assayed, assayed, type Split, type StatedAlkalinity, splitByEndPoints } from "./chemistry/titration.ts";
// explore
export type {
  BlendAnswer,
  BlendQuestion,
  BlendsFound,
  BlendTargets,
  Candidate,
  Check,
  FlourNeeded,
  FoundBlend,
  GivenShare,
  Move,
  OutOfReach,
  Preference,
  ProteinTarget,
} from "./explore/blend-question.ts";
export { searchBlend } from "./explore/blend-search.ts";
export { type BlendWater, waterAfter } from "./explore/blend-water.ts";
export type { Cause, Model, Output } from "./explore/cause.ts";
export { type Change, compareFigures } from "./explore/compare-blends.ts";
export { type FlourShelf, flourShelf } from "./explore/flour-shelf.ts";
export { type ActiveProduct, driedWholeEgg, rawWholeEgg, replaceProduct } from "./explore/replace-product.ts";
export { designBlend, type SpecBlend } from "./explore/spec-blend.ts";
export { type ReplacedIngredient, replaceIngredient } from "./explore/spec-product.ts";
export { formulaStyle } from "./explore/spec-style.ts";
export { correctForLot, readHeld, replaceFlour } from "./explore/spec-substitute.ts";
export { type BatchTolerance, batchTolerance } from "./explore/spec-tolerance.ts";
export { formulaTrial } from "./explore/spec-trial.ts";
export { type SquareAnswer, type SquareQuestion, squareRule } from "./explore/square.ts";
export { type StyleCheck, styleNotes, styles } from "./explore/style-notes.ts";
export { type StyleQuantity, type StyleRange, styleRanges } from "./explore/style-ranges.ts";
export { newLot, type Substitution, substitute } from "./explore/substitute.ts";
export {
  type HeldFigure,
  type Hold,
  type NewLotQuestion,
  type StockedFlour,
  type SubstituteQuestion,
  usualHold,
} from "./explore/substitute-question.ts";
export { type Tolerance, type ToleranceQuestion, tolerance } from "./explore/tolerance.ts";
export { weighTrial } from "./explore/trial-weights.ts";
export type { WaterFlour } from "./explore/water-flour.ts";
export { type Trial, type TrialRequest, waterTrial } from "./explore/water-trial.ts";

// figure
export { type Figure, type Range, shown, shownValue, type Working } from "./figure/figure.ts";
export { type Graph, graphOf, type PlainFigure, type Published, plainFigure, published } from "./figure/graph.ts";
export {
  answer,
  inputProblem,
  type Note,
  noAnswer,
  type Outcome,
  type Path,
  type Problem,
  pathText,
  refuse,
} from "./figure/problem.ts";
export { citation, type Source, type Standing } from "./figure/source.ts";
export { type WrittenWorking, writtenWorking } from "./figure/written-working.ts";
// formula
export { computeFormula, type Formula, formulaOf } from "./formula/formula.ts";
export { alkaliBeyond } from "./formula/limits.ts";
export type { FormulaLine } from "./formula/lines.ts";
export { hundredOfFlour, onFlour } from "./formula/on-flour.ts";
export { type Kitchen, readBy, readKitchenFile, readSpec } from "./formula/read-spec.ts";
export { type Spec, type SpecInput, specSchema } from "./formula/spec.ts";
export { alkalinityForms, readAlkalinity, readNormality } from "./materials/alkalinity-text.ts";
// materials
export { type AllergenList, isJurisdiction, type Jurisdiction, jurisdictions } from "./materials/allergen-lists.ts";
export { type AllergenReport, allergensFor } from "./materials/allergens.ts";
export { catalogue, findMaterial, nameAdvice, nearestMaterials, searchMaterials } from "./materials/catalogue.ts";
export type { MachineFields, OwnMachines } from "./materials/machine-schema.ts";
export type { Material, MaterialKind } from "./materials/material.ts";
export { nearestNames } from "./materials/nearest.ts";
export { type KitchenMaterial, type OwnMaterials, resolveMaterial } from "./materials/own.ts";
export { readProduct } from "./materials/product-text.ts";
export { isRuleBook, type RuleBookName } from "./materials/rounding-rules.ts";
export { kitchenFileSchema, type MaterialFigures, materialKinds } from "./materials/schema.ts";
export { type DoseBeside, severalOf, severalProblem } from "./materials/several.ts";
export { saltsInRatio } from "./materials/stated-composition.ts";
export { moduli, readModulus, readRatio, readStrength, strengthForms } from "./materials/strength-text.ts";
// number
export { type Decimal, type DecimalInput, type DecimalText, dec, decimalText, fixedText } from "./number/decimal.ts";
export { inDays, parseQuantity, type Quantity, type QuantityReading } from "./number/quantity.ts";
export { type Dimension, findUnit, type Unit, units, unitsFor } from "./number/units.ts";

// report
export { convertReport } from "./report/alkali-convert-report.ts";
export { alkaliListReport, knownProducts } from "./report/alkali-list-report.ts";
export { assayReport, bakeReport, idealBakeReport } from "./report/alkali-product-report.ts";
export { recipeReport } from "./report/alkali-recipe-report.ts";
export { stockReport } from "./report/alkali-stock-report.ts";
export { strengthReport } from "./report/alkali-strength-report.ts";
export { batchReport } from "./report/batch-report.ts";
export { blendSearchReport } from "./report/blend-search-report.ts";
export { onlyFigure, withWorking } from "./report/build.ts";
export { calibrateReport } from "./report/calibrate-report.ts";
export { type Card, type CardFile, type CardWishes, card } from "./report/card.ts";
export type { CardRow, CardWeights } from "./report/card-weights.ts";
export { costReport } from "./report/cost-report.ts";
export { formulaReport } from "./report/formula-report.ts";
export { jsonSchema, problemsSchema, schemaNames } from "./report/json-schema.ts";
export { materialsReport } from "./report/materials-report.ts";
export { nutritionReport } from "./report/nutrition-report.ts";
export { escapeMarkup } from "./report/pictures/svg.ts";
export { planReport } from "./report/plan-report.ts";
export { productReport } from "./report/product-report.ts";
export { type Block, type Cell, type Report, reportSchema, type Section, type Table } from "./report/schema.ts";
export { sheetReport } from "./report/sheet-report.ts";
export { shownGrouped, type UnitSystem } from "./report/show.ts";
export { substituteReport } from "./report/substitute-report.ts";
export { temperatureReport } from "./report/temperature-report.ts";
export { toleranceReport } from "./report/tolerance-report.ts";
export { trialReport } from "./report/trial-report.ts";
// sheet
export { type Caution, type SheetHazard, sheetCautions } from "./sheet/cautions.ts";
export { type Moment, momentAt, readTimeOfDay } from "./sheet/clock.ts";
export type { Compounding } from "./sheet/compounding.ts";
export { type CookGain, cookedMass, rawMass, usualGain } from "./sheet/cook.ts";
export { type BoiledWater, gainFromWater, gainFromWeights } from "./sheet/cook-gain.ts";
export type { CutRequest } from "./sheet/cut-request.ts";
export { strandWidth } from "./sheet/cutter.ts";
export { type DayPlan, type PotPlan, planDay } from "./sheet/day-plan.ts";
export { type DoughWater, loadWater, plainMixWater } from "./sheet/dough-water.ts";
export { dustingStarch } from "./sheet/dusting.ts";
export { fitProblems, type PlannedSheet } from "./sheet/fits.ts";
export {
  airFromDensity,
  doughDensity,
  type Food,
  type FoodComposition,
  givenDensity,
  poreFreeDensity,
  specificHeat,
} from "./sheet/food.ts";
export { type Account, type CutPlan, cutPlan, loadsFor } from "./sheet/geometry.ts";
export { flourSpecificHeat, type Ingredient, type Mix, waterSpecificHeat } from "./sheet/heat-balance.ts";
export { type DissolvingSalt, heatOfSolution } from "./sheet/heat-of-solution.ts";
export {
  densityFromSheet,
  lossesFrom,
  type MeasuredSheet,
  type StageLosses,
  springBackFrom,
  thicknessFromSheet,
  type WeighedStage,
} from "./sheet/inverse.ts";
export {
  type Cutter,
  type CutterSize,
  type Gaps,
  type Machine,
  machineProblems,
  type Rolls,
  type Setting,
} from "./sheet/machine.ts";
export { type MeasuredMix, type MixerRun, mixerWork, mixingHeat } from "./sheet/measured-mix.ts";
export {
  type Measurement,
  measuredCooking,
  measuredLosses,
  measuredMixing,
  measuredSheet,
} from "./sheet/measurements.ts";
export type { MixingHeat } from "./sheet/mixing-heat.ts";
export type { PassRequest } from "./sheet/pass-request.ts";
export { type Pass, type PassSchedule, passSchedule } from "./sheet/passes.ts";
export type { MachineCount, PlanRequest, PlanStage, StageName, WaitStage, WorkStage } from "./sheet/plan-request.ts";
export { type Basket, potRecovery, potWater, powerIntoWater, type TimedPot } from "./sheet/pot.ts";
export { planSheet, type SheetPlan } from "./sheet/sheet-plan.ts";
export type { GapList } from "./sheet/steps-for-gaps.ts";
export { type WaterPlan, type WaterRequest, waterTemperature } from "./sheet/temperature.ts";
export { frictionFrom, type ThreeTemperatures, threeTemperatureWater } from "./sheet/three-temperatures.ts";
export { type Pace, type PlannedLoad, type PlannedStage, type TimePlan, timePlan } from "./sheet/timeplan.ts";
