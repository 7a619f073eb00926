import { waterOnly } from "../chemistry/composition.ts";
import { gramsOf } from "../chemistry/strength.ts";
import type { Path, Problem } from "../figure/problem.ts";
import { citation, type Source } from "../figure/source.ts";
import { type OwnMaterials, resolveMaterial } from "../materials/own.ts";
import { materialFiguresSchema } from "../materials/schema.ts";
import { pointed } from "../materials/strength-text.ts";
import { type DecimalText, dec, decimalText, fixedText } from "../number/decimal.ts";
import { parseQuantity } from "../number/quantity.ts";
import { namedOrWritten } from "./replace.ts";

/** Temperature that a volume is taken at where nobody states one, °C. */
const usual = "20";

/** g/mL of liquids that no formula of ours tells the density of. */
const densities: Readonly<Record<"milk" | "egg" | "oil", DecimalText>> = { milk: "1.03", egg: "1.03", oil: "0.92" };
const remembered: Source = { cite: "densities of milk, egg and oil near room temperature", standing: "memory" };

/**
 * Adds to the refusal of a volume what it weighs, where what is measured is water, a solution of known make-up, milk,
 * egg or oil.
 *
 * @param input - the spec as written
 */
export function withGrams(input: unknown, own: OwnMaterials): (problem: Problem) => Problem {
  return (problem) => {
    if (problem.code !== "quantity.unreadable") return problem;
    const written = at(input, problem.path);
    if (typeof written !== "string") return problem;
    const reading = parseQuantity(pointed(written) ?? written, ["volume"]);
    const grams = reading.ok ? gramsAt(input, problem.path, reading.quantity.value, own) : undefined;
    return grams === undefined
      ? problem
      : { ...problem, facts: { ...problem.facts, grams: grams.mass, because: grams.why } };
  };
}

function gramsAt(input: unknown, path: Path, millilitres: DecimalText, own: OwnMaterials) {
  const water = gramsOf(waterOnly, { millilitres }, usual);
  const ofWater = water.ok
    ? { mass: rounded(water.value), why: `so much water at ${usual} °C weighs that` }
    : undefined;
  if (path[0] === "water") return ofWater;
  const entry = at(input, path.slice(0, -1));
  const name = at(entry, ["name"]);
  if (path.at(-1) !== "amount" || typeof name !== "string") return undefined;
  const figures = materialFiguresSchema.safeParse(at(entry, ["figures"]));
  const said = figures.success ? figures.data : undefined;
  const material = said ? resolveMaterial(name, path, said, own) : namedOrWritten(name, path, own, undefined);
  const known = material.ok ? material.value : undefined;
  if (known?.composition !== undefined) {
    const solution = gramsOf(known.composition, { millilitres }, usual);
    return solution.ok ? { mass: rounded(solution.value), why: `so much of it at ${usual} °C weighs that` } : undefined;
  }
  if (known?.kind === "water") return ofWater;
  const liquid = /\bmilk\b/iu.test(name)
    ? "milk"
    : known?.kind === "egg" && dec(known.moisture).gt(40)
      ? "egg"
      : known?.kind === "fat" && /\boil\b/iu.test(name)
        ? "oil"
        : undefined;
  if (liquid === undefined) return undefined;
  const mass = rounded(decimalText(dec(millilitres).times(densities[liquid])));
  return { mass, why: `${liquid} of ${densities[liquid]} g/mL (${citation(remembered)})` };
}

function rounded(grams: DecimalText): string {
  return fixedText(grams, 1);
}

/** What stands at a path of plain data. */
function at(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (here, step) =>
      typeof here === "object" && here !== null && Object.hasOwn(here, step)
        ? (here as Readonly<Record<string | number, unknown>>)[step]
        : undefined,
    data,
  );
}
