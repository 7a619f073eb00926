// The one door of the library: everything public is named here, folder by folder.

// batch
export { type Batch, planBatch } from "./batch/batch.ts";
export { type Cost, type CostLine, costOf } from "./batch/cost.ts";
export type { SharedOut } from "./batch/cost-shares.ts";
export { type Nutrition, type NutritionWish, nutritionOf } from "./batch/nutrition.ts";
export type { NutrientAmount } from "./batch/nutrition-amounts.ts";
export type { Declared } from "./batch/nutrition-declared.ts";
export type { NutritionRules } from "./batch/nutrition-rules.ts";
export type { Shopping, ShoppingLine } from "./batch/shopping.ts";
export type { StockReach } from "./batch/shopping-stock.ts";
// figure
export { type Figure, type Range, shown, shownValue, type Working } from "./figure/figure.ts";
export { type Note, type Outcome, type Path, type Problem, pathText } from "./figure/problem.ts";
export { citation, type Source, type Standing } from "./figure/source.ts";
// formula
export { computeFormula, type Formula, formulaOf } from "./formula/formula.ts";
export type { FormulaLine } from "./formula/lines.ts";
export { type Kitchen, readBy, readKitchenFile, readSpec } from "./formula/read-spec.ts";
export { type Spec, type SpecInput, specSchema } from "./formula/spec.ts";
// materials
export { type AllergenList, isJurisdiction, type Jurisdiction } from "./materials/allergen-lists.ts";
export { type AllergenReport, allergensFor } from "./materials/allergens.ts";
export { isRuleBook, type RuleBookName } from "./materials/rounding-rules.ts";
export { catalogue, findMaterial, nearestNames, searchMaterials } from "./materials/catalogue.ts";
export type { MachineFields, OwnMachines } from "./materials/machine-schema.ts";
export type { Material, MaterialKind } from "./materials/material.ts";
export { type KitchenMaterial, type OwnMaterials, resolveMaterial } from "./materials/own.ts";
export { kitchenFileSchema, type MaterialFigures, materialKinds } from "./materials/schema.ts";
// number
export { type Decimal, type DecimalInput, type DecimalText, dec, decimalText, fixedText } from "./number/decimal.ts";
export { parseQuantity, type Quantity, type QuantityReading } from "./number/quantity.ts";
export { type Dimension, findUnit, type Unit, units, unitsFor } from "./number/units.ts";

// report
export { batchReport } from "./report/batch-report.ts";
export { onlyFigure, withWorking } from "./report/build.ts";
export { type Card, type CardRow, type CardWishes, card } from "./report/card.ts";
export { costReport } from "./report/cost-report.ts";
export { formulaReport } from "./report/formula-report.ts";
export { jsonSchema, problemsSchema, schemaNames } from "./report/json-schema.ts";
export { materialsReport } from "./report/materials-report.ts";
export { nutritionReport } from "./report/nutrition-report.ts";
export { escapeMarkup } from "./report/pictures/svg.ts";
export { type Block, type Cell, type Report, reportSchema, type Section, type Table } from "./report/schema.ts";
export { shownGrouped, type UnitSystem } from "./report/show.ts";
