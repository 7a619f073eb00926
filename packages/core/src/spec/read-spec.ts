import * as z from "zod/mini";
import { answer, type Outcome, type Path, type Problem, problem, refuse } from "../figure/problem.ts";
import { said, saidPlain } from "../figure/said.ts";
import { isAlkaliLike } from "../materials/catalogue.ts";
import type { OwnMachines } from "../materials/machine-schema.ts";
import { nearestNames, wordsOf } from "../materials/nearest.ts";
import type { OwnMaterials } from "../materials/own.ts";
import { recordedMeant } from "../materials/recorded.ts";
import { kitchenFileSchema, kitchenMaterialsSchema } from "../materials/schema.ts";
import { parseQuantity } from "../number/quantity.ts";
import { plainData } from "./plain-data.ts";
import { type Spec, specSchema, type Written } from "./spec.ts";
import { describeAt, inner, optionsOf, schemaAt } from "./walk.ts";
import { flowText } from "./yaml-text.ts";

/**
 * Reads a spec from plain data, as a YAML or JSON file gives it.
 *
 * Reports every problem of shape in one go: `spec.unknown-key`, `spec.missing`, `spec.type`, `spec.choice`, `spec.size`,
 * `quantity.unreadable`, `quantity.out-of-range`, `basis.unreadable`, `price.unreadable`.
 *
 * @example readSpec({ name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } }).value.water.added.value // => "36"
 */
export function readSpec(input: unknown): Outcome<Spec> {
  const data = plainData(input);
  return data.ok ? readBy(specSchema, data.value) : data;
}

/** A kitchen's own materials and machines as they were read. It is plain data: a copy of it is as good. */
export interface Kitchen {
  /** Tells it from the data of a kitchen file. */
  readonly kind: "kitchen";
  readonly materials: OwnMaterials;
  readonly machines: OwnMachines;
}

/** A kitchen file as it is written. */
export type KitchenInput = Written<z.input<typeof kitchenFileSchema>>;

/**
 * Reads a kitchen file, which holds the kitchen's own materials and machines; problems as for `readSpec`, and
 * `cutter.unreadable`, `machine.gaps-stated`, `machine.gaps-reversed`, `machine.settings-count`.
 *
 * @param only - `materials` leaves the machines unread, for what needs none
 * @example readKitchenFile({ materials: { "own flour": { moisture: "13 %" } } }).value.materials["own flour"].moisture.value // => "13"
 */
export function readKitchenFile(input: unknown, only?: "materials"): Outcome<Kitchen> {
  const data = plainData(input);
  if (!data.ok) return data;
  if (only === "materials") {
    const outcome = readBy(kitchenMaterialsSchema, data.value);
    return outcome.ok ? answer(kitchenOf({ materials: outcome.value.materials })) : outcome;
  }
  const outcome = readBy(kitchenFileSchema, data.value);
  return outcome.ok ? answer(kitchenOf(outcome.value)) : outcome;
}

/** A kitchen of what was read. */
export function kitchenOf({
  materials = {},
  machines = {},
}: { [Part in "materials" | "machines"]?: Kitchen[Part] | undefined }): Kitchen {
  return { kind: "kitchen", materials, machines };
}

/** A kitchen as it is where it was read, and read where it is the data of a kitchen file. */
export function readKitchen(input: unknown): Outcome<Kitchen> {
  return isKitchen(input) ? answer(input) : readKitchenFile(input);
}

function isKitchen(input: unknown): input is Kitchen {
  return typeof input === "object" && input !== null && "kind" in input && input.kind === "kitchen";
}

/**
 * Reads the parts of a spec that can be read although others cannot, so that their problems show in the same go.
 */
export function readableParts(input: unknown): Partial<Spec> {
  if (typeof input !== "object" || input === null) return {};
  const parts: Record<string, unknown> = {};
  for (const [key, schema] of Object.entries(specSchema.shape)) {
    const value = (input as Readonly<Record<string, unknown>>)[key];
    if (value === undefined) continue;
    const outcome = z.safeParse(schema, value);
    if (outcome.success) parts[key] = outcome.data;
  }
  return parts;
}

