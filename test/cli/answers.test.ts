import { readFileSync } from "node:fs";
import { jsonSchema, schemaNames } from "@noodlewright/core/spec";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import * as z from "zod";
import { reportSchema } from "#core/report/schema.ts";
import { answered, reported, runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";
import { readCsv } from "./read-csv.ts";
import { readProblems } from "./read-problems.ts";

const examples = ["school-noodle", "barley-egg-noodle", "written-in-grams"].map((name) => `examples/${name}.yaml`);
const asked = examples.flatMap((spec) => ["formula", "batch"].map((command) => ({ command, spec })));

/** The published schema of a form, as a validator made from the JSON Schema alone. */
function published(name: string): z.ZodType {
  return z.fromJSONSchema(JSON.parse(answered(["schema", name])));
}

async function answeredHere(args: readonly string[]): Promise<string> {
  const { status, stdout, stderr } = await runHere(args);
  expect([status, stderr]).toEqual([0, ""]);
  return stdout;
}

describe("JSON", () => {
  const form = published("report");

  test.each(asked)("$command $spec is of the published form", ({ command, spec }) => {
    const data: unknown = JSON.parse(answered([command, spec, "--format", "json"]));
    expect(form.safeParse(data).error).toBeUndefined();
    expect(reportSchema.parse(data)).toEqual(data);
    expect(data).toMatchObject({ noodlewright: "report", version: 2, command });
  });

  test("the form refuses what is no report", () => {
    expect(form.safeParse({ noodlewright: "report" }).success).toBe(false);
    expect(form.safeParse([]).success).toBe(false);
  });

  test("problems come on standard output, in their published form", () => {
    const { status, stdout, stderr } = runBuilt(["formula", "examples/wrong-on-purpose.yaml", "--format", "json"]);
    expect([status, stderr]).toEqual([2, ""]);
    const data: unknown = JSON.parse(stdout);
    expect(published("problems").safeParse(data).error).toBeUndefined();
    expect(data).toMatchObject({
      problems: [
        { code: "flours.shares-total", line: 3, column: 1 },
        { code: "materials.unknown", line: 4, column: 11 },
        { code: "spec.unknown-key", line: 8, column: 1 },
        { code: "quantity.unreadable", line: 12, column: 7 },
      ],
    });
  });
});

describe("the schema of the spec", () => {
  const form = published("spec");

  test.each(examples)("takes %s", (spec) => {
    expect(form.safeParse(parse(readFileSync(spec, "utf8"))).error).toBeUndefined();
  });

  test("takes the store of the kitchen", () => {
    const store: unknown = parse(readFileSync("examples/harbour-store.yaml", "utf8"));
    expect(published("kitchen").safeParse(store).error).toBeUndefined();
  });

  test("takes water stated in one way, and a batch of one size", () => {
    const plain = { name: "plain", flours: [{ name: "bread flour", amount: "100 %" }] };
    const takes = (sections: object) => form.safeParse({ ...plain, ...sections }).success;
    const [water, half] = [{ added: "36 %" }, { bowls: 40, rawWeight: "130 g" }];
    expect([{ water }, { water, batch: half }, { water, batch: {} }].map(takes)).toEqual([true, true, true]);
    const twice = [{ water: { ...water, tap: "30 %" } }, { water, batch: { ...half, dough: "5 kg" } }];
    expect(twice.map(takes)).toEqual([false, false]);
  });

  test("refuses an unknown key", () => {
    expect(form.safeParse({ ...parse(readFileSync("examples/school-noodle.yaml", "utf8")), watr: 1 }).success).toBe(
      false,
    );
  });

  test.each(schemaNames)("%s is printed as core makes it, and every field of it is described", (name) => {
    const printed: unknown = JSON.parse(answered(["schema", name]));
    expect(printed).toEqual(JSON.parse(JSON.stringify(jsonSchema(name))));
    expect(printed).toMatchObject({ $schema: "http://json-schema.org/draft-07/schema#" });
  });

  test("an unknown name is told apart, with those there are", () => {
    const { status, stdout, stderr } = runBuilt(["schema", "noodle"]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(schemaNames.join(", "));
  });
});

describe("CSV", () => {
  test.each(asked)("$command $spec parses, every record as long as the heading", ({ command, spec }) => {
    const [heading, ...records] = readCsv(answered([command, spec, "--format", "csv"]));
    expect(records.length).toBeGreaterThan(3);
    for (const record of records) expect(record).toHaveLength(heading?.length ?? 0);
  });

  /** Column of grams whose ingredients add up to the line of the dough, to the last division. */
  test.each([
    { spec: "examples/school-noodle.yaml", column: "one load, g" },
    { spec: "examples/school-noodle.yaml", column: "all 3 loads, g" },
    { spec: "examples/barley-egg-noodle.yaml", column: "weigh, g" },
    { spec: "examples/written-in-grams.yaml", column: "weigh, g" },
  ])("the weights of $spec add up: $column", ({ spec, column }) => {
    const [heading = [], ...records] = readCsv(answered(["batch", spec, "--format", "csv"]));
    const at = heading.indexOf(column);
    expect(at).toBeGreaterThan(0);
    const dough = records.findIndex(([name]) => name === "dough");
    const tenths = (record: readonly string[] | undefined): number => Math.round(Number(record?.[at]) * 10);
    const parts = records.slice(0, dough).map(tenths);
    expect(parts.length).toBeGreaterThan(3);
    expect(parts.reduce((total, part) => total + part, 0)).toBe(tenths(records[dough]));
  });

  test("another table is had by its name, and a wrong name is told", () => {
    const [heading] = readCsv(
      answered(["formula", "examples/school-noodle.yaml", "--format", "csv", "--table", "flours"]),
    );
    expect(heading?.[0]).toBe("flour");
    const wrong = runBuilt(["formula", "examples/school-noodle.yaml", "--format", "csv", "--table", "flour"]);
    expect([wrong.status, wrong.stdout]).toEqual([2, ""]);
    expect(readProblems(wrong.stderr)).toMatchObject([
      { code: "table.unknown", expected: expect.stringContaining("flours") },
    ]);
  });

  test("an answer without a table gives its figures", () => {
    const rows = readCsv(answered(["water-temperature", "examples/evening-class.yaml", "--format", "csv"]));
    expect(rows[0]).toEqual(["figure", "value", "unit"]);
    expect(rows).toContainEqual(["dough temperature wanted", "24.0", "°C"]);
  });
});

describe("tables and Markdown", () => {
  test.each(asked)(
    "$command $spec: every row of a Markdown table has as many cells as its heading",
    async ({ command, spec }) => {
      const lines = (await answeredHere([command, spec, "--format", "markdown"])).split("\n");
      const tables = lines
        .join("\n")
        .split("\n\n")
        .filter((block) => block.startsWith("| "));
      expect(tables.length).toBeGreaterThan(1);
      for (const table of tables) {
        const cells = table
          .trim()
          .split("\n")
          .map((row) => row.split(/(?<!\\)\|/u).length);
        expect(new Set(cells).size).toBe(1);
      }
    },
  );
});

describe("what a report can be asked for", () => {
  test("--working shows for every figure its formula, numbers and source", () => {
    const text = answered(["formula", "examples/school-noodle.yaml", "--working"]);
    expect(text).toContain("= 100 × (water in the flour + added water) ÷ dough on 100 of flour");
    expect(text).toContain("source: certificate of lot 2214");
    const { figures } = reported(["formula", "examples/school-noodle.yaml"]);
    for (const { label } of Object.values(figures)) expect(text.replaceAll(/\s+/gu, " ")).toContain(label);
  });

  test("--working tells the range of a figure that is not exact", () => {
    const text = answered(["alkali", "strength", "K2CO3 6, Na2CO3 4 at 30 °Bé", "--figure", "solution.density"]);
    expect(text).toMatch(/= 1\.2\d+ g\/mL\b[^=]*\n +from 1\.2\d+ to 1\.2\d+ g\/mL: ± [\d.]+ %\s+for the density fit/u);
  });

  test("--figure shows one figure and what it rests on", () => {
    const report = reported(["formula", "examples/school-noodle.yaml", "--figure", "dough.water"]);
    expect(Object.keys(report.figures)).toContain("dough.water");
    expect(Object.keys(report.figures)).not.toContain("blend.ash.dry");
  });

  test("--units us speaks in ounces and pounds (1 lb = 453.59237 g: international yard and pound agreement, 1959)", () => {
    const { figures } = reported(["batch", "examples/school-noodle.yaml"]);
    const metric = Object.values(figures).find(({ label }) => label === "dough to mix")?.value;
    const text = answered(["batch", "examples/school-noodle.yaml", "--units", "us"]);
    const pounds = /dough to mix +(?<value>[\d.]+) lb/u.exec(text)?.groups?.["value"];
    expect(Number(pounds)).toBeCloseTo(Number(metric) / 453.59237, 3);
  });
});

describe("materials", () => {
  test("finds by words and by kind", () => {
    const text = answered(["materials", "rye", "--kind", "flour"]);
    expect(text).toContain("dark rye flour");
    expect(text).not.toContain("barley");
    expect(answered(["materials", "sodium", "--kind", "alkali"])).not.toContain("flour");
  });
});

describe("new", () => {
  const folder = folderFor();

  test("writes a spec that runs, and never over another file", () => {
    const first = runBuilt(["new"], { cwd: folder });
    expect([first.status, first.stdout]).toEqual([0, ""]);
    expect(first.stderr).toContain("noodlewright formula noodle.yaml");
    const written = readFileSync(`${folder}/noodle.yaml`, "utf8");
    expect(runBuilt(["batch", "noodle.yaml"], { cwd: folder })).toMatchObject({ status: 0, stderr: "" });
    const second = runBuilt(["new"], { cwd: folder });
    expect([second.status, second.stdout]).toEqual([2, ""]);
    expect(readFileSync(`${folder}/noodle.yaml`, "utf8")).toBe(written);
  });

  test("prints it for a dash, and it goes from pipe to pipe", () => {
    const spec = answered(["new", "-"]);
    expect(runBuilt(["formula", "-"], { input: spec })).toMatchObject({ status: 0, stderr: "" });
  });
});
