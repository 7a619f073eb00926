import { expect, test } from "vitest";
import { runHere } from "./in-process.ts";

const spec = "examples/school-noodle.yaml";

test("an answer explains its words where it is asked to, and is quiet elsewhere", async () => {
  const [quiet, told] = await Promise.all([runHere(["formula", spec]), runHere(["formula", spec, "--words"])]);
  expect(quiet.stdout).not.toContain("\nWords\n");
  expect(told.stdout).toMatch(/\nWords\n {2}% of flour: weight for every 100/u);
  expect(told.stdout).toContain("  meq: ");
});

test("the forms for programs have no words", async () => {
  for (const format of ["json", "csv"]) {
    const [quiet, told] = await Promise.all(
      [[], ["--words"]].map((more) => runHere(["formula", spec, "--format", format, ...more])),
    );
    expect(told?.stdout).toBe(quiet?.stdout);
  }
});

test("a word is explained by its name, with its source", async () => {
  const { status, stdout } = await runHere(["words", "cutter", "number"]);
  expect(status).toBe(0);
  expect(stdout).toMatch(/cutter number .*30 mm/su);
  expect((await runHere(["words", "qqqqq"])).status).toBe(1);
});

test("a part of a name that no word has is said not to be explained", async () => {
  expect((await runHere(["words", "meq", "nonsense"])).stdout).toContain('"nonsense" is not explained here');
  expect((await runHere(["words", "cutter", "number"])).stdout).not.toContain("not explained");
});