/** Reads plain data by a schema, every problem of shape in one go. */
export function readBy<Schema extends z.core.$ZodType>(schema: Schema, input: unknown): Outcome<z.output<Schema>> {
  const outcome = z.safeParse(schema, input, { reportInput: true, jitless: true });
  if (outcome.success) return answer(outcome.data);
  const { issues } = outcome.error;
  const meant = new Map(issues.map((issue) => [issue, keyMeant(issue, issues, schema)]));
  const told = new Set(meant.values());
  const problems = issues
    .filter((issue) => !told.has(issue) && !isLooser(issue, issues))
    .flatMap((issue) => toProblems(issue, schema, meant.get(issue)));
  // A key that is missing under its name and there under another is told once.
  const there = problems.flatMap((one) => {
    if (one.code !== "spec.unknown-key") return [];
    const section = one.path.slice(0, -1);
    return [[...section, one.facts.nearest[0] ?? one.facts.elsewhere?.[section.length]].join()];
  });
  return refuse(...problems.filter(({ code, path }) => code !== "spec.missing" || !there.includes(path.join())));
}

/** Whether another limit at the same place is tighter, and so is the one to tell. */
function isLooser(issue: z.core.$ZodIssue, issues: readonly z.core.$ZodIssue[]): boolean {
  const place = issue.path.join();
  return issues.some(
    (other) =>
      issue.code === "too_big" &&
      other.code === "too_big" &&
      other.path.join() === place &&
      other.maximum < issue.maximum,
  );
}

/** The missing key that a key unknown to its section stands for: the only one missing there, which takes its value. */
function keyMeant(
  issue: z.core.$ZodIssue,
  issues: readonly z.core.$ZodIssue[],
  schema: z.core.$ZodType,
): z.core.$ZodIssue | undefined {
  if (issue.code !== "unrecognized_keys") return undefined;
  const { keys, path } = issue;
  const missing = issues.filter(
    (one) =>
      one.input === undefined && one.path.length === path.length + 1 && path.every((step, at) => one.path[at] === step),
  );
  const [key = "", ...more] = keys;
  const [only, ...others] = missing;
  if (only === undefined || others.length > 0 || more.length > 0) return undefined;
  const [nearest = only.path.at(-1)] = keysLike(key, keysAt(schema, plainPath(path)));
  if (nearest !== only.path.at(-1)) return undefined;
  const value = plainValue(issue.input, key);
  const field = schemaAt(schema, plainPath(only.path));
  return value !== undefined && field !== undefined && z.safeParse(field, value).success ? only : undefined;
}

/** A text, a number or nothing written under a key. */
function plainValue(section: unknown, key: string): string | number | null | undefined {
  if (typeof section !== "object" || section === null) return undefined;
  const value = (section as Readonly<Record<string, unknown>>)[key];
  return typeof value === "string" || typeof value === "number" || value === null ? value : undefined;
}

function plainPath(path: readonly PropertyKey[]): Path {
  return path.map((step) => (typeof step === "symbol" ? step.toString() : step));
}

