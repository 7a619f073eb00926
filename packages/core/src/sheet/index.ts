// The door to the bench: sheets, strands, water, pot and day without a spec, what a kitchen measures and what a scale shows.
export {
  addedUp,
  heldIn,
  type OnScale,
  type ReadScale,
  readScale,
  type ScaleReading,
  standingOf,
  weighedBeside,
} from "../batch/at-the-scale.ts";
export { calibrateReport } from "../report/calibrate-report.ts";
export { temperatureReport } from "../report/temperature-report.ts";
export { type Caution, type SheetHazard, sheetCautions } from "./cautions.ts";
export { type Moment, momentAt, readTimeOfDay } from "./day/clock.ts";
export { type CookGain, cookedMass, rawMass, usualGain } from "./day/cook.ts";
export { type BoiledWater, gainFromWater, gainFromWeights } from "./day/cook-gain.ts";
export type { PotPlan } from "./day/day-plan.ts";
export type { MachineCount, PlanRequest, PlanStage, StageName, WaitStage, WorkStage } from "./day/plan-request.ts";
export { type Basket, type PotRecovery, potRecovery, potWater, powerIntoWater, type TimedPot } from "./day/pot.ts";
export { type Pace, type PlannedLoad, type PlannedStage, type TimePlan, timePlan } from "./day/timeplan.ts";
export type { Given } from "./inputs.ts";
export type { Compounding } from "./passes/compounding.ts";
export { fitProblems, type PlannedSheet } from "./passes/fits.ts";
export {
  type Cutter,
  type CutterSize,
  type Gaps,
  type Machine,
  machineProblems,
  type Rolls,
  type Setting,
} from "./passes/machine.ts";
export type { PassRequest } from "./passes/pass-request.ts";
export { type Pass, type PassSchedule, passSchedule } from "./passes/passes.ts";
export type { GapList } from "./passes/steps-for-gaps.ts";
export type { CutRequest, SheetRequest } from "./strands/cut-request.ts";
export { strandWidth } from "./strands/cutter.ts";
export { dustingStarch } from "./strands/dusting.ts";
export { type Account, type CutPlan, cutPlan, loadsFor, type Sheets } from "./strands/geometry.ts";
export type { Component } from "./water/choi-okos.ts";
export { plainMixWater } from "./water/dough-water.ts";
export {
  airFromDensity,
  doughDensity,
  type Food,
  type FoodComposition,
  givenDensity,
  poreFreeDensity,
  specificHeat,
} from "./water/food.ts";
export { flourSpecificHeat, type Ingredient, type Mix, waterSpecificHeat } from "./water/heat-balance.ts";
export { heatOfSolution } from "./water/heat-of-solution.ts";
export {
  densityFromSheet,
  lossesFrom,
  type MeasuredSheet,
  type StageLosses,
  springBackFrom,
  thicknessFromSheet,
  type WeighedStage,
} from "./water/inverse.ts";
export { type MeasuredMix, type MixerRun, mixerWork, mixingHeat } from "./water/measured-mix.ts";
export { measuredToasting } from "./water/measured-toasting.ts";
export {
  type Measurement,
  measuredCooking,
  measuredLosses,
  measuredMixing,
  measuredSheet,
} from "./water/measurements.ts";
export type { MixingHeat } from "./water/mixing-heat.ts";
export { type WaterPlan, type WaterRequest, waterTemperature } from "./water/temperature.ts";
export { frictionFrom, type ThreeTemperatures, threeTemperatureWater } from "./water/three-temperatures.ts";
