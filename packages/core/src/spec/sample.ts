import * as z from "zod/mini";
import type { Facts, Path, Problem } from "../figure/problem.ts";
import { plainName } from "../materials/nearest.ts";
import { kitchenFileSchema } from "../materials/schema.ts";
import { specSchema } from "./spec.ts";
import { describeAt, inner, schemaAt } from "./walk.ts";
import { yamlLines } from "./yaml-text.ts";

/** Most lines of a sample. */
const mostLines = 5;

/** Codes of what is wrong with the shape of a spec or of a kitchen file, or is not there at all. */
const ofShape =
  /^(?:spec|quantity|basis|price|bounds|cutter|shelf)\.|^machine\.(?:gaps|speeds|settings|no-settings)|^materials\.modulus$|^wanted\.prefer$|(?:\.not-stated|\.none|\.nothing|\.no-prices|serve-missing|weight-missing|temperature\.missing)$/u;

/**
 * A few lines of YAML that would be right where a problem of the shape of a spec or of a kitchen file lies; for a key that
 * there is not, those of the nearest. None for other problems.
 *
 * @example linesInPlace({ code: "plan.serve-missing", path: ["plan", "serve"], facts: {} })[0] // => "plan:"
 */
export function linesInPlace(problem: Problem): readonly string[] {
  const { code, path, facts } = problem;
  const meant = valueMeant(problem);
  if (meant === undefined && !ofShape.test(code) && code !== "machine.unknown") return [];
  if (problem.code === "machine.unknown" && meant === undefined) return specSample(["machines", problem.facts.name]);
  if (meant !== undefined && !ofShape.test(code)) return valueIn(path, meant);
  if (problem.code === "spec.type" && path.length === 0 && problem.facts.description === kitchenFile)
    return specSample(["materials"]);
  if (problem.code !== "spec.unknown-key") {
    const written = "written" in facts ? facts.written.replace(/^"(.*)"$/u, "$1") : undefined;
    return sampleAt(path, (schema, example) => meant ?? asMeant(written, schema, example));
  }
  const { nearest, instead, allowed, elsewhere, value, entry } = problem.facts;
  if (elsewhere !== undefined)
    return sampleAt(
      elsewhere,
      (schema, example) =>
        [entry, value].find((one) => one !== undefined && accepts(schema, one)) ?? asMeant(value, schema, example),
    );
  if (allowed.length === 0) return specSample(path.slice(0, -1));
  const any = allowed.includes("notes") ? "notes" : allowed[0];
  const key = instead?.split(":")[0] ?? nearest[0] ?? (path.length === 1 ? any : path.at(-1));
  return specSample([...path.slice(0, -1), key ?? ""]);
}

/**
 * The value that would be right in place of the one that a problem refuses, where it tells one; the nearest limit where it
 * tells that.
 *
 * @example valueMeant({ code: "spec.size", facts: { written: "0", bound: "at least", limit: "1" } }) // => 1
 */
export function valueMeant({ code, facts }: { readonly code: string; readonly facts: object }): unknown {
  if ("meant" in facts) return facts.meant;
  const { bound, limit, unit }: Partial<Facts["spec.size"]> = code === "spec.size" ? facts : {};
  return bound === "more than" || unit !== undefined || limit === undefined ? undefined : Number(limit);
}

/** What was written as it would be right at a place: with a point before decimals, with the unit of the example, or both. */
function asMeant(said: unknown, schema: z.core.$ZodType, example: unknown): unknown {
  const point = String(said).replaceAll(/(?<=\d),(?=\d{1,2}(?![\d,]))|(?<=\b0),(?=\d)/gu, ".");
  const unit = /^[\d.]*\d(?<unit>\s?\D+)$/u.exec(String(example))?.groups?.["unit"] ?? "";
  const units = Number(point) > 100 && unit === " %" ? [" g", unit] : [unit];
  const ways = [point, Number(point), ...(/\d$/u.test(point) ? units.map((one) => point + one) : [])];
  return ways.find((one) => one !== said && accepts(schema, one));
}

