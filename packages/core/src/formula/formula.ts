import * as z from "zod/mini";
import { reactionNotes } from "../chemistry/reaction.ts";
import { type Figure, shown, summed } from "../figure/figure.ts";
import { type Graph, published } from "../figure/graph.ts";
import { answer, loudNote, type Note, note, type Outcome, type Problem, refuse } from "../figure/problem.ts";
import { citation, definition, massBalance } from "../figure/source.ts";
import type { Allergen } from "../materials/allergens.ts";
import { flourBasis } from "../materials/moisture.ts";
import { type KitchenMaterial, type OwnMaterials, resolveMaterial } from "../materials/own.ts";
import { materialFiguresSchema } from "../materials/schema.ts";
import { dec } from "../number/decimal.ts";
import { readableParts, readSpec } from "../spec/read-spec.ts";
import type { Spec } from "../spec/spec.ts";
import { type AlkaliFigures, sumAlkali } from "./alkali.ts";
import { type Blend, mixFlours } from "./blend.ts";
import { type DoughTable, doughTable } from "./dough-table.ts";
import { doseNotes, doseProblems, type LegalSalt, legalSalts, tooMuch } from "./limits.ts";
import { everyLine, type FormulaLine, inUse } from "./line.ts";
import { type StatedLines, statedLines } from "./lines.ts";
import { ofFlour } from "./naming.ts";
import { boughtLines } from "./prices.ts";
import { namedOrWritten } from "./replace.ts";
import { withGrams } from "./volumes.ts";
import { balanceWater, type WaterBalance } from "./water.ts";

/** A noodle formula on 100 parts of flour as weighed. */
export interface Formula {
  readonly name: string;
  /** Flours first, then tap water, alkaline products, salt and the rest, each in % of flour. */
  readonly lines: readonly FormulaLine[];
  readonly dusting?: FormulaLine;
  readonly blend: Blend;
  readonly water: WaterBalance;
  readonly alkali?: AlkaliFigures;
  readonly table: DoughTable;
  /** Salts that some law limits in raw noodles, with that limit. */
  readonly legal: readonly LegalSalt[];
  /** Salt, % of flour. */
  readonly salt: Figure;
  /** Flour of a formula that was written in masses, g. */
  readonly writtenFlour?: Figure;
  /** Flour of the stated moisture that 1 of the flour at hand stands for, where the formula was written on another. */
  readonly referenceFactor?: Figure;
  /** Allergens of all ingredients of which there is any, and the ingredients whose allergens nobody stated. */
  readonly allergens: readonly Allergen[];
  readonly allergensPossible: readonly Allergen[];
  readonly allergensUnknown: readonly string[];
  readonly graph: Graph;
}

/** What any entry of a list has, whatever else is wrong with it. */
const namedEntrySchema = z.object({ name: z.string(), figures: z.optional(materialFiguresSchema) });

/** Tap water as a material. */
const tapWater: KitchenMaterial = {
  key: "water",
  name: "tap water",
  aliases: [],
  kind: "water",
  moisture: "100",
  glutenForming: false,
  wholegrain: false,
  allergens: [],
  allergensKnown: true,
  notes: [],
  source: definition,
  stated: {},
  figureSources: { moisture: definition, protein: definition, ash: definition, composition: definition },
};

/**
 * Works out the formula of a spec on 100 parts of flour.
 *
 * @param extra - the kitchen's own materials from files that the spec includes; those in the spec come first
 * Problems: those of `statedLines` and `balanceWater`, all in one go; then those of `doseProblems`.
 */
export function computeFormula(spec: Spec, extra: OwnMaterials = {}): Outcome<Formula> {
  const lines = statedLines(spec, extra);
  const problems: Problem[] = lines.ok ? [] : [...lines.problems];
  const water = lines.ok ? balanceWater(lines.value, spec.water) : undefined;
  if (water?.ok === false) problems.push(...water.problems);
  if (!lines.ok || !water?.ok) return refuse(...problems);
  const formula = assemble(spec, lines.value, water.value);
  if (formula.ok) {
    const wet = tooMuch("water", "added water", formula.value.water.added, ["water"]);
    const beyond = doseProblems(formula.value, spec.accept);
    if (wet !== undefined || beyond.length > 0) return refuse(...(wet ? [wet] : []), ...beyond);
  }
  return formula.ok ? answer(formula.value, [...lines.notes, ...formula.notes]) : formula;
}

