import * as z from "zod/mini";
import type { UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import { described } from "../materials/fields.ts";

/** An object, and a list, that are only read. */
const object = <Shape extends z.core.$ZodLooseShape>(shape: Shape) => z.readonly(z.object(shape));
const list = <Item extends z.ZodMiniType>(item: Item) => z.readonly(z.array(item));
const text = (description: string) => described(z.string(), { description });

const decimal = described(z.string().check(z.regex(/^-?\d+(\.\d+)?$/u)), {
  description: "Exact decimal number as text",
});

const sourceSchema = described(
  object({
    cite: text("Author, year, title, place"),
    at: described(z.optional(z.string()), { description: "Table, page, section or item number" }),
    standing: described(z.enum(["read", "copy", "memory", "practice", "definition", "user"]), {
      description:
        "How well the source is known: read, read in a copy, remembered, trade practice, true by definition, given by the user",
    }),
  }),
  { id: "Source", description: "Where a number or a formula comes from" },
);

const fedSchema = described(
  z.union([
    object({ figure: text("Id of a figure") }),
    object({ figures: described(list(z.string()), { description: "Ids of a list of figures" }) }),
    object({ constant: described(decimal, { description: "A plain number" }) }),
  ]),
  { id: "Fed", description: "What a name in a formula stands for" },
);

const workingSchema = described(
  z.discriminatedUnion("kind", [
    object({ kind: z.literal("given"), by: z.string() }),
    object({
      kind: z.literal("formula"),
      formula: text("The formula, in names of its own"),
      from: described(z.record(z.string(), fedSchema), { description: "What each name of the formula stands for" }),
    }),
    object({
      kind: z.literal("procedure"),
      by: z.string(),
      on: z.optional(described(list(z.string()), { description: "Ids of the figures it looked at" })),
      at: z.optional(described(list(decimal), { description: "Their values then, if changed since" })),
    }),
  ]),
  { id: "Working", description: "How a figure came about" },
);

const figureSchema = described(
  object({
    id: text("Stable name"),
    label: text("What it is, in words"),
    value: decimal,
    unit: text("Unit, or empty for a plain number"),
    places: described(z.int(), { description: "Decimal places that make sense" }),
    working: workingSchema,
    sources: list(sourceSchema),
    range: z.optional(object({ low: decimal, high: decimal, why: z.string() })),
    bounds: z.optional(
      described(object({ least: z.optional(decimal), most: z.optional(decimal) }), {
        description: "What its value can be at all, where its unit does not tell",
      }),
    ),
    stands: z.optional(
      described(object({ least: z.optional(z.string()), most: z.optional(z.string()) }), {
        description: "Ids of figures that it is no less or no more than while its way of working holds",
      }),
    ),
  }),
  { id: "Figure", description: "A number that can explain itself" },
);

const timeSchema = object({
  minute: described(z.int(), { description: "Minutes from midnight of the day of service; below 0 on the day before" }),
  iso: text("Time of day as ISO 8601 writes it, hh:mm"),
});

const cellSchema = described(
  object({
    text: text("As printed"),
    value: described(z.optional(decimal), { description: "Exact value, where the cell is a number" }),
    unit: described(z.optional(z.string()), { description: "Unit of the value" }),
    figure: described(z.optional(z.string()), { description: "Id of the figure behind it" }),
    time: described(z.optional(timeSchema), { description: "Where the cell is a time of day" }),
  }),
  { id: "Cell", description: "A cell of a table" },
);

const columnSchema = described(object({ id: z.string(), label: z.string(), align: z.enum(["left", "right"]) }), {
  id: "Column",
});

const tableSchema = described(
  object({
    kind: z.literal("table"),
    id: text("Name of the table, by which it is asked for alone"),
    columns: list(columnSchema),
    rows: list(object({ role: z.enum(["item", "total", "aside"]), cells: list(cellSchema) })),
  }),
  { id: "Table" },
);

const blockSchema = described(
  z.discriminatedUnion("kind", [
    tableSchema,
    object({ kind: z.literal("figures"), figures: list(figureSchema) }),
    object({ kind: z.literal("text"), lines: list(z.string()) }),
    object({ kind: z.literal("working"), figures: list(figureSchema) }),
    object({
      kind: z.literal("picture"),
      id: text("Name of the picture, by which it is asked for alone"),
      title: z.string(),
      description: text("What is to be seen, in words"),
      svg: z.string(),
    }),
  ]),
  { id: "Block", description: "A table, a list of figures, lines of text, the working of figures, or a picture" },
);

const sectionSchema = described(object({ id: z.string(), heading: z.string(), blocks: list(blockSchema) }), {
  id: "Section",
});

/** What the sentences of a problem or a note are made from; where it tells of another one, that is among them. */
export const factsSchema = described(z.readonly(z.record(z.string(), z.unknown())), {
  description: "What the sentences are made from",
});

const noteSchema = object({
  code: text("Stable code"),
  facts: factsSchema,
  text: text("The note in words"),
  loud: described(z.optional(z.literal(true)), { description: "To be said before anything else" }),
});

/** What a command answers, ready to be printed in any form. It is also the published form of the JSON output. */
export const reportSchema = described(
  object({
    noodlewright: z.literal("report"),
    version: z.literal(2),
    command: text("The command that was asked"),
    title: z.string(),
    main: text("Name of the table that stands for the answer where there is room for one only"),
    sections: list(sectionSchema),
    figures: described(z.record(z.string(), figureSchema), { description: "Every figure behind the answer, by id" }),
    notes: list(noteSchema),
    cautions: list(z.string()),
  }),
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

/** What belongs to every answer that is told: its notes, and the units to speak in. */
export interface Telling {
  readonly notes: readonly Note[];
  readonly units?: UnitSystem;
}