function toProblems(issue: z.core.$ZodIssue, schema: z.core.$ZodType, meant?: z.core.$ZodIssue): readonly Problem[] {
  const path = plainPath(issue.path);
  const input = issue.input;
  const meaning = describeAt(schema, path);
  const within = issue.code === "invalid_union" ? ofTheKindMeant(issue.errors) : undefined;
  if (within) return within.flatMap((one) => toProblems({ ...one, path: [...issue.path, ...one.path] }, schema));
  switch (issue.code) {
    case "unrecognized_keys":
      return issue.keys.map((key) => {
        const instead = meant && `${String(meant.path.at(-1))}: ${plainValue(input, key)}`;
        return unknownKey(key, path, schema, { instead, value: plainValue(input, key) });
      });
    case "invalid_key":
      return issue.issues.flatMap((one) => toProblems({ ...one, path: issue.path }, schema));
    case "custom": {
      const { problem: refusal } = issue.params as { readonly problem: Problem };
      return [{ ...refusal, path }];
    }
    case "invalid_value":
      return [choiceProblem(path, input, issue.values.map(String))];
    case "too_small":
      return [sizeProblem(issue, issue.inclusive === false ? "more than" : "at least", issue.minimum, path)];
    case "too_big":
      return [sizeProblem(issue, "at most", issue.maximum, path)];
    case "invalid_type":
    case "invalid_union":
    case "invalid_format":
    case "invalid_element":
    case "not_multiple_of": {
      if (typeof input === "number" && meaning.quantity) {
        const { dimensions, ...rest } = meaning.quantity;
        const reading = parseQuantity(input, dimensions);
        if (!reading.ok)
          return [problem("quantity.unreadable", path, { written: said(input), ...reading.fault, ...rest })];
      }
      const { description, examples: [example] = [] } = meaning;
      const amount = typeof input === "number" && /^\d.* \D+$/u.test(String(example));
      const expected = amount ? "amount" : issue.code === "invalid_type" ? issue.expected : "other";
      const kind = meaning.quantity ? "quantity" : expected;
      const facts = {
        kind,
        ...(description !== undefined && { description }),
        ...(example !== undefined && { example: typeof example === "object" ? flowText(example) : saidPlain(example) }),
      };
      return input === undefined
        ? [problem("spec.missing", path, facts)]
        : [problem("spec.type", path, { written: said(input), ...facts, ...entriesMeant(input, schema, path) })];
    }
  }
}

/** The entries of a list of amounts that somebody wrote in short: names with amounts, or one in a line of text. */
function entriesMeant(input: unknown, schema: z.core.$ZodType, path: Path): { readonly meant?: unknown } {
  const takesAmounts = (at: Path): boolean => ["name", "amount"].every((key) => keysAt(schema, at).includes(key));
  if (typeof input === "string" && takesAmounts(path)) {
    const { name, amount } =
      /^(?<name>.*[^\s:,])[\s:,]+(?<amount>\d[\d.,]* ?(?:%|[a-z]+))$/iu.exec(input.trim())?.groups ??
      /^(?<amount>\d[\d.,]* ?(?:%|[a-z]+)) (?<name>.+)$/iu.exec(input.trim())?.groups ??
      {};
    return name === undefined || amount === undefined ? {} : { meant: { name, amount: spaced(amount) } };
  }
  if (typeof input !== "object" || input === null || Array.isArray(input) || !takesAmounts([...path, 0])) return {};
  const entries = Object.entries(input);
  const isShort = entries.every(([name, amount]) => !["name", "amount"].includes(name) && typeof amount === "string");
  return isShort && entries.length > 0 ? { meant: entries.map(([name, amount]) => ({ name, amount })) } : {};
}

function spaced(amount: string): string {
  return amount.replace(/(?<=\d)(?=[%a-z])/iu, " ");
}

/** Of the problems of each choice, those of the choice whose kind of value was given. */
function ofTheKindMeant(errors: readonly z.core.$ZodIssue[][]): readonly z.core.$ZodIssue[] | undefined {
  return errors.find((issues) => issues.every(({ code, path }) => code === "unrecognized_keys" || path.length > 0));
}

/** What is none of the choices there are. */
export function choiceProblem(path: Path, written: unknown, choices: readonly string[]): Problem {
  const nearest = typeof written === "string" ? nearestNames(written, choices, 1) : [];
  return problem("spec.choice", path, { written: said(written), choices, nearest });
}

