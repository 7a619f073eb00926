// The door to what is written: specs and kitchens, their keys, samples and schemas, and formulas as people write them.
export { type StyleStart, styleStart } from "../blend/style-notes.ts";
export type { Part } from "../handwritten/entries.ts";
export {
  amendedText,
  answeredLine,
  type Handwritten,
  type HandwrittenWishes,
  type KeptNote,
  type OpenQuestion,
  readHandwritten,
  type UnderstoodLine,
  type UnknownLine,
  type Yields,
} from "../handwritten/handwritten.ts";
export { jurisdictions } from "../materials/allergen-lists.ts";
export { basisText } from "../materials/fields.ts";
export type { MachineFields, OwnMachines } from "../materials/machine-schema.ts";
export type { OwnMaterials } from "../materials/own.ts";
export type { MaterialFigures } from "../materials/schema.ts";
export {
  type SpecChange,
  type StandingDose,
  type StandingDoseAnswer,
  type Swapped,
  standingDose,
} from "../noodle/spec-changes.ts";
export { jsonSchema, schemaNames } from "../report/json-schema.ts";
export { keyPathIn, keysInstead, readKeyPath } from "./key-path.ts";
export { type Kitchen, type KitchenInput, readKitchenFile, readSpec } from "./read-spec.ts";
export { type KeySample, keySamples, linesInPlace, valueMeant } from "./sample.ts";
export type { InOneWay, InOneWayOrNone, Spec, Written } from "./spec.ts";
export { yamlLines } from "./yaml-text.ts";
