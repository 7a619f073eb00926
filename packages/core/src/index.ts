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
} from "./blend/blend-question.ts";
export { searchBlend } from "./blend/blend-search.ts";
export { type BlendWater, waterAfter } from "./blend/blend-water.ts";
export { type Change, compareFigures } from "./blend/compare-blends.ts";
export { type FlourShelf, flourShelf } from "./blend/flour-shelf.ts";
export { type ActiveProduct, driedWholeEgg, rawWholeEgg, replaceProduct } from "./blend/replace-product.ts";
export { designBlend, type SpecBlend } from "./blend/spec-blend.ts";
export { type ReplacedIngredient, replaceIngredient } from "./blend/spec-product.ts";
export { correctForLot, readHeld, replaceFlour } from "./blend/spec-substitute.ts";
export { type SquareAnswer, type SquareQuestion, squareRule } from "./blend/square.ts";
export { type StyleCheck, styleNotes, styles } from "./blend/style-notes.ts";
export { type StyleQuantity, type StyleRange, styleRanges } from "./blend/style-ranges.ts";
export { newLot, type Substitution, substitute } from "./blend/substitute.ts";
export {
  type HeldFigure,
  type Hold,
  type NewLotQuestion,
  type StockedFlour,
  type SubstituteQuestion,
  usualHold,
} from "./blend/substitute-question.ts";
export type { WaterFlour } from "./blend/water-flour.ts";
export { type Card, type CardFile, type CardWishes, card } from "./card/card.ts";
export type { CardRow, CardWeights } from "./card/card-weights.ts";
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
export { molarMass } from "./chemistry/elements.ts";
export { additiveLimits, type FoodLimits, foodLimits } from "./chemistry/food-limits.ts";
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
export { type DissolvingSalt, type HydrateName, hydrates, type SpeciesName, species } from "./chemistry/species.ts";
export { type StatedStrength, solutionAt } from "./chemistry/stated-strength.ts";
export { type Stock, type StockWish, severalStock } from "./chemistry/stock.ts";
export { type Strength, strengthOf } from "./chemistry/strength.ts";
export type { Held, Swap } from "./chemistry/swap-amounts.ts";
export { type Assayed, assayed, type Split, type StatedAlkalinity, splitByEndPoints } from "./chemistry/titration.ts";
export type { Cause, Output } from "./explore/cause.ts";
export { formulaStyle } from "./explore/spec-style.ts";
export { type BatchTolerance, batchTolerance } from "./explore/spec-tolerance.ts";
export { formulaTrial } from "./explore/spec-trial.ts";
export { type Tolerance, type ToleranceQuestion, tolerance } from "./explore/tolerance.ts";
export { weighTrial } from "./explore/trial-weights.ts";
export { type Trial, type TrialRequest, waterTrial } from "./explore/water-trial.ts";
// figure
export { type Figure, type Range, shown, shownValue, type Working } from "./figure/figure.ts";
export { type Graph, graphOf, type PlainFigure, type Published, plainFigure, published } from "./figure/graph.ts";
export {
  answer,
  type Code,
  type Facts,
  inputProblem,
  type Note,
  noAnswer,
  type Outcome,
  type Path,
  type Problem,
  type ProblemIn,
  pathText,
  problem,
  refuse,
} from "./figure/problem.ts";
export { type Entry, type FactsOf, input, type Sentences } from "./figure/problems/entry.ts";
export { citation, type Source, type Standing } from "./figure/source.ts";
export { type Told, telling, told } from "./figure/told.ts";
export { type WrittenWorking, writtenWorking } from "./figure/written-working.ts";
// formula
export { computeFormula, type Formula, formulaOf } from "./formula/formula.ts";
export { alkaliBeyond } from "./formula/limits.ts";
export type { FormulaLine } from "./formula/lines.ts";
export { hundredOfFlour, onFlour } from "./formula/on-flour.ts";
// handwritten
export {
  answeredLine,
  type Handwritten,
  type HandwrittenWishes,
  type OpenQuestion,
  readHandwritten,
  type UnderstoodLine,
  type UnknownLine,
} from "./handwritten/handwritten.ts";
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
// noodle
export type { Answer } from "./noodle/answer.ts";
export { askBatch } from "./noodle/ask-batch.ts";
export { askBlend } from "./noodle/ask-blend.ts";
export { askCard, type CardWish, type MadeCard, type MissingAnswer } from "./noodle/ask-card.ts";
export { askCost } from "./noodle/ask-cost.ts";
export { askDay } from "./noodle/ask-day.ts";
export { askFormula, askStyle } from "./noodle/ask-formula.ts";
export { askNutrition } from "./noodle/ask-nutrition.ts";
export {
  askFlourReplacement,
  askIngredientReplacement,
  askLot,
  blendFound,
  type HoldWish,
} from "./noodle/ask-replacement.ts";
export { askSheet } from "./noodle/ask-sheet.ts";
export { askTolerance } from "./noodle/ask-tolerance.ts";
export { askTrial, type WeighedTrial } from "./noodle/ask-trial.ts";
export { askWater } from "./noodle/ask-water.ts";
export { type Noodle, type ReadingWishes, readNoodle, readNoodleData } from "./noodle/noodle.ts";
export { type StockNeeds, stockNeeds } from "./noodle/stock-needs.ts";
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
export { type Moment, momentAt, readTimeOfDay } from "./sheet/day/clock.ts";
export { type CookGain, cookedMass, rawMass, usualGain } from "./sheet/day/cook.ts";
export { type BoiledWater, gainFromWater, gainFromWeights } from "./sheet/day/cook-gain.ts";
export { type DayPlan, type PotPlan, planDay } from "./sheet/day/day-plan.ts";
export type {
  MachineCount,
  PlanRequest,
  PlanStage,
  StageName,
  WaitStage,
  WorkStage,
} from "./sheet/day/plan-request.ts";
export { type Basket, potRecovery, potWater, powerIntoWater, type TimedPot } from "./sheet/day/pot.ts";
export { type Pace, type PlannedLoad, type PlannedStage, type TimePlan, timePlan } from "./sheet/day/timeplan.ts";
export type { Compounding } from "./sheet/passes/compounding.ts";
export { fitProblems, type PlannedSheet } from "./sheet/passes/fits.ts";
export {
  type Cutter,
  type CutterSize,
  type Gaps,
  type Machine,
  machineProblems,
  type Rolls,
  type Setting,
} from "./sheet/passes/machine.ts";
export type { PassRequest } from "./sheet/passes/pass-request.ts";
export { type Pass, type PassSchedule, passSchedule } from "./sheet/passes/passes.ts";
export type { GapList } from "./sheet/passes/steps-for-gaps.ts";
export { planSheet, type SheetPlan } from "./sheet/sheet-plan.ts";
export type { CutRequest } from "./sheet/strands/cut-request.ts";
export { strandWidth } from "./sheet/strands/cutter.ts";
export { dustingStarch } from "./sheet/strands/dusting.ts";
export { type Account, type CutPlan, cutPlan, loadsFor } from "./sheet/strands/geometry.ts";
export { type DoughWater, loadWater, plainMixWater } from "./sheet/water/dough-water.ts";
export {
  airFromDensity,
  doughDensity,
  type Food,
  type FoodComposition,
  givenDensity,
  poreFreeDensity,
  specificHeat,
} from "./sheet/water/food.ts";
export { flourSpecificHeat, type Ingredient, type Mix, waterSpecificHeat } from "./sheet/water/heat-balance.ts";
export { heatOfSolution } from "./sheet/water/heat-of-solution.ts";
export {
  densityFromSheet,
  lossesFrom,
  type MeasuredSheet,
  type StageLosses,
  springBackFrom,
  thicknessFromSheet,
  type WeighedStage,
} from "./sheet/water/inverse.ts";
export { type MeasuredMix, type MixerRun, mixerWork, mixingHeat } from "./sheet/water/measured-mix.ts";
export {
  type Measurement,
  measuredCooking,
  measuredLosses,
  measuredMixing,
  measuredSheet,
} from "./sheet/water/measurements.ts";
export type { MixingHeat } from "./sheet/water/mixing-heat.ts";
export { type WaterPlan, type WaterRequest, waterTemperature } from "./sheet/water/temperature.ts";
export { frictionFrom, type ThreeTemperatures, threeTemperatureWater } from "./sheet/water/three-temperatures.ts";
export { type Kitchen, readBy, readKitchenFile, readSpec } from "./spec/read-spec.ts";
export { type Spec, type SpecInput, specSchema } from "./spec/spec.ts";
