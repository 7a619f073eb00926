import * as z from "zod";
import type { Figure } from "../figure/figure.ts";

const decimal = z
  .string()
  .regex(/^-?\d+(\.\d+)?$/u)
  .meta({ description: "Exact decimal number as text" });

const sourceSchema = z
  .object({
    cite: z.string().meta({ description: "Author, year, title, place" }),
    at: z.string().optional().meta({ description: "Table, page, section or item number" }),
    standing: z.enum(["read", "copy", "memory", "practice", "definition", "user"]).meta({
      description:
        "How well the source is known: read, read in a copy, remembered, trade practice, true by definition, given by the user",
    }),
  })
  .readonly()
  .meta({ id: "Source", description: "Where a number or a formula comes from" });

const fedSchema = z
  .union([
    z.object({ figure: z.string().meta({ description: "Id of a figure" }) }).readonly(),
    z
      .object({
        figures: z.array(z.string()).readonly().meta({ description: "Ids of a list of figures" }),
      })
      .readonly(),
    z.object({ constant: decimal.meta({ description: "A plain number" }) }).readonly(),
  ])
  .meta({ id: "Fed", description: "What a name in a formula stands for" });

const workingSchema = z
  .discriminatedUnion("kind", [
    z.object({ kind: z.literal("given"), by: z.string() }).readonly(),
    z
      .object({
        kind: z.literal("formula"),
        formula: z.string().meta({ description: "The formula, in names of its own" }),
        from: z.record(z.string(), fedSchema).meta({ description: "What each name of the formula stands for" }),
      })
      .readonly(),
    z.object({ kind: z.literal("procedure"), by: z.string() }).readonly(),
  ])
  .meta({ id: "Working", description: "How a figure came about" });

const figureSchema = z
  .object({
    id: z.string().meta({ description: "Stable name" }),
    label: z.string().meta({ description: "What it is, in words" }),
    value: decimal,
    unit: z.string().meta({ description: "Unit, or empty for a plain number" }),
    places: z.int().meta({ description: "Decimal places that make sense" }),
    working: workingSchema,
    sources: z.array(sourceSchema).readonly(),
    range: z.object({ low: decimal, high: decimal, why: z.string() }).readonly().optional(),
  })
  .readonly()
  .meta({ id: "Figure", description: "A number that can explain itself" });

const cellSchema = z
  .object({
    text: z.string().meta({ description: "As printed" }),
    value: decimal.optional().meta({ description: "Exact value, where the cell is a number" }),
    unit: z.string().optional().meta({ description: "Unit of the value" }),
    figure: z.string().optional().meta({ description: "Id of the figure behind it" }),
    time: z
      .object({
        minute: z.int().meta({
          description: "Minutes from midnight of the day of service; below 0 on the day before",
        }),
        iso: z.string().meta({ description: "Time of day as ISO 8601 writes it, hh:mm" }),
      })
      .readonly()
      .optional()
      .meta({ description: "Where the cell is a time of day" }),
  })
  .readonly()
  .meta({ id: "Cell", description: "A cell of a table" });

const columnSchema = z
  .object({
    id: z.string(),
    label: z.string(),
    align: z.enum(["left", "right"]),
  })
  .readonly()
  .meta({ id: "Column" });

const tableSchema = z
  .object({
    kind: z.literal("table"),
    id: z.string().meta({ description: "Name of the table, for --table" }),
    columns: z.array(columnSchema).readonly(),
    rows: z
      .array(z.object({ role: z.enum(["item", "total", "aside"]), cells: z.array(cellSchema).readonly() }).readonly())
      .readonly(),
  })
  .readonly()
  .meta({ id: "Table" });

const blockSchema = z
  .discriminatedUnion("kind", [
    tableSchema,
    z.object({ kind: z.literal("figures"), figures: z.array(figureSchema).readonly() }).readonly(),
    z.object({ kind: z.literal("text"), lines: z.array(z.string()).readonly() }).readonly(),
    z.object({ kind: z.literal("working"), figures: z.array(figureSchema).readonly() }).readonly(),
    z
      .object({
        kind: z.literal("picture"),
        id: z.string().meta({ description: "Name of the picture, for --picture" }),
        title: z.string(),
        description: z.string().meta({ description: "What is to be seen, in words" }),
        svg: z.string(),
      })
      .readonly(),
  ])
  .meta({
    id: "Block",
    description: "A table, a list of figures, lines of text, the working of figures, or a picture",
  });

const sectionSchema = z
  .object({
    id: z.string(),
    heading: z.string(),
    blocks: z.array(blockSchema).readonly(),
  })
  .readonly()
  .meta({ id: "Section" });

/** What a command answers, ready to be printed in any form. It is also the published form of the JSON output. */
export const reportSchema = z
  .object({
    noodlewright: z.literal("report"),
    version: z.literal(2),
    command: z.string().meta({ description: "The command that was asked" }),
    title: z.string(),
    main: z.string().meta({ description: "Name of the table that --format csv prints" }),
    sections: z.array(sectionSchema).readonly(),
    figures: z.record(z.string(), figureSchema).meta({ description: "Every figure behind the answer, by id" }),
    notes: z
      .array(
        z
          .object({
            code: z.string(),
            text: z.string(),
            loud: z.literal(true).optional().meta({ description: "To be said before anything else" }),
          })
          .readonly(),
      )
      .readonly(),
    cautions: z.array(z.string()).readonly(),
  })
  .readonly()
  .meta({ id: "Report", description: "The answer of a command" });

/** An answer as sections, notes and cautions, with every figure in it and what they rest on. */
export type Report = z.output<typeof reportSchema>;

/** A block as data that was read. */
export type PlainBlock = z.output<typeof blockSchema>;
/** A block that shows figures. */
export type FigureBlock = Extract<PlainBlock, { readonly kind: "figures" | "working" }>;

/** A part of a section; while a report is made, its figures still hold what went into them. */
export type Block =
  | Exclude<PlainBlock, FigureBlock>
  | { readonly kind: "figures"; readonly figures: readonly Figure[] }
  | { readonly kind: "working"; readonly figures: readonly Figure[] };

/** A section of a report; while the report is made, its figures still hold what went into them. */
export interface Section extends Omit<z.output<typeof sectionSchema>, "blocks"> {
  readonly blocks: readonly Block[];
}

/** A table of a report. */
export type Table = z.output<typeof tableSchema>;
/** What stands in one place of a table. */
export type Cell = z.output<typeof cellSchema>;
export type Column = z.output<typeof columnSchema>;
