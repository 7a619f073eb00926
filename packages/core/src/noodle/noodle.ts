import * as z from "zod/mini";
import type { Settled } from "../explore/settle.ts";
import { isSection, openPlaces } from "../explore/settle-places.ts";
import { frozen } from "../figure/frozen.ts";
import type { UnitSystem } from "../figure/in-system.ts";
import { answer, loudNote, type Note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { type Formula, formulaOf } from "../formula/formula.ts";
import { described, readAs, refuseValue, section } from "../materials/fields.ts";
import { plainName } from "../materials/nearest.ts";
import type { OwnMaterials } from "../materials/own.ts";
import { plainData } from "../spec/plain-data.ts";
import { type Kitchen, type KitchenInput, kitchenOf, readableParts, readKitchen } from "../spec/read-spec.ts";
import type { Spec } from "../spec/spec.ts";
import { unusualValues } from "./unusual.ts";
import { readWish } from "./wishes.ts";

/** What a noodle is read with, beside its spec. */
export interface ReadingWishes {
  /**
   * Kitchens with materials and machines of their own, as `readKitchenFile` gives them, or the data of a kitchen file, which
   * is read; where two have one of the same name, the later counts, and a note tells it.
   */
  readonly kitchens?: readonly (Kitchen | KitchenInput)[] | undefined;
  /** Units that answers speak in; weights stay in those of the scales, where the spec names any. */
  readonly units?: UnitSystem | undefined;
}

const readingWishes = section({ description: "What a noodle is read with" }, () => ({
  kitchens: z._default(z.array(readAs(z.unknown(), kitchenIn, { description: "A kitchen file" })), []),
  units: described(z._default(z.enum(["metric", "us"]), "metric"), { description: "Units to speak in" }),
}));

function kitchenIn(input: unknown, context: z.core.ParsePayload): Kitchen {
  const reading = readKitchen(input);
  if (reading.ok) return reading.value;
  for (const one of reading.problems) refuseValue(context, one, one.path);
  return z.NEVER;
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
  const wished = readWish(readingWishes, wishes);
  if (!plain.ok) return plain;
  if (!wished.ok) return wished;
  const data = plain.value;
  const { kitchens, units } = wished.value;
  const include = isSection(data) && Array.isArray(data["include"]) ? data["include"] : [];
  const files = kitchens.map((_, at) => String(include[at] ?? `kitchen ${at + 1}`));
  const twice: Note[] = [];
  const kitchen = kitchenOf({
    materials: joined("materials", kitchens, files, twice),
    machines: joined("machines", kitchens, files, twice),
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
    ...twice,
    ...unusualValues(spec, formula),
    ...reading.notes,
  ];
  const parts: Noodle = { spec, kitchen, units, formula, notes, settled, beyond: frozen(beyond) };
  // Functions cannot be copied: without them a copy comes as far as `asRead`, which says what it is.
  const noodle = frozen(Object.defineProperty(parts, "beyond", { enumerable: false }));
  made.add(noodle);
  return frozen(answer(noodle, notes));
}

/** What several kitchens hold by name, the later over the earlier; what two say differently is told. */
function joined<Part extends "materials" | "machines">(
  part: Part,
  kitchens: readonly Kitchen[],
  files: readonly string[],
  twice: Note[],
): Kitchen[Part] {
  const known = new Map<string, { readonly name: string; readonly entry: object; readonly at: number }>();
  for (const [at, kitchen] of kitchens.entries()) {
    for (const [name, entry] of Object.entries<object>(kitchen[part])) {
      const key = part === "materials" ? plainName(name) : name;
      const { entry: was, at: first } = known.get(key) ?? { entry, at };
      known.set(key, { name, entry, at });
      const said = [was, entry].map(
        (one) => new Map(Object.entries(one).map(([of, value]) => [of, JSON.stringify(value)])),
      );
      const differs = Object.keys({ ...was, ...entry }).filter((of) => said[0]?.get(of) !== said[1]?.get(of));
      const facts = { name, first: files[first] ?? "", other: files[at] ?? "", differs };
      if (at !== first && differs.length > 0) twice.push(loudNote("noodle.named-twice", ["include"], facts));
    }
  }
  return Object.fromEntries([...known.values()].map(({ name, entry }) => [name, entry])) as Kitchen[Part];
}

/** The files of a spec whose kitchens were not handed over, where its other problems may come of that. */
function notHanded(data: unknown, kitchens: number): readonly Problem[] {
  const { include = [] } = readableParts(data);
  const files = include.slice(kitchens);
  return files.length === 0 ? [] : [problem("noodle.not-handed-over", ["include"], { files })];
}
