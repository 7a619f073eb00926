import type { Note } from "@noodlewright/core";
import {
  type Amount,
  type BaumeName,
  type DoseBeside,
  type Product,
  type RatioBy,
  readModulus,
  readProduct,
  readStrength,
  type StatedStrength,
  strengthForms,
} from "@noodlewright/core/chemistry";
import {
  type DecimalText,
  type Dimension,
  inDays,
  parseQuantity,
  problem,
  type Quantity,
} from "@noodlewright/core/figure";
import type { OwnMaterials } from "@noodlewright/core/spec";
import type { PlacedProblem } from "../../input/placed-problem.ts";
import { type AnyProblem, ownProblem } from "../../input/problem.ts";
import { unitsOf } from "../../shared/answer.ts";
import type { Asked } from "../../shared/command.ts";

const standIn: Quantity = { text: "1 g", dimension: "mass", value: "1", unit: "g" };

export type Asking = ReturnType<typeof asking>;

/**
 * Reads what was asked, and keeps what is wrong with it. A flag that cannot be read gives a stand-in, so that all
 * problems show in one go; nothing is worked out then.
 */
export function asking(asked: Asked, own: OwnMaterials) {
  const problems: PlacedProblem[] = [];
  const notes: Note[] = [];
  /** Keeps the problems of what a flag or a word says. */
  const wrong = (flag: string, ...found: readonly AnyProblem[]): void => {
    problems.push(...found.map((problem) => ({ ...problem, flag })));
  };
  const scale: BaumeName = readModulus(asked.text("modulus") ?? "145") ?? "145";
  const said = asked.text("ratio-by");
  const ratioBy: RatioBy = said === "as weighed" ? "as-weighed" : "anhydrous";
  const maybe = (flag: string, dimensions: readonly Dimension[]): Quantity | undefined => {
    const text = asked.text(flag);
    if (text === undefined) return undefined;
    const reading = parseQuantity(text, dimensions);
    if (reading.ok) return reading.quantity;
    wrong(`--${flag}`, problem("quantity.unreadable", [], { written: `"${text}"`, ...reading.fault }));
    return standIn;
  };
  const missing = (flag: string): void => {
    const { describe = "", placeholder = "" } = asked.flag(flag) ?? {};
    const [meaning = ""] = describe.split(";");
    const wanted = `${meaning.charAt(0).toLowerCase()}${meaning.slice(1)}`;
    wrong(`--${flag}`, ownProblem("flag.missing", { wanted, example: `--${flag} '${placeholder}'` }));
  };
  /** Value of a flag in the base unit of its dimension. */
  const quantity = (flag: string, dimensions: readonly Dimension[]): Quantity => {
    const found = maybe(flag, dimensions);
    if (found === undefined) missing(flag);
    return found ?? standIn;
  };
  /** Working temperature, °C. */
  const temperature: DecimalText = maybe("temperature", ["temperature"])?.value ?? "20";
  const warm = asked.text("temperature") === undefined ? undefined : temperature;
  const terms = { modulus: scale, ratioBy, temperature: warm };
  return {
    problems,
    /** What is worth knowing of the products that were named. */
    notes,
    scale,
    ratioBy,
    units: unitsOf(asked),
    temperature,
    quantity,
    maybe,
    /** A mass or a volume. */
    amount: (flag: string): Amount => {
      const { dimension, value } = quantity(flag, ["mass", "volume"]);
      return dimension === "volume" ? { millilitres: value } : { grams: value };
    },
    /** A time in days. */
    days: (flag: string): DecimalText => inDays(quantity(flag, ["time"])),
    strength: (flag: string): StatedStrength => {
      const text = asked.text(flag);
      if (text === undefined) missing(flag);
      const read =
        text === undefined ? undefined : readStrength(text, flag === "reading" ? { ...terms, readAt: warm } : terms);
      if (read !== undefined) return read;
      if (text !== undefined) {
        wrong(`--${flag}`, ownProblem("strength.unreadable", { written: `"${text}"`, forms: strengthForms }));
      }
      return { measure: "mass-percent", value: "1" };
    },
    /** `beside` is a dose that goes with a name which stands for several things. */
    product: (text: string | undefined, where: string, beside?: DoseBeside): Product => {
      const counted = { ...terms, ratioBy: said === undefined ? undefined : ratioBy };
      const outcome = readProduct(text ?? "", own, counted, [], beside);
      if (outcome.ok) {
        notes.push(...outcome.notes);
        return outcome.value;
      }
      wrong(where, ...outcome.problems);
      return { name: "", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" } };
    },
    text: asked.text,
    list: asked.list,
    wrong,
  };
}