/** A formula whose ingredients have other prices; all else in it is as it was. */
export function pricedAnew(formula: Formula, spec: Pick<Spec, "prices">): Formula {
  const all = boughtLines(everyLine(formula), spec);
  const [dusting, lines] = [all.find(isDusting), all.filter((line) => !isDusting(line))];
  const blend = mixFlours(lines.filter(({ role }) => role === "flour"));
  return published({ ...formula, lines, ...(dusting && { dusting }), blend });
}

function isDusting({ role }: FormulaLine): boolean {
  return role === "dusting";
}

/**
 * Reads a spec and works out its formula, with the problems of shape and of sense together.
 *
 * @example formulaOf({ name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } }).value.formula.water.added.value // => "36"
 */
export function formulaOf(
  input: unknown,
  extra: OwnMaterials = {},
): Outcome<{ readonly spec: Spec; readonly formula: Formula }> {
  const spec = readSpec(input);
  if (!spec.ok) {
    const weighed = spec.problems.map(withGrams(input, { ...extra, ...readableParts(input).materials }));
    return refuse(...weighed, ...senseProblems(input, extra, spec.problems));
  }
  const formula = computeFormula(spec.value, extra);
  return formula.ok ? answer({ spec: spec.value, formula: formula.value }, formula.notes) : formula;
}

/** What is wrong in the readable parts of a spec whose other parts cannot be read. */
function senseProblems(input: unknown, extra: OwnMaterials, found: readonly Problem[]): readonly Problem[] {
  const parts = readableParts(input);
  const own = { ...extra, ...parts.materials };
  const { flours } = parts;
  const lines = flours === undefined ? undefined : statedLines({ ...parts, flours }, own);
  const sense = [...(lines?.ok === false ? lines.problems : []), ...nameProblems(input, own)];
  const told = new Set(found.map(({ path }) => path.join("/")));
  const ownUnreadable = found.some(({ path }) => path[0] === "materials");
  return sense.filter(({ code, path }) => {
    const place = path.join("/");
    if (told.has(place) || (ownUnreadable && code.startsWith("materials."))) return false;
    told.add(place);
    return true;
  });
}

/** Most names of one list that are looked up; a spec that has more is refused for that. */
const mostNames = 60;

/** Names that stand for nothing, looked up entry by entry, so that one unreadable entry does not hide the others. */
function nameProblems(input: unknown, own: OwnMaterials): readonly Problem[] {
  return (["flours", "alkali", "ingredients"] as const).flatMap((key) => {
    const list = typeof input === "object" && input !== null ? (input as Readonly<Record<string, unknown>>)[key] : [];
    if (!Array.isArray(list)) return [];
    return list.slice(0, mostNames).flatMap((entry: unknown, index): readonly Problem[] => {
      const named = namedEntrySchema.safeParse(entry);
      if (!named.success) return [];
      const { name, figures } = named.data;
      const path = [key, index, "name"];
      const written = key === "alkali" && figures === undefined;
      const outcome = written ? namedOrWritten(name, path, own, undefined) : resolveMaterial(name, path, figures, own);
      return outcome.ok ? [] : outcome.problems;
    });
  });
}

