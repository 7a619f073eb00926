import { join } from "node:path";
import { expect, test } from "vitest";
import { folderFor } from "./folder.ts";
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
  { set: "water=36 %", lines: ["water.added=36 %", "water.tap=36 %", "water.dough=36 %"] },
  { set: "alkali=none", lines: ["alkali=", "alkali=[{ name: sodium carbonate, amount: 0.9 % }]"] },
  { set: "batch=40 bowls", lines: ["batch.bowls=40"] },
  { set: "flours=bread flour", lines: ["flours=[{ name: bread flour, amount: 100 % }]"] },
  { set: "bowls=40", lines: ["batch.bowls=40"] },
  { set: "protein=12 %", lines: ["wanted.protein=12 %"] },
  { set: "added=38 %", lines: ["water.added=38 %"] },
  { set: "water.dough", lines: ["water.dough=36 %"] },
  { set: "salt=none", lines: ["salt=", "salt=1 %"] },
  { set: "watr.added=38 %", lines: ["water.added=38 %"] },
  { set: "flours.barly flour.amount=5 %", lines: ['flours."barley flour".amount=5 %'] },
  { set: "water.added=38", lines: ["water.added=38 %"] },
  { set: "salt=1,5 %", lines: ["salt=1.5 %"] },
  { set: "wanted.alkalinity=17", lines: ["wanted.alkalinity=17 meq"] },
  { set: "wanted.sodium=900", lines: ["wanted.sodium=900 mg"] },
  { set: "wanted.protein=at least 11,5", lines: ["wanted.protein=at least 11.5 %"] },
  { set: "batch.bowls=0", lines: ["batch.bowls=1"] },
  { set: "prices=1", lines: ['prices."bread flour"=1 EUR/kg'] },
])("--set $set is refused with lines that would be right", async ({ set, lines }) => {
  const { status, stdout } = await runHere(["formula", spec, "--set", set, "--format", "json"]);
  expect(status).toBe(2);
  expect(JSON.parse(stdout).problems[0].lines).toEqual(lines.map((line) => `--set '${line}'`));
  // each of them is right as far as the keys and their values go
  for (const line of lines) {
    const { stderr } = await runHere(["formula", spec, "--set", line]);
    expect(readProblems(stderr).filter(({ code }) => /^(?:spec|path|quantity)/u.test(code))).toEqual([]);
  }
});

test.each([
  { command: "sheet", set: "sheet.thickness=0.2 mm", line: "sheet.thickness=0.44 mm" },
  { command: "sheet", set: "sheet.cutter=22", line: "sheet.cutter=20" },
  { command: "batch", set: "mixer.largest=10 g", line: "mixer.largest=3 kg" },
])("--set $set is refused with the nearest value that is not", async ({ command, set, line }) => {
  const school = "examples/school-noodle.yaml";
  const { stdout } = await runHere([command, school, "--set", set, "--format", "json"]);
  expect(JSON.parse(stdout).problems.map(({ lines }: { readonly lines: unknown }) => lines)).toEqual([
    [`--set '${line}'`],
  ]);
  const right = await runHere([command, school, "--set", line, "--format", "json"]);
  expect(right.stdout).not.toContain(JSON.parse(stdout).problems[0].code);
});

test.each([
  ["formula", "materials.Mill strong flour.protein=14 %", "flour.1.protein", "14.0651162790697674418604651163"],
  ["formula", "materials.mill strong flour.protein=14 %", "flour.1.moisture", "13.6"],
  ["sheet", "machines.two-stand sheeter.speed=8 m/min", "rolls.speed", "8"],
])("%s --set '%s' changes that of the included file and keeps the rest of it", async (command, set, id, changed) => {
  const asked = [command, "examples/school-noodle.yaml", "--set", set, "--format", "json"];
  const { stdout, stderr } = await runHere(asked);
  expect([stderr, JSON.parse(stdout).figures[id]?.value]).toEqual(["", changed]);
});

test("--set by a name that the list has twice shows a line for each", async () => {
  const salt = "{ name: sodium carbonate, amount: 0.4 % }";
  const text = `flours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\nalkali: [${salt}, ${salt}]\n`;
  const path = join(folderFor({ "noodle.yaml": text }), "noodle.yaml");
  const { stdout } = await runHere([
    "formula",
    path,
    "--set",
    "alkali.sodium carbonate.amount=1 %",
    "--format",
    "json",
  ]);
  expect(JSON.parse(stdout).problems[0]).toMatchObject({
    code: "path.several",
    lines: ["--set 'alkali[0].amount=1 %'", "--set 'alkali[1].amount=1 %'"],
  });
});

test.each([
  { set: "alkali.sodium carbonate.amount=19 %", problem: "alkali.too-much", at: "alkali[0].amount" },
  { set: "flours[1].amount=45 %", problem: "flours.shares-total", at: "flours[1].amount" },
])("--set $set is pointed at where all amounts together are wrong", async ({ set, problem, at }) => {
  const { stdout } = await runHere(["formula", "examples/school-noodle.yaml", "--set", set, "--format", "json"]);
  expect(JSON.parse(stdout).problems).toMatchObject([{ code: problem, flag: "--set", path: at }]);
});

test.each([
  { set: "watr.added=38 %", code: "spec.unknown-key", advice: "set the value by its key" },
  { set: "flours.mill plain flour.amount", code: "path.unreadable", advice: "water.added=38 %" },
  { set: "flours.barly flour.amount=30 %", code: "path.no-entry", advice: 'did you mean "barley flour"?' },
  { set: "water.added=38", code: "quantity.unreadable", advice: "38 %" },
  { set: "batch.bowls=many", code: "spec.type", advice: "write it like this" },
])("--set $set is refused at the flag", async ({ set, code, advice }) => {
  const { status, stderr } = await runHere(["formula", spec, "--set", set]);
  expect(status).toBe(2);
  const [problem] = readProblems(stderr);
  expect(problem).toMatchObject({ where: "--set", code });
  expect(problem?.advice).toContain(advice);
});

test("--set 'include=[…]' reads the kitchen file beside the spec, and refuses one that is not there", async () => {
  const kitchen = { materials: { "bin four": { kind: "flour", moisture: "13 %", protein: "11 %" } } };
  const noodle = { name: "a", flours: [{ name: "bin four", amount: "100 %" }], water: { added: "36 %" } };
  const folder = folderFor({ "noodle.json": JSON.stringify(noodle), "other.json": JSON.stringify(kitchen) });
  const asked = (file: string) => ["formula", join(folder, "noodle.json"), "--set", `include=[${file}]`];
  const read = await runHere([...asked("other.json"), "--format", "json"]);
  expect([read.stderr, JSON.parse(read.stdout).figures["flour.1.moisture"]?.value]).toEqual(["", "13"]);
  const refused = await runHere(asked("none.json"));
  expect([refused.status, readProblems(refused.stderr).map(({ code }) => code)]).toEqual([2, ["file.unreadable"]]);
});
