import { given } from "../figure/figure.ts";
import { inGraph } from "../figure/graph.ts";
import { answer, type Note, note, type Outcome, type Path, type Problem, problem, refuse } from "../figure/problem.ts";
import { definition } from "../figure/source.ts";
import { flourFigures } from "../formula/blend.ts";
import { absorptionFigure } from "../formula/flour-figures.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import { blendFactor } from "../formula/mix.ts";
import { ofFlour } from "../formula/naming.ts";
import { bought } from "../formula/prices.ts";
import { assumedNote } from "../materials/doubt.ts";
import type { Price } from "../materials/fields.ts";
import { plainName } from "../materials/nearest.ts";
import { type KitchenMaterial, type OwnMaterials, resolveMaterial } from "../materials/own.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import type { Candidate } from "./blend-question.ts";
import type { StockedFlour } from "./substitute-question.ts";

/** A flour that may go into the blend, and where the spec names it. */
export interface ShelfFlour {
  readonly flour: StockedFlour;
  readonly path: Path;
  /** Its share now, % of flour. */
  readonly share: DecimalText;
  /** Where the spec limits its share. */
  readonly limits: Path;
}

/** The flours of a spec and those of its shelf. */
export interface FlourShelf {
  readonly flours: readonly ShelfFlour[];
  /** Currency of the prices, where all have the same. */
  readonly currency?: string;
}

type ShelfEntry = NonNullable<Spec["shelf"]>[string];

/**
 * Brings the flours of a spec and of its shelf together, each with its figures (protein as N × 5.7) and its limits.
 *
 * @param extra - the kitchen's own materials from files that the spec includes
 * Problems: `shelf.protein-missing`, `shelf.currencies`, and those of `resolveMaterial`.
 */
export function flourShelf(spec: Spec, formula: Formula, extra: OwnMaterials = {}): Outcome<FlourShelf> {
  const own = { ...extra, ...spec.materials };
  const problems: Problem[] = [];
  const notes: Note[] = [];
  const entries = Object.entries(spec.shelf ?? {});
  const used = formula.lines.filter(({ role }) => role === "flour");
  const flours: ShelfFlour[] = [];
  const prices: Price[] = [];
  const put = (line: FormulaLine, others: readonly FormulaLine[]): void => {
    const { name, path, material, parts } = line;
    if (material.price !== undefined) prices.push(material.price);
    const flour = stocked(line, others, spec);
    if (flour === undefined) problems.push(problem("shelf.protein-missing", path, { name }));
    else {
      const limits = limitsOf(spec, name) === undefined ? ["shelf", name, "share"] : path;
      flours.push({ flour, path, share: parts.value, limits });
    }
  };
  for (const line of used) put({ ...line, parts: inGraph(line.parts, formula.graph) }, used);
  for (const [index, [name, entry]] of entries.entries()) {
    if (used.some((line) => isSame(line.name, name))) continue;
    const path = ["shelf", name];
    const material = resolveMaterial(name, [...path, "name"], entry.figures, own);
    if (material.ok) {
      put(lineBeside(`shelf.${index + 1}`, name, path, bought(name, material.value, spec)), []);
      notes.push(...moistureNotes(name, material.value));
    } else problems.push(...material.problems.map(atKey));
  }
  const asked = [spec.wanted?.price, spec.wanted?.batchPrice].flatMap((price) => price?.currency ?? []);
  const currencies = [...new Set([...prices.map((price) => price.currency), ...asked])];
  const [currency] = currencies;
  if (currencies.length > 1 && asksPrice(spec)) problems.push(problem("shelf.currencies", ["prices"], { currencies }));
  if (problems.length > 0) return refuse(...problems);
  return answer({ flours, ...(currencies.length === 1 && currency !== undefined && { currency }) }, notes);
}

/** On the shelf the name of a flour is the key that its figures stand under. */
function atKey(problem: Problem): Problem {
  const { path } = problem;
  return path.length === 3 && path.at(-1) === "name" ? { ...problem, path: path.slice(0, -1) } : problem;
}

/** Says of a flour that is not in the formula that its moisture was assumed. */
function moistureNotes(name: string, { notes }: KitchenMaterial): readonly Note[] {
  const path = ["shelf", name];
  return notes.includes(assumedNote) ? [note("materials.note", path, { name, says: assumedNote })] : [];
}