/** A key that a section does not have. */
export function unknownKey(
  key: string,
  path: Path,
  schema: z.core.$ZodType,
  { instead, value }: { readonly instead?: string | undefined; readonly value?: unknown } = {},
): Problem {
  const allowed = keysAt(schema, path);
  const recorded = allowed.includes("recorded") ? recordedMeant(key) : undefined;
  const nearest = keysLike(key, allowed);
  const known = instead !== undefined || recorded !== undefined || nearest.length > 0;
  const facts = {
    key,
    allowed,
    nearest,
    ...(recorded !== undefined && { recorded }),
    ...(instead !== undefined && { instead }),
    ...(known ? undefined : elsewhere(key, path, schema, value)),
    ...(!known && value === null && { bare: true as const }),
  };
  return problem("spec.unknown-key", [...path, key], facts);
}

/** Other words for keys, and where those stand. */
const otherWords: readonly (readonly [words: RegExp, path: Path])[] = [
  [/^(?:hydration|liquid|加水率?)$/iu, ["water", "added"]],
  [/^(?:yield|servings?|portions?|serves|makes)$/iu, ["batch", "bowls"]],
];

/** Where a key that its section does not have would be right: below a key of that, or, of a whole spec, by what it names. */
function elsewhere(key: string, path: Path, schema: z.core.$ZodType, value: unknown) {
  const below = keysAt(schema, path).find((one) => keysAt(schema, [...path, one]).includes(key));
  if (below !== undefined) return { elsewhere: [...path, below, key], value };
  if (path.length > 0 || schema !== specSchema) return undefined;
  const place = otherWords.find(([words]) => words.test(key))?.[1];
  if (place !== undefined) return { elsewhere: place, value };
  const list = isAlkaliLike(key) ? "alkali" : /\beggs?\b|yolk|gluten|starch/iu.test(key) ? "ingredients" : undefined;
  if (list === undefined) return undefined;
  const amount = typeof value === "number" ? `${value} %` : value;
  return { elsewhere: [list, 0], value, entry: { name: key, ...(typeof amount === "string" && { amount }) } };
}

/** Words for the ends of a range, of which a section knows some. */
const ends: readonly (readonly string[])[] = [
  ["smallest", "least", "lowest", "min", "minimum"],
  ["largest", "greatest", "most", "highest", "max", "maximum", "capacity"],
];

/** The key of a section that a key is another word for, or else the one most like it. */
function keysLike(key: string, allowed: readonly string[]): readonly string[] {
  const words = wordsOf(key.replaceAll(/(?=[A-Z])/gu, " "));
  const end = ends.find((one) => words.some((word) => one.includes(word))) ?? [];
  const [meant] = allowed.filter((one) => end.includes(one));
  return meant === undefined ? nearestNames(key, allowed, 1) : [meant];
}

function sizeProblem(
  { input, origin }: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  bound: "more than" | "at least" | "at most",
  limit: number | bigint,
  path: Path,
): Problem {
  const units: Readonly<Record<string, readonly [string, string]>> = {
    string: ["character", "characters"],
    array: ["entry", "entries"],
  };
  const unit = units[origin]?.[Number(limit) === 1 ? 0 : 1];
  const facts = { written: said(input), bound, limit: String(limit), ...(unit !== undefined && { unit }) };
  return problem("spec.size", path, facts);
}

/** What stands at a path: a section with keys of its own, one with any names as keys, a list, or a single value. */
export function kindAt(schema: z.core.$ZodType, path: Path): "section" | "names" | "list" | "value" {
  const here = schemaAt(schema, path);
  const own = here === undefined ? undefined : inner(here)._zod.def;
  const types = own === undefined ? [] : [own, ...(own.type === "union" ? optionsOf(own) : [])].map(({ type }) => type);
  if (types.includes("object")) return "section";
  return types.includes("record") ? "names" : types.includes("array") ? "list" : "value";
}

/** The keys of a section; none where there is none. */
export function keysAt(schema: z.core.$ZodType, path: Path): readonly string[] {
  const here = schemaAt(schema, path);
  const own = here === undefined ? undefined : inner(here)._zod.def;
  const def = own?.type === "union" ? optionsOf(own).find(({ type }) => type === "object") : own;
  return def?.type === "object" ? Object.keys((def as z.core.$ZodObjectDef).shape) : [];
}
