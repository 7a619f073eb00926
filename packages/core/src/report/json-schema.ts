import * as z from "zod/mini";
import { frozen } from "../figure/frozen.ts";
import { described, type Meaning, meanings } from "../materials/fields.ts";
import { kitchenFileSchema } from "../materials/schema.ts";
import { specSchema } from "../spec/spec.ts";
import { factsSchema, reportSchema } from "./schema.ts";

/** Problems as the command prints them, each with its sentences; the library's own are `{ code, path, facts }`. */
const problemsSchema = described(
  z.object({
    noodlewright: z.literal("problems"),
    version: z.literal(1),
    problems: z.array(
      z.object({
        code: described(z.string(), { description: "Stable code" }),
        kind: z.enum(["input", "no-answer"]),
        path: described(z.string(), { description: "Path in the spec" }),
        found: z.string(),
        expected: z.string(),
        advice: z.string(),
        lines: z.optional(described(z.array(z.string()), { description: "Lines that would be right" })),
        facts: factsSchema,
        flag: z.optional(z.string()),
        file: z.optional(z.string()),
        line: z.optional(z.int()),
        column: z.optional(z.int()),
      }),
    ),
  }),
  { id: "Problems", description: "What keeps an answer from being given" },
);

const schemas = {
  spec: specSchema,
  kitchen: kitchenFileSchema,
  report: reportSchema,
  problems: problemsSchema,
} as const;

/** Names of the schemas that can be asked for. */
export const schemaNames: readonly (keyof typeof schemas)[] = frozen(
  Object.keys(schemas) as readonly (keyof typeof schemas)[],
);

/** Keys that say the same, each without the others. */
function inOneWay({ keys, orNone }: NonNullable<Meaning["ways"]>[number]) {
  const anyOf = keys.map((key) => {
    const others = keys.filter((other) => other !== key).map((other) => [other, false] as const);
    return { type: "object" as const, ...(!orNone && { required: [key] }), properties: Object.fromEntries(others) };
  });
  return { anyOf };
}

/**
 * JSON Schema (draft 7) of the spec, of a kitchen file, of a report, or of problems in the form that the command prints, told
 * in sentences; made from the schemas that validate.
 *
 * @example jsonSchema("spec").$ref // => "#/definitions/Spec"
 */
export function jsonSchema(name: keyof typeof schemas): object {
  const isInput = name === "spec" || name === "kitchen";
  return z.toJSONSchema(schemas[name], {
    io: isInput ? "input" : "output",
    target: "draft-7",
    metadata: meanings,
    override: ({ zodSchema, jsonSchema: node }) => {
      const meta = meanings.get(zodSchema);
      if (meta?.ways !== undefined) {
        delete node["ways"];
        node.allOf = meta.ways.map(inOneWay);
      }
      if (meta?.quantity === undefined) return;
      delete node["quantity"];
      node.type = "string";
      if (meta.examples) node.examples = [...meta.examples];
    },
  });
}
