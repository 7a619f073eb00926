import { type Settled, settle, settledNotes } from "../explore/settle.ts";
import { answer, type Note, type Outcome } from "../figure/problem.ts";
import { type Formula, formulaOf } from "../formula/formula.ts";
import type { UnitSystem } from "../report/show.ts";
import { plainData } from "../spec/plain-data.ts";
import type { Kitchen } from "../spec/read-spec.ts";
import type { Spec, SpecInput } from "../spec/spec.ts";

/** What a noodle is read with, beside its spec. */
export interface ReadingWishes {
  /** Kitchens with materials and machines of their own; where two have one of the same name, the later counts. */
  readonly kitchens?: readonly Kitchen[];
  /** Units that answers speak in; weights stay in those of the scales, where the spec names any. */
  readonly units?: UnitSystem;
}

/**
 * A noodle that was read: its spec, the kitchen it is made in and the units it is spoken of in, which stay together.
 * Everything is asked of it, so that no answer mixes two noodles. Only `readNoodle` makes one.
 */
export class Noodle {
  readonly #parts: Pick<Noodle, keyof Noodle>;

  constructor(parts: Pick<Noodle, keyof Noodle>) {
    this.#parts = parts;
  }

  /** The spec as read. */
  get spec(): Spec {
    return this.#parts.spec;
  }

  /** Materials and machines of the kitchens that it was read with, beside those in the spec. */
  get kitchen(): Kitchen {
    return this.#parts.kitchen;
  }

  get units(): UnitSystem {
    return this.#parts.units;
  }

  /** The formula on 100 of flour. */
  get formula(): Formula {
    return this.#parts.formula;
  }

  /** The amounts that the spec left to be found, where it did. */
  get settled(): Settled | undefined {
    return this.#parts.settled;
  }

  /** What there was to say when the formula was worked out. */
  get notes(): readonly Note[] {
    return this.#parts.notes;
  }
}

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
export function readNoodleData(
  input: unknown,
  { kitchens = [], units = "metric" }: ReadingWishes = {},
): Outcome<Noodle> {
  const plain = plainData(input);
  if (!plain.ok) return plain;
  const data = plain.value;
  const kitchen: Kitchen = {
    materials: Object.fromEntries(kitchens.flatMap(({ materials }) => Object.entries(materials))),
    machines: Object.fromEntries(kitchens.flatMap(({ machines }) => Object.entries(machines))),
  };
  const settling = settle(data, kitchen.materials);
  if (!settling.ok) return settling;
  const settled = settling.value;
  const reading = formulaOf(settled?.data ?? data, kitchen.materials);
  if (!reading.ok) return reading;
  const { spec, formula } = reading.value;
  const notes = [...(settled === undefined ? [] : settledNotes(settled)), ...reading.notes];
  return answer(new Noodle({ spec, kitchen, units, formula, notes, settled }), notes);
}
