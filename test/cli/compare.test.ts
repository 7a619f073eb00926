import { expect, test } from "vitest";
import { reportSchema } from "#core/report/schema.ts";
import { textsOf } from "../core/report/parts.ts";
import { runHere } from "./in-process.ts";

const spec = "examples/school-noodle.yaml";

async function rowsOf(table: string, ...args: readonly string[]): Promise<readonly string[]> {
  const { status, stdout, stderr } = await runHere(["compare", ...args, "--format", "json"]);
  expect([status, stderr]).toEqual([0, ""]);
  return textsOf(reportSchema.parse(JSON.parse(stdout)), table).map((cells) => cells.join(" | "));
}

test("one spec is compared as written and as set", async () => {
  const rows = await rowsOf("sums", spec, "--set", "water.added=38 %");
  expect(rows).toContain("added water | % of flour | 35.00 | 38.00 | +3.00");
  expect(rows).toContain("salt in all | % of flour | 1.00 | 1.00 | same");
});

test("what is set holds for every one of several specs, and for the same mass of dough", async () => {
  const other = "examples/evening-class.yaml";
  const rows = await rowsOf("sums", spec, other, "--set", "water.added=37 %", "--dough", "8 kg");
  expect(rows).toContain("added water | % of flour | 37.00 | 37.00 | same");
});
