import type { Settled } from "../explore/settle.ts";
import { isSection, openPlaces } from "../explore/settle-places.ts";
import { frozen } from "../figure/frozen.ts";
import type { UnitSystem } from "../figure/in-system.ts";
import { answer, loudNote, type Note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { said } from "../figure/said.ts";
import { type Formula, formulaOf } from "../formula/formula.ts";
import type { OwnMaterials } from "../materials/own.ts";
import { plainData } from "../spec/plain-data.ts";
import {
  choiceProblem,
  type Kitchen,
  type KitchenInput,
  kitchenOf,
  readableParts,
  readKitchen,
} from "../spec/read-spec.ts";
import type { Spec } from "../spec/spec.ts";
import { unusualValues } from "./unusual.ts";

/** What a noodle is read with, beside its spec. */
export interface ReadingWishes {
  /**
   * Kitchens with materials and machines of their own, as `readKitchenFile` gives them, or the data of a kitchen file, which
   * is read; where two have one of the same name, the later counts.
   */
  readonly kitchens?: readonly (Kitchen | KitchenInput)[];
  /** Units that answers speak in; weights stay in those of the scales, where the spec names any. */
  readonly units?: UnitSystem;
}

/**
 * What is told of a noodle beyond its own sums. `readNoodle` takes in all of it; a program that has no use for a part is
 * smaller without it.
 */
export interface Beyond {
  /** Finds the amounts that a spec leaves to be found; without it such a spec is refused. */
  readonly settle?: (data: unknown, materials: OwnMaterials) => Outcome<Settled | undefined>;
  /** Tells what the spec wants and the batch does not come to. */
  readonly missed?: (noodle: Noodle) => readonly Note[];
  /** Tells where the sheets of the spec give fewer portions than are wanted. */
  readonly shortPortions?: (noodle: Noodle) => readonly Note[];
}

/**
 * A noodle that was read: its spec, the kitchen it is made in and the units it is spoken of in, which stay together.
 * Everything is asked of it, so that no answer mixes two noodles. Only reading makes one; it is not data, and no copy of it
 * is one.
 */
export interface Noodle {
  /** What was read of the spec: quantities in base units. It is no spec to read again. */
  readonly spec: Spec;
  /** Materials and machines of the kitchens that it was read with, beside those in the spec. */
  readonly kitchen: Kitchen;
  readonly units: UnitSystem;
  /** The formula on 100 of flour. */
  readonly formula: Formula;
  /** The amounts that the spec left to be found, where it did. */
  readonly settled: Settled | undefined;
  /** What there was to say when the formula was worked out. */
  readonly notes: readonly Note[];
  /** What is told of it beyond its own sums. */
  readonly beyond: Beyond;
}

const made = new WeakSet<Noodle>();

/**
 * The noodle that was asked.
 *
 * @throws {TypeError} on anything that reading did not make: a bug of the caller.
 */
export function asRead(noodle: Noodle): Noodle {
  if (made.has(noodle)) return noodle;
  throw new TypeError("a noodle is made by readNoodle; it is not data: keep the spec, and read it again");
}

/**
 * Whether a spec asks for more than its own sums: it leaves an amount to be found, or says what it wants.
 *
 * @param input - plain data, of which nobody knows yet whether it is a spec
 * @example goesBeyond({ flours: [{ name: "bread flour", amount: "find" }] }) // => true
 */
export function goesBeyond(input: unknown): boolean {
  return openPlaces(input) !== undefined || (isSection(input) && input["wanted"] !== undefined);
}

/**
 * Reads a noodle from plain data of which nobody knows yet whether it is a spec, with what the program takes in beyond its
 * own sums: without anything, every amount has to be stated, and nothing is said of what the spec wants or of its sheets.
 *
 * Problems: those of `readNoodle`.
 * @example readStatedNoodle({ name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "find" } }).problems[0].code // => "quantity.unreadable"
 */
export function readStatedNoodle(input: unknown, wishes: ReadingWishes = {}, beyond: Beyond = {}): Outcome<Noodle> {
  const plain = plainData(input);
  const wished = readWishes(wishes);
  if (!plain.ok) return plain;
  if (!wished.ok) return wished;
  const data = plain.value;
  const { kitchens, units } = wished.value;
  const kitchen = kitchenOf({
    materials: Object.fromEntries(kitchens.flatMap(({ materials }) => Object.entries(materials))),
    machines: Object.fromEntries(kitchens.flatMap(({ machines }) => Object.entries(machines))),
  });
  const settling = beyond.settle?.(data, kitchen.materials) ?? answer(undefined);
  if (!settling.ok) return refuse(...notHanded(data, kitchens.length), ...settling.problems);
  const settled = settling.value;
  const reading = settled === undefined ? formulaOf(data, kitchen.materials) : answer(settled, settled.notes);
  if (!reading.ok) return refuse(...notHanded(data, kitchens.length), ...reading.problems);
  const { spec, formula } = reading.value;
  const unread = spec.include?.slice(kitchens.length) ?? [];
  const notes = [
    ...(unread.length > 0 ? [loudNote("noodle.not-included", ["include"], { files: unread })] : []),
    ...unusualValues(spec, formula),
    ...reading.notes,
  ];
  const parts: Noodle = { spec, kitchen, units, formula, notes, settled, beyond: frozen(beyond) };
  // Functions cannot be copied: without them a copy comes as far as `asRead`, which says what it is.
  const noodle = frozen(Object.defineProperty(parts, "beyond", { enumerable: false }));
  made.add(noodle);
  return frozen(answer(noodle, notes));
}

/** The files of a spec whose kitchens were not handed over, where its other problems may come of that. */
function notHanded(data: unknown, kitchens: number): readonly Problem[] {
  const { include = [] } = readableParts(data);
  const files = include.slice(kitchens);
  return files.length === 0 ? [] : [problem("noodle.not-handed-over", ["include"], { files })];
}

const systems: readonly UnitSystem[] = ["metric", "us"];

/** The wishes with what is not said, or what is wrong with them where no compiler told. */
function readWishes(wishes: unknown): Outcome<{ readonly kitchens: readonly Kitchen[]; readonly units: UnitSystem }> {
  if (!isSection(wishes)) return refuse(problem("spec.type", [], { written: said(wishes), kind: "object" }));
  const { kitchens = [], units = "metric" } = wishes;
  const system = systems.find((one) => one === units);
  const list = Array.isArray(kitchens) ? kitchens.map(readKitchen) : [readKitchen(kitchens)];
  const problems: readonly Problem[] = [
    ...(system === undefined ? [choiceProblem(["units"], units, systems)] : []),
    ...list.flatMap((one, index) =>
      one.ok ? [] : one.problems.map((found) => ({ ...found, path: ["kitchens", index, ...found.path] })),
    ),
  ];
  if (system === undefined || problems.length > 0) return refuse(...problems);
  return answer({ kitchens: list.flatMap((one) => (one.ok ? [one.value] : [])), units: system });
}