/** What the root of a kitchen file says that it is. */
const kitchenFile = describeAt(kitchenFileSchema, []).description;

/** Indents from which on sections stand in one line, where a sample is longer otherwise. */
const indents = [Number.POSITIVE_INFINITY, 6, 4, 2, 0];

/**
 * A few lines of YAML that would be right at a place of a spec, made from the examples of the schema: with its section,
 * so that they can be written as they stand; those of the smallest spec for its root, none where there is no such key.
 *
 * @example specSample(["flours", 0, "amount"]) // => ["flours:", "  - name: bread flour", "    amount: 70 %"]
 */
export function specSample(path: Path): readonly string[] {
  return sampleAt(path, () => undefined);
}

/** A value for the end of a path, by its schema and the example there; nothing where the example will do. */
type Meant = (schema: z.core.$ZodType, example: unknown) => unknown;

function sampleAt([key, ...path]: Path, meant: Meant): readonly string[] {
  if (key === undefined)
    return Object.entries(requiredOf(specSchema)).flatMap(([one, value]) => yamlLines(one, value, 0, 2));
  const schema = schemaAt(specSchema, [key]);
  const value = schema === undefined ? undefined : along(schema, path, meant);
  if (value === undefined) return [];
  return fewLines(String(key), value);
}

function fewLines(key: string, value: unknown): readonly string[] {
  const ways = indents.map((deepest) => yamlLines(key, value, 0, deepest));
  return ways.find((lines) => lines.length <= mostLines) ?? [];
}

/** A value in its section, where the rest of the section stands already. */
function valueIn([key, ...path]: Path, value: unknown): readonly string[] {
  return fewLines(
    String(key),
    path.reduceRight<unknown>((below, step) => ({ [step]: below }), value),
  );
}

/** Most places that are shown. */
const mostPlaces = 3;

/** A place of a spec, and what would be right there in one line; nothing where the key is to be left out. */
export interface KeySample {
  readonly path: Path;
  readonly value: string;
}

/**
 * Places of a spec with values that would be right there, for a place that is not right: the keys below it, or those of its
 * name elsewhere. A value that somebody wrote stands where it would be right.
 *
 * @param said - the value that was written
 * @example keySamples(["water"], "38 %")[0] // => { path: ["water", "added"], value: "38 %" }
 */
export function keySamples(path: Path, said?: unknown): readonly KeySample[] {
  const here = schemaAt(specSchema, path);
  const key = plainName(String(path.at(-1) ?? ""));
  const named = placesBelow(specSchema, []).filter((one) => plainName(String(one.path.at(-1))) === key);
  const nearest = Math.min(...named.map((one) => one.path.length));
  const places = here === undefined ? named.filter((one) => one.path.length === nearest) : placesBelow(here, path);
  const meant = places.flatMap((place) => {
    const value =
      [said, numberIn(said, place.path)].find((one) => one !== undefined && accepts(place.schema, one)) ??
      asMeant(said, place.schema, place.value);
    return value === undefined ? [] : [{ ...place, value }];
  });
  const samples = (meant.length > 0 ? meant : places).map((one) => ({ path: one.path, value: inline(one.value) }));
  const without = here?._zod.optin === "optional" && /^(?:no|none|off|without|nothing|0)$/iu.test(String(said));
  const all = [...(without ? [{ path, value: "" }] : []), ...samples];
  return [...new Map(all.map((one) => [JSON.stringify(one), one])).values()].slice(0, mostPlaces);
}

interface SamplePlace {
  readonly path: Path;
  readonly schema: z.core.$ZodType;
  readonly value: unknown;
}