/** What the shelf says of a flour. */
export function shelfEntry(spec: Pick<Spec, "shelf">, name: string): ShelfEntry | undefined {
  return Object.entries(spec.shelf ?? {}).find(([key]) => isSame(key, name))?.[1];
}

function isSame(one: string, other: string): boolean {
  return plainName(one) === plainName(other);
}

/** A flour that no formula has in it, as a line of one. */
export function lineBeside(id: string, name: string, path: Path, material: KitchenMaterial): FormulaLine {
  const parts = given({ ...ofFlour(`${id}.parts`, name), places: 0 }, 0, "not in the blend", definition);
  return { id, role: "flour", name, path, material, parts };
}

/**
 * A line as a candidate; undefined where nobody states its protein.
 *
 * @param others - the lines that may have a price for it
 */
export function stocked(
  line: FormulaLine,
  others: readonly FormulaLine[],
  spec: Pick<Spec, "wanted" | "flours" | "shelf">,
): StockedFlour | undefined {
  const { name, material } = line;
  const { protein, ash, moisture, ranges, absorption, kind, price, stock } = material;
  if (protein === undefined) return undefined;
  const entry = shelfEntry(spec, name);
  const figures = { ...flourFigures(line, others, []), id: line.id, absorption: absorptionFigure(line) };
  const atFactor = (value: DecimalText): DecimalText =>
    decimalText(
      dec(value)
        .times(blendFactor)
        .div(protein.nitrogenFactor ?? blendFactor),
    );
  const value = atFactor(protein.value);
  const { share } = entry ?? {};
  const own = limitsOf(spec, name);
  const least = narrower(share?.least, own?.least?.value, "gt");
  const most = narrower(share?.most, own?.most?.value, "lt");
  return {
    name,
    protein: value,
    ...(ranges?.protein && {
      proteinRange: { low: atFactor(ranges.protein.low), high: atFactor(ranges.protein.high) },
    }),
    ...(figures.openAsIs && { proteinAsIs: true }),
    moisture,
    ...(ranges?.moisture && { moistureRange: ranges.moisture }),
    ...(ash !== undefined && { ash }),
    glutenProtein: material.glutenForming ? value : "0",
    wholegrain: material.wholegrain,
    ...(price && { price: price.perKilogram }),
    ...(least !== undefined && { least }),
    ...(most !== undefined && { most }),
    ...(share?.value !== undefined && { fixed: share.value }),
    ...(entry?.ratio && { ratioTo: { name: entry.ratio.to, times: entry.ratio.times } }),
    ...(stock && { store: stock.value }),
    ...(kind === "gluten" && { dryGluten: true }),
    ...stepOf(kind === "gluten", entry, spec),
    ...(entry?.bag && { bag: entry.bag.value }),
    ...(absorption && { ownWater: absorption }),
    figures,
  };
}

/** A flour of the spec with limits of its own. */
function limitsOf({ flours }: Pick<Spec, "flours">, name: string) {
  return flours.find((flour) => isSame(flour.name, name) && (flour.least ?? flour.most) !== undefined);
}

/** Of two limits, where both are stated, the one that leaves less room. */
function narrower(one: DecimalText | undefined, other: DecimalText | undefined, than: "gt" | "lt") {
  return one !== undefined && (other === undefined || dec(one)[than](other)) ? one : other;
}

/** Its own step; a little dry gluten does much, so that its share comes in tenths. */
function stepOf(
  isGluten: boolean,
  entry: ShelfEntry | undefined,
  { wanted }: Pick<Spec, "wanted">,
): Pick<Candidate, "step"> {
  if (entry?.step !== undefined) return { step: entry.step.value };
  const common = wanted?.step?.value ?? "1";
  return isGluten && dec(common).gt(glutenStep) && dec(common).mod(glutenStep).isZero() ? { step: glutenStep } : {};
}

const glutenStep = "0.1";

function asksPrice({ wanted }: Spec): boolean {
  return wanted?.price !== undefined || wanted?.batchPrice !== undefined || wanted?.prefer?.kind === "cheapest";
}
