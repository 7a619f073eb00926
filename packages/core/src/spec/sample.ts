import * as z from "zod/mini";
import type { Path, Problem } from "../figure/problem.ts";
import { specSchema } from "./spec.ts";
import { describeAt, inner, schemaAt } from "./walk.ts";
import { yamlLines } from "./yaml-text.ts";

/** Most lines of a sample. */
const mostLines = 5;

/** Codes of what is wrong with the shape of a spec or of a kitchen file, or is not there at all. */
const ofShape =
  /^(?:spec|quantity|basis|price|bounds|cutter|shelf)\.|^machine\.(?:gaps|speeds|settings|unknown|no-settings)|^materials\.modulus$|^wanted\.prefer$|(?:\.not-stated|\.none|\.nothing|\.no-prices|serve-missing|weight-missing|temperature\.missing)$/u;

/**
 * A few lines of YAML that would be right where a problem of the shape of a spec or of a kitchen file lies; for a key that
 * there is not, those of the nearest. None for other problems.
 *
 * @example linesInPlace({ code: "plan.serve-missing", path: ["plan", "serve"], facts: {} })[0] // => "plan:"
 */
export function linesInPlace(problem: Problem): readonly string[] {
  const { code, path } = problem;
  if (!ofShape.test(code)) return [];
  if (problem.code === "machine.unknown" || problem.code === "cost.no-prices")
    return specSample(problem.code === "cost.no-prices" ? ["prices"] : ["machines", problem.facts.name]);
  if (problem.code !== "spec.unknown-key") return specSample(path);
  const { nearest, instead } = problem.facts;
  const key = instead?.split(":")[0] ?? nearest[0] ?? (path.length === 1 ? "notes" : path.at(-1));
  return specSample([...path.slice(0, -1), key ?? ""]);
}

/** Indents from which on sections stand in one line, where a sample is longer otherwise. */
const indents = [Number.POSITIVE_INFINITY, 6, 4, 2, 0];

/**
 * A few lines of YAML that would be right at a place of a spec, made from the examples of the schema: with its section,
 * so that they can be written as they stand; those of the smallest spec for its root, none where there is no such key.
 *
 * @example specSample(["flours", 0, "amount"]) // => ["flours:", "  - name: bread flour", "    amount: 70 %"]
 */
export function specSample([key, ...path]: Path): readonly string[] {
  if (key === undefined)
    return Object.entries(requiredOf(specSchema)).flatMap(([one, value]) => yamlLines(one, value, 0, 2));
  const schema = schemaAt(specSchema, [key]);
  const value = schema === undefined ? undefined : along(schema, path);
  if (value === undefined) return [];
  const ways = indents.map((deepest) => yamlLines(String(key), value, 0, deepest));
  return ways.find((lines) => lines.length <= mostLines) ?? [];
}

/** The sample of a schema that has a right value at the end of a path. */
function along(schema: z.core.$ZodType, [step, ...rest]: Path): unknown {
  if (step === undefined) return sampleOf(schema);
  const below = schemaAt(schema, [step]);
  const value = below === undefined ? undefined : along(below, rest);
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
