import * as z from "zod/mini";
import { described } from "../materials/fields.ts";

const decimal = described(z.string().check(z.regex(/^-?\d+(\.\d+)?$/u)), {
  description: "Exact decimal number as text",
});

const sourceSchema = described(
  z.readonly(
    z.object({
      cite: described(z.string(), { description: "Author, year, title, place" }),
      at: described(z.optional(z.string()), { description: "Table, page, section or item number" }),
      standing: described(z.enum(["read", "copy", "memory", "practice", "definition", "user"]), {
        description:
          "How well the source is known: read, read in a copy, remembered, trade practice, true by definition, given by the user",
      }),
    }),
  ),
  { id: "Source", description: "Where a number or a formula comes from" },
);

const fedSchema = described(
  z.union([
    z.readonly(z.object({ figure: described(z.string(), { description: "Id of a figure" }) })),
    z.readonly(
      z.object({
        figures: described(z.readonly(z.array(z.string())), { description: "Ids of a list of figures" }),
      }),
    ),
    z.readonly(z.object({ constant: described(decimal, { description: "A plain number" }) })),
  ]),
  { id: "Fed", description: "What a name in a formula stands for" },
);

const workingSchema = described(
  z.discriminatedUnion("kind", [
    z.readonly(z.object({ kind: z.literal("given"), by: z.string() })),
    z.readonly(
      z.object({
        kind: z.literal("formula"),
        formula: described(z.string(), { description: "The formula, in names of its own" }),
        from: described(z.record(z.string(), fedSchema), { description: "What each name of the formula stands for" }),
      }),
    ),
    z.readonly(
      z.object({
        kind: z.literal("procedure"),
        by: z.string(),
        on: z.optional(described(z.readonly(z.array(z.string())), { description: "Ids of the figures it looked at" })),
        at: z.optional(described(z.readonly(z.array(decimal)), { description: "Their values then, if changed since" })),
      }),
    ),
  ]),
  { id: "Working", description: "How a figure came about" },
);

const figureSchema = described(
  z.readonly(
    z.object({
      id: described(z.string(), { description: "Stable name" }),
      label: described(z.string(), { description: "What it is, in words" }),
      value: decimal,
      unit: described(z.string(), { description: "Unit, or empty for a plain number" }),
      places: described(z.int(), { description: "Decimal places that make sense" }),
      working: workingSchema,
      sources: z.readonly(z.array(sourceSchema)),
      range: z.optional(z.readonly(z.object({ low: decimal, high: decimal, why: z.string() }))),
      bounds: z.optional(
        described(z.readonly(z.object({ least: z.optional(decimal), most: z.optional(decimal) })), {
          description: "What its value can be at all, where its unit does not tell",
        }),
      ),
      stands: z.optional(
        described(z.readonly(z.object({ least: z.optional(z.string()), most: z.optional(z.string()) })), {
          description: "Ids of figures that it is no less or no more than while its way of working holds",
        }),
      ),
    }),
  ),
  { id: "Figure", description: "A number that can explain itself" },
);

const cellSchema = described(
  z.readonly(
    z.object({
      text: described(z.string(), { description: "As printed" }),
      value: described(z.optional(decimal), { description: "Exact value, where the cell is a number" }),
      unit: described(z.optional(z.string()), { description: "Unit of the value" }),
      figure: described(z.optional(z.string()), { description: "Id of the figure behind it" }),
      time: described(
        z.optional(
          z.readonly(
            z.object({
              minute: described(z.int(), {
                description: "Minutes from midnight of the day of service; below 0 on the day before",
              }),
              iso: described(z.string(), { description: "Time of day as ISO 8601 writes it, hh:mm" }),
            }),
          ),
        ),
        { description: "Where the cell is a time of day" },
      ),
    }),
  ),
  { id: "Cell", description: "A cell of a table" },
);

const columnSchema = described(
  z.readonly(
    z.object({
      id: z.string(),
      label: z.string(),
      align: z.enum(["left", "right"]),
    }),
  ),
  { id: "Column" },
);

const tableSchema = described(
  z.readonly(
    z.object({
      kind: z.literal("table"),
      id: described(z.string(), { description: "Name of the table, by which it is asked for alone" }),
      columns: z.readonly(z.array(columnSchema)),
      rows: z.readonly(
        z.array(
          z.readonly(z.object({ role: z.enum(["item", "total", "aside"]), cells: z.readonly(z.array(cellSchema)) })),
        ),
      ),
    }),
  ),
  { id: "Table" },
);

const blockSchema = described(
  z.discriminatedUnion("kind", [
    tableSchema,
    z.readonly(z.object({ kind: z.literal("figures"), figures: z.readonly(z.array(figureSchema)) })),
    z.readonly(z.object({ kind: z.literal("text"), lines: z.readonly(z.array(z.string())) })),
    z.readonly(z.object({ kind: z.literal("working"), figures: z.readonly(z.array(figureSchema)) })),
    z.readonly(
      z.object({
        kind: z.literal("picture"),
        id: described(z.string(), { description: "Name of the picture, by which it is asked for alone" }),
        title: z.string(),
        description: described(z.string(), { description: "What is to be seen, in words" }),
        svg: z.string(),
      }),
    ),
  ]),
  {
    id: "Block",
    description: "A table, a list of figures, lines of text, the working of figures, or a picture",
  },
);

const sectionSchema = described(
  z.readonly(
    z.object({
      id: z.string(),
      heading: z.string(),
      blocks: z.readonly(z.array(blockSchema)),
    }),
  ),
  { id: "Section" },
);

/** What the sentences of a problem or a note are made from; where it tells of another one, that is among them. */
export const factsSchema = described(z.readonly(z.record(z.string(), z.unknown())), {
  description: "What the sentences are made from",
});

/** What a command answers, ready to be printed in any form. It is also the published form of the JSON output. */
export const reportSchema = described(
  z.readonly(
    z.object({
      noodlewright: z.literal("report"),
      version: z.literal(2),
      command: described(z.string(), { description: "The command that was asked" }),
      title: z.string(),
      main: described(z.string(), {
        description: "Name of the table that stands for the answer where there is room for one only",
      }),
      sections: z.readonly(z.array(sectionSchema)),
      figures: described(z.record(z.string(), figureSchema), { description: "Every figure behind the answer, by id" }),
      notes: z.readonly(
        z.array(
          z.readonly(
            z.object({
              code: described(z.string(), { description: "Stable code" }),
              facts: factsSchema,
              text: described(z.string(), { description: "The note in words" }),
              loud: described(z.optional(z.literal(true)), { description: "To be said before anything else" }),
            }),
          ),
        ),
      ),
      cautions: z.readonly(z.array(z.string())),
    }),
  ),
  { id: "Report", description: "The answer of a command" },
);

/** An answer as sections, notes and cautions, with every figure in it and what they rest on. */
export type Report = z.output<typeof reportSchema>;

/** A part of a section. */
export type Block = z.output<typeof blockSchema>;
/** A section of a report. */
export type Section = z.output<typeof sectionSchema>;

/** A table of a report. */
export type Table = z.output<typeof tableSchema>;
/** What stands in one place of a table. */
export type Cell = z.output<typeof cellSchema>;
export type Column = z.output<typeof columnSchema>;