/** Places with single values at and below a schema; lists and sections of names stand with a sample of the whole. */
function placesBelow(schema: z.core.$ZodType, path: Path): readonly SamplePlace[] {
  const { def } = inner(schema)._zod;
  if (def.type === "object" && path.length < 3)
    return fieldsOf(schema).flatMap(([key, field]) => placesBelow(field, [...path, key]));
  const value = sampleOf(schema);
  if (def.type !== "record") return value === undefined ? [] : [{ path, schema, value }];
  const entries = typeof value === "object" && value !== null ? Object.entries(value) : [];
  return entries.map(([name, one]) => ({
    path: [...path, name],
    schema: (def as z.core.$ZodRecordDef).valueType,
    value: one,
  }));
}

function accepts(schema: z.core.$ZodType, value: unknown): boolean {
  return inner(schema)._zod.def.type !== "string" && z.safeParse(schema, value).success;
}

/** The number of what was written with the name of its key, as in 40 bowls. */
function numberIn(said: unknown, path: Path): number | undefined {
  const { number, name } = /^(?<number>[\d.]+) (?<name>\w+)$/u.exec(String(said))?.groups ?? {};
  return name === path.at(-1) ? Number(number) : undefined;
}

/** Plain data on one line. */
function inline(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inline).join(", ")}]`;
  if (typeof value !== "object" || value === null) return String(value);
  const entries = Object.entries(value).map(([key, one]) => `${key}: ${inline(one)}`);
  return `{ ${entries.join(", ")} }`;
}

/** The sample of a schema that has a right value at the end of a path. */
function along(schema: z.core.$ZodType, [step, ...rest]: Path, meant: Meant): unknown {
  if (step === undefined) return meant(schema, sampleOf(schema)) ?? sampleOf(schema);
  const below = schemaAt(schema, [step]);
  const value = below === undefined ? undefined : along(below, rest, meant);
  if (value === undefined) return sampleOf(schema);
  if (typeof step === "number") return [value];
  const example = describeAt(schema, []).examples?.[0];
  const whole = typeof example === "object" && example !== null ? example : {};
  const needed = { ...requiredOf(schema), [step]: value };
  const more = { ...whole, [step]: value };
  return !Object.hasOwn(whole, step) && z.safeParse(schema, needed).success ? needed : more;
}

function sampleOf(schema: z.core.$ZodType): unknown {
  const example = describeAt(schema, []).examples?.[0];
  if (example !== undefined) return example;
  const { def } = inner(schema)._zod;
  if (def.type === "object") {
    const required = requiredOf(schema);
    return Object.keys(required).length > 0 ? required : firstOf(schema);
  }
  if (def.type === "array") {
    const element = sampleOf((def as z.core.$ZodArrayDef).element);
    return element === undefined ? undefined : [element];
  }
  if (def.type === "union") {
    return (def as z.core.$ZodUnionDef).options.map(sampleOf).find((value) => value !== undefined);
  }
  if (def.type === "enum") return Object.values((def as z.core.$ZodEnumDef).entries)[0];
  return def.type === "boolean" ? true : undefined;
}

function fieldsOf(schema: z.core.$ZodType): readonly (readonly [key: string, field: z.core.$ZodType])[] {
  const { def } = inner(schema)._zod;
  return def.type === "object" ? Object.entries((def as z.core.$ZodObjectDef).shape) : [];
}

/** The keys that have to be there. */
function requiredOf(schema: z.core.$ZodType): Readonly<Record<string, unknown>> {
  const needed = fieldsOf(schema).filter(([, field]) => field._zod.optin !== "optional");
  return Object.fromEntries(
    needed.map(([key, field]) => [key, sampleOf(field)] as const).filter(([, one]) => one !== undefined),
  );
}

function firstOf(schema: z.core.$ZodType): unknown {
  const [first] = fieldsOf(schema).flatMap(([key, field]) => {
    const value = sampleOf(field);
    return value === undefined ? [] : [{ [key]: value }];
  });
  return first;
}
