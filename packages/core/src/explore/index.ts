// The door to the questions behind a noodle: blends, substitutes, styles, tolerance and trials without a spec.
export type {
  BlendAnswer,
  BlendQuestion,
  BlendsFound,
  BlendTargets,
  Candidate,
  CandidateFigures,
  Check,
  FlourNeeded,
  FoundBlend,
  GivenShare,
  Move,
  OutOfReach,
  Preference,
  ProteinTarget,
  Reach,
} from "../blend/blend-question.ts";
export { searchBlend } from "../blend/blend-search.ts";
export { type BlendWater, type HeldWater, waterAfter } from "../blend/blend-water.ts";
export type { Change } from "../blend/compare-blends.ts";
export {
  type ActiveProduct,
  driedWholeEgg,
  type Replacement,
  rawWholeEgg,
  replaceProduct,
} from "../blend/replace-product.ts";
export { type SquareAnswer, type SquareQuestion, squareRule } from "../blend/square.ts";
export { styleNotes, styles } from "../blend/style-notes.ts";
export { type StyleQuantity, type StyleRange, styleRanges } from "../blend/style-ranges.ts";
export { newLot, substitute } from "../blend/substitute.ts";
export {
  type HeldFigure,
  type Hold,
  type NewLotQuestion,
  type StockedFlour,
  type SubstituteQuestion,
  usualHold,
  usualLotHold,
} from "../blend/substitute-question.ts";
export type { WaterFlour } from "../blend/water-flour.ts";
export type { Content, MixedFlour } from "../formula/mix.ts";
export { type Trial, type TrialDough, type TrialFlour, type TrialRequest, waterTrial } from "./water-trial.ts";
