import { settle } from "../explore/settle.ts";
import type { Outcome } from "../figure/problem.ts";
import type { SpecInput } from "../spec/spec.ts";
import { missed } from "./held-against.ts";
import { type Noodle, type ReadingWishes, readStatedNoodle } from "./noodle.ts";
import { shortPortions } from "./planned-sheet.ts";

/**
 * Reads a noodle from its spec and works out its formula, or tells all that is wrong with both in one go.
 *
 * Amounts that the spec leaves to be found are found by what it wants.
 *
 * Problems: those of `readSpec`; those of the flours, water, alkali and ingredients; doses that are too high; those of
 * `settle`, where what is wanted is out of reach among them.
 * @example readNoodle({ name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } }).value.formula.water.added.value // => "36"
 */
export function readNoodle(spec: SpecInput, wishes: ReadingWishes = {}): Outcome<Noodle> {
  return readNoodleData(spec, wishes);
}

/**
 * The same from plain data of which nobody knows yet whether it is a spec, such as that of a file.
 *
 * @example readNoodleData({ nme: 3 }).problems[0].code // => "spec.missing"
 */
export function readNoodleData(input: unknown, wishes: ReadingWishes = {}): Outcome<Noodle> {
  return readStatedNoodle(input, wishes, { settle, missed, shortPortions });
}