function assemble(spec: Spec, stated: StatedLines, water: WaterBalance): Outcome<Formula> {
  const tap: FormulaLine = {
    id: "water",
    role: "water",
    name: "tap water",
    path: ["water"],
    material: tapWater,
    parts: water.tap,
  };
  const order = ["alkali", "salt", "ingredient"] as const;
  const others = order.flatMap((role) => stated.others.filter((line) => line.role === role));
  const all = boughtLines([...stated.flours, tap, ...others, ...(stated.dusting ? [stated.dusting] : [])], spec);
  const [dusting, lines] = [all.find(isDusting), all.filter((line) => !isDusting(line))];
  const blend = mixFlours(lines.filter(({ role }) => role === "flour"));
  const everything = inUse(all).map((line) => line.material);
  const alkali = sumAlkali(lines);
  const salts = lines.filter(({ material }) => material.kind === "salt");
  const formula = published<Omit<Formula, "graph">>({
    name: spec.name,
    lines,
    ...(dusting && { dusting }),
    blend,
    water,
    ...(alkali && { alkali }),
    table: doughTable(lines, water),
    legal: legalSalts(lines, water.dough),
    salt: summed(ofFlour("salt.total", "salt in all"), { salt: salts.map(({ parts }) => parts) }, massBalance),
    ...(stated.writtenFlour && { writtenFlour: stated.writtenFlour }),
    ...(stated.referenceFactor && { referenceFactor: stated.referenceFactor }),
    allergens: [...new Set(everything.flatMap((material) => material.allergens))],
    allergensPossible: [...new Set(everything.flatMap((material) => material.allergensPossible ?? []))],
    allergensUnknown: [
      ...new Set(everything.filter((material) => !material.allergensKnown).map((material) => material.name)),
    ],
  });
  const alkalies = lines.flatMap(({ role, material }) => (role === "alkali" ? (material.composition ?? []) : []));
  const notes = [
    ...referenceNotes(spec, formula),
    ...blend.notes,
    ...basisNotes(lines),
    ...materialNotes(lines),
    ...reactionNotes(alkalies),
    ...rangeNotes(formula),
    ...reworkNotes(spec),
  ];
  return answer(formula, notes);
}

function referenceNotes(spec: Spec, formula: Formula): readonly Note[] {
  const reference = spec.water.onFlourMoisture;
  if (reference === undefined) return [];
  const moisture = shown(formula.blend.moisture);
  const several = formula.lines.filter(({ role }) => role === "flour").length > 1;
  const facts = { written: reference.text, moisture, several };
  return [note("water.reference-moisture", ["water", "onFlourMoisture"], facts)];
}

/** What rework is to a formula, and whose rule its age and its share are. */
function reworkNotes({ rework, mixer }: Spec): readonly Note[] {
  if (rework === undefined) return [];
  const { amount, most, oldest } = rework;
  const of = amount.dimension === "share" ? "dough in the mixer" : "whole batch";
  const rule = { ...(most && { most: most.text }), ...(oldest && { oldest: oldest.text }) };
  const same = { amount: amount.text, of, ofFlour: mixer?.of === "flour" } as const;
  return [note("rework.same-dough", ["rework"], same), note("rework.rule", ["rework"], rule)];
}

/** The flours whose protein was stated without its basis, in one note. */
function basisNotes(lines: readonly FormulaLine[]): readonly Note[] {
  const names = lines.filter(({ material }) => material.stated.protein?.assumed).map(({ name }) => name);
  const facts = { names, percent: flourBasis.value, source: citation(flourBasis.source) };
  return names.length === 0 ? [] : [note("blend.basis-assumed", ["flours"], facts)];
}

function materialNotes(lines: readonly FormulaLine[]): readonly Note[] {
  const telling = lines.filter((line) => line.role !== "salt");
  return telling.flatMap((line) =>
    line.material.notes.map((says) => {
      const code = line.role === "alkali" ? "alkali.product" : "materials.note";
      return (typeof says !== "string" && says.loud ? loudNote : note)(code, line.path, { name: line.name, says });
    }),
  );
}

/** Added water and doses that no published noodle figure reaches are worth a word, not a refusal. */
function rangeNotes(formula: Formula): readonly Note[] {
  const added = dec(formula.water.added.value);
  return [
    ...(added.lt(25) || added.gt(50) ? [note("water.unusual", ["water"], { added: added.toFixed(1) })] : []),
    ...doseNotes(formula),
  ];
}
