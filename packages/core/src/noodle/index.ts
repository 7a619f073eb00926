// The door to the types of the answers: what each `askX` gives, and what that is made of; to what a change would miss, and
// to the batch without its report.
export type { AfterRounding } from "../batch/after-rounding.ts";
export type { Batch } from "../batch/batch.ts";
export type { Cost, CostLine } from "../batch/cost.ts";
export type { EqualShares, SharedOut } from "../batch/cost-shares.ts";
export type { Loads } from "../batch/loads.ts";
export type { Stage } from "../batch/losses.ts";
export type { Mended, MendedFigure, MendedLine, MendedRework } from "../batch/mend-load.ts";
export type { Nutrition } from "../batch/nutrition.ts";
export type { NutrientAmount, PerAmount } from "../batch/nutrition-amounts.ts";
export type { KeptInBoiling } from "../batch/nutrition-cooked.ts";
export type { Declared } from "../batch/nutrition-declared.ts";
export type { FinerScale, Remedies, ScaledMass, StockedWeight, StockRemedy } from "../batch/remedy.ts";
export type { Rework } from "../batch/rework.ts";
export type { Shopping } from "../batch/shopping.ts";
export type { ShoppingLine } from "../batch/shopping-line.ts";
export type { StockReach } from "../batch/shopping-stock.ts";
export type { Target } from "../batch/target.ts";
export type { WeighedLine } from "../batch/weighing.ts";
export type { SpecBlend } from "../blend/spec-blend.ts";
export type { ReplacedIngredient } from "../blend/spec-product.ts";
export type { StyleCheck } from "../blend/style-notes.ts";
export type { Substitution } from "../blend/substitute.ts";
export type { Card, CardFile, Fact } from "../card/card.ts";
export type { CardRow, CardWeights } from "../card/card-weights.ts";
export type { Cause, Output } from "../explore/cause.ts";
export type { ComparedLine, ComparedRange, Comparison } from "../explore/compare.ts";
export type { Settled } from "../explore/settle.ts";
export type { FoundAmount } from "../explore/settle-places.ts";
export type { Simulated, TrialClass } from "../explore/simulate.ts";
export type { BatchCauses } from "../explore/spec-causes.ts";
export type { BatchTolerance } from "../explore/spec-tolerance.ts";
export type { CauseShare, Tolerance } from "../explore/tolerance.ts";
export type { TrialWeights, WeighedTrial } from "../explore/trial-weights.ts";
export type { WantedCheck } from "../explore/wanted-checks.ts";
export type { Reached } from "../figure/problems/explore.ts";
export type { AlkaliFigures } from "../formula/alkali.ts";
export type { Blend, OnBases } from "../formula/blend.ts";
export type { DoughTable, InDough } from "../formula/dough-table.ts";
export type { Role } from "../formula/entries.ts";
export type { Formula } from "../formula/formula.ts";
export type { LegalSalt } from "../formula/limits.ts";
export type { FormulaLine } from "../formula/line.ts";
export type { WaterBalance } from "../formula/water.ts";
export type { Allergen } from "../materials/allergen.ts";
export type { AllergenList, Duty, Jurisdiction, ListedAllergen } from "../materials/allergen-lists.ts";
export type {
  AllergenFinding,
  AllergenReport,
  ExemptFinding,
  GlutenFinding,
  KindFinding,
} from "../materials/allergens.ts";
export type { MoistureBasis, Price } from "../materials/fields.ts";
export type { Material, MaterialKind, Protein, Spread, SpreadOf } from "../materials/material.ts";
export type {
  Content,
  Counted,
  EnergyPerGram,
  LabelLine,
  Nutrient,
  NutrientFigure,
  NutrientName,
  StatedFigure,
} from "../materials/nutrients.ts";
export type { KitchenMaterial, Stated, StatedShare } from "../materials/own.ts";
export type { RecordedFigures } from "../materials/recorded.ts";
export type { RoundingBand, RuleBookName, Tolerance as LabelTolerance } from "../materials/rounding-rules.ts";
export type { Word } from "../report/words.ts";
export type { DayPlan } from "../sheet/day/day-plan.ts";
export type { AccountLine, SheetPlan, Strands } from "../sheet/sheet-plan.ts";
export type { DoughWater, WeighedWater } from "../sheet/water/dough-water.ts";
export type { WeighedIce } from "../sheet/water/iced-water.ts";
export type { ChangingAnswer } from "./answer.ts";
export type { MadeCard, MissingAnswer } from "./ask-card.ts";
export type { SettledNoodle } from "./ask-settle.ts";
export { newlyMissed } from "./held-against.ts";
export { plannedBatch } from "./planned-batch.ts";
