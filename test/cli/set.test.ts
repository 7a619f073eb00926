import { expect, test } from "vitest";
import { runHere } from "./in-process.ts";
import { readProblems } from "./read-problems.ts";

const spec = "examples/school-barley-noodle.yaml";

async function figureOf(id: string, command: string, ...sets: readonly string[]): Promise<unknown> {
  const flags = sets.flatMap((set) => ["--set", set]);
  const { status, stdout, stderr } = await runHere([command, spec, ...flags, "--format", "json"]);
  expect([status, stderr]).toEqual([0, ""]);
  return JSON.parse(stdout).figures[id]?.value;
}

test.each([
  { set: ["water.added=41.5%"], figure: "water.added", value: "41.5" },
  // another way to say the water takes the place of the one in the spec
  { set: ["water.tap=30 %"], figure: "water.tap", value: "30" },
  { set: ["flours[0].amount=71 %", "flours[1].amount=24 %"], figure: "flour.2.parts", value: "24" },
  {
    set: ["flours.mill plain flour.amount=rest", "flours.Barley flour.amount=9 %"],
    figure: "flour.1.parts",
    value: "71",
  },
  { set: ["salt="], figure: "salt.parts", value: undefined },
  { set: ["flours.mill plain flour.figures.moisture=12 %"], figure: "flour.1.moisture", value: "12" },
  { set: ["alkali=[{ name: sodium carbonate, amount: 0.5 % }]"], figure: "alkali.1.parts", value: "0.5" },
])("--set $set makes $figure $value", async ({ set, figure, value }) => {
  expect(await figureOf(figure, "formula", ...set)).toBe(value);
});

test("a number of the spec is read as one", async () => {
  expect(await figureOf("batch.bowls", "batch", "batch.bowls=40", "batch.rawWeight=100 g")).toBe("40");
});

test.each([
  { set: "watr.added=38 %", code: "spec.unknown-key", advice: "did you mean `water`?" },
  { set: "flours.mill plain flour.amount", code: "path.unreadable", advice: "water.added=38 %" },
  { set: "flours.barly flour.amount=30 %", code: "path.no-entry", advice: 'did you mean "barley flour"?' },
  { set: "water.added=38", code: "quantity.unreadable", advice: "38 %" },
  { set: "batch.bowls=many", code: "spec.type", advice: "write it like `bowls: 320`" },
])("--set $set is refused at the flag", async ({ set, code, advice }) => {
  const { status, stderr } = await runHere(["formula", spec, "--set", set]);
  expect(status).toBe(2);
  const [problem] = readProblems(stderr);
  expect(problem).toMatchObject({ where: "--set", code });
  expect(problem?.advice).toContain(advice);
});
