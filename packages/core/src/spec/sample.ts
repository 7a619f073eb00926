import type * as z from "zod/mini";
import type { Path } from "../figure/problem.ts";
import { specSchema } from "./spec.ts";
import { describeAt, inner, schemaAt } from "./walk.ts";
import { yamlLines } from "./yaml-text.ts";

/** Most lines of a sample. */
const mostLines = 4;

/**
 * A few lines of YAML that would be right at a place of a spec, made from the examples of the schema; none where it has none.
 *
 * @example specSample(["flours", 0, "amount"]) // => ["flours:", "  - name: bread flour", "    amount: 70 %"]
 */
export function specSample(path: Path): readonly string[] {
  for (const [start, key] of path.entries()) {
    const schema = schemaAt(specSchema, path.slice(0, start + 1));
    if (typeof key === "number" || schema === undefined) continue;
    const value = along(schema, path.slice(start + 1));
    const lines = value === undefined ? [] : yamlLines(key, value, 0);
    if (lines.length > 0 && lines.length <= mostLines) return lines;
  }
  return [];
}

/** The sample of a schema that has a right value at the end of a path. */
function along(schema: z.core.$ZodType, [step, ...rest]: Path): unknown {
  if (step === undefined) return sampleOf(schema);
  const below = schemaAt(schema, [step]);
  if (below === undefined) return sampleOf(schema);
  const value = along(below, rest);
  if (value === undefined) return undefined;
  if (typeof step === "number") return [value];
  return { ...requiredOf(schema), [step]: value };
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
