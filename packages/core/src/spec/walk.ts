import type * as z from "zod/mini";
import type { Path } from "../figure/problem.ts";
import { type Meaning, meanings } from "../materials/fields.ts";

/** Walks a schema down a path; optional fields are looked through. */
export function schemaAt(schema: z.core.$ZodType, path: Path): z.core.$ZodType | undefined {
  let here: z.core.$ZodType | undefined = schema;
  for (const step of path) {
    const def: z.core.$ZodTypeDef | undefined = here === undefined ? undefined : inner(here)._zod.def;
    here = def === undefined ? undefined : below(def, step);
  }
  return here;
}

function below(def: z.core.$ZodTypeDef, step: string | number): z.core.$ZodType | undefined {
  if (def.type === "object") {
    const { shape } = def as z.core.$ZodObjectDef;
    return Object.hasOwn(shape, step) ? shape[String(step)] : undefined;
  }
  if (def.type === "array") return (def as z.core.$ZodArrayDef).element;
  if (def.type === "record") return (def as z.core.$ZodRecordDef).valueType;
  if (def.type === "union") return optionsOf(def).flatMap((option) => below(option, step) ?? [])[0];
  return undefined;
}

/** The choices of a union. */
export function optionsOf(def: z.core.$ZodTypeDef): readonly z.core.$ZodTypeDef[] {
  return (def as z.core.$ZodUnionDef).options.map((option) => inner(option)._zod.def);
}

/** What lies behind optional and late schemas. */
export function inner(schema: z.core.$ZodType): z.core.$ZodType {
  const next = behind(schema);
  return next === undefined ? schema : inner(next);
}

function behind(schema: z.core.$ZodType): z.core.$ZodType | undefined {
  const { def } = schema._zod;
  if (def.type === "optional") return (def as z.core.$ZodOptionalDef).innerType;
  return def.type === "lazy" ? (schema as z.core.$ZodLazy)._zod.innerType : undefined;
}

/** What stands in the schema of a place. */
export function describeAt(schema: z.core.$ZodType, path: Path): Meaning {
  const here = schemaAt(schema, path);
  return here === undefined ? {} : meaningOf(here);
}

function meaningOf(schema: z.core.$ZodType): Meaning {
  const own = meanings.get(schema);
  if (own?.description !== undefined) return own;
  const next = behind(schema);
  return (next === undefined ? own : meaningOf(next)) ?? {};
}
