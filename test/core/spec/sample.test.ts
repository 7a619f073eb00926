import { askBatch, askCost, askDay, askLot, askSheet, askWater, readNoodleData, told } from "@noodlewright/core";
import { readKitchenFile, readSpec } from "@noodlewright/core/spec";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { problemsOf } from "#core/figure/problem.ts";
import { linesInPlace, specSample } from "#core/spec/sample.ts";
import { specSchema } from "#core/spec/spec.ts";

const keys = Object.keys(specSchema.shape);

test.each(keys)("the sample of %s is right where it stands", (key) => {
  const lines = specSample([key]);
  const outcome = readSpec(parse(lines.join("\n") || "{}"));
  const wrong = outcome.ok
    ? []
    : outcome.problems.filter(({ code, path }) => !(code === "spec.missing" && path.length === 1));
  expect([lines, wrong]).toEqual([lines, []]);
});

test("samples are made of the examples of the schema, and few lines long", () => {
  expect(specSample(["alkali", 0, "figures", "composition"])).toEqual([
    "alkali:",
    "  - name: sodium carbonate",
    "    amount: 0.9 %",
    "    figures:",
    "      composition: { K2CO3: 18 %, Na2CO3: 12 %, water: rest }",
  ]);
  expect(specSample(["flours", 2, "nmae"])).toEqual(["flours:", "  - name: bread flour", "    amount: 70 %"]);
  expect(specSample(["dusting"])).toEqual(["dusting:", "  name: cornstarch", "  amount: 1.5 %"]);
  expect(specSample(["machines", "rolls", "speed"])).toEqual([
    "machines:",
    "  rolls: { width: 240 mm, gap: { least: 0.4 mm, greatest: 12 mm }, cutters: [{ size: 20 }], speed: 6 m/min }",
  ]);
  expect(specSample(["nonsense"])).toEqual([]);
});

const readers = { readNoodleData, readKitchenFile, materials: (data: unknown) => readKitchenFile(data, "materials") };
const cases = Object.entries(readers).flatMap(([reader, read]) =>
  ["banana", null, [], 3].map((data) => ({ reader, read, data })),
);

test.each(cases)("the lines for $data are read by $reader, which they are for", ({ read, data }) => {
  const outcome = read(data);
  const lines = outcome.ok ? [] : outcome.problems.map(linesInPlace);
  expect(lines.map((one) => read(parse(one.join("\n"))).ok)).toEqual([true]);
});

test.each([
  [{ foo: 1 }, "leave it out", "materials:"],
  [{ materials: { "own flour": { moisture: "13 %", colour: "white" } } }, "leave it out", "materials:"],
  [{ machines: { rolls: { width: "240 mm", colour: "white" } } }, "leave it out", "machines:"],
])("a kitchen file of %j is not told of notes, which it has none of", (data, advice, line) => {
  const outcome = readKitchenFile(data);
  const [problem] = outcome.ok ? [] : outcome.problems.filter(({ code }) => code === "spec.unknown-key");
  expect(problem && [told(problem).advice, linesInPlace(problem)[0]]).toEqual([advice, line]);
});

test.each([
  ["min", "did you mean `smallest`?"],
  ["smalest", "did you mean `smallest`?"],
  ["minLoad", "did you mean `smallest`?"],
  ["max", "write `largest: 3 kg`"],
  ["capacity", "write `largest: 3 kg`"],
  ["largst", "write `largest: 3 kg`"],
])("%s of a mixer is the end of its range that it says", (key, advice) => {
  const outcome = readNoodleData({ ...parse(specSample([]).join("\n")), mixer: { [key]: "3 kg" } });
  const problem = outcome.ok ? undefined : outcome.problems.find(({ code }) => code === "spec.unknown-key");
  expect(problem && told(problem).advice).toBe(advice);
});

/** Questions that a spec without the sections they need refuses. */
const questions = { askBatch, askCost, askDay, askLot, askSheet, askWater };
const plain = { name: "class", flours: [{ name: "semolina", amount: "100 %" }], water: { added: "36 %" } };
const bowls = { batch: { bowls: 4, rawWeight: "120 g" } };
const rolls = { width: "145 mm", gap: { least: "1 mm", greatest: "5 mm" }, cutters: [{ size: "2 mm" }] };
const { gap: _gap, ...noGap } = rolls;
const pin = { width: "300 mm", sticks: { thick: "4 mm", thin: "2.8 mm" } };
const dial = { "1": "4.8 mm", "2": "3.6 mm", "3": "2.7 mm", "4": "2 mm", "5": "1.5 mm", "6": "0.6 mm" };
/** What a kitchen may have written already, and lines of another kitchen that are in the way. */
const parts = {
  nothing: {},
  "the batch": bowls,
  "half a batch": { batch: { rawWeight: "120 g" } },
  "dough without bowls, and rolls": { batch: { dough: "1 kg" }, machines: { rolls } },
  rolls: { ...bowls, machines: { rolls } },
  "wide rolls": { ...bowls, machines: { rolls: { ...rolls, gap: { least: "2 mm", greatest: "9 mm" } } } },
  "a dial whose last step is too wide": { ...bowls, machines: { "hand crank": { ...noGap, dial } } },
  "a rolling pin before rolls": { ...bowls, machines: { pin, rolls } },
  "a narrow cutter": { ...bowls, machines: { rolls: { ...rolls, cutters: [{ size: 20, over: "120 mm" }] } } },
  "the sheet of other rolls": {
    ...bowls,
    machines: { rolls },
    sheet: { machine: "bench rolls", thickness: "1.4 mm", cutter: 20, start: "12 mm" },
  },
  "a sheet without a start": {
    batch: { dough: "1 kg" },
    machines: { rolls },
    sheet: { machine: "rolls", thickness: "1.4 mm", cutter: "2 mm" },
  },
  "parts of the day": { plan: { serve: "12:15" }, temperature: { tap: "12 °C" }, prices: {} },
};
const started = Object.entries(questions).flatMap(([question, ask]) =>
  Object.entries(parts).map(([held, part]) => ({ question, ask, held, part })),
);

/** A section with the keys of another one put in. */
function pasted(section: unknown, lines: unknown): unknown {
  if (typeof section !== "object" || section === null || typeof lines !== "object" || lines === null) return lines;
  const merged: Record<string, unknown> = { ...section };
  for (const [key, value] of Object.entries(lines)) merged[key] = pasted(merged[key], value);
  return merged;
}

test.each(started)("the lines that $question asks for, written beside $held, end in an answer", ({ ask, part }) => {
  let spec: unknown = { ...plain, ...part };
  for (let asked = 0; asked < 6; asked += 1) {
    const noodle = readNoodleData(spec, {});
    if (!noodle.ok) throw new Error(JSON.stringify(noodle.problems));
    const outcome = ask(noodle.value);
    if (outcome.ok) return;
    for (const problem of outcome.problems) {
      const lines = linesInPlace(problem);
      expect([problem.code, lines.length]).toEqual([problem.code, expect.toSatisfy((count: number) => count > 0)]);
      spec = pasted(spec, parse(lines.join("\n")));
    }
  }
  throw new Error(JSON.stringify(spec));
});

test.each(Object.entries(parts).filter(([, part]) => "machines" in part && !("sheet" in part)))(
  "the lines for a sheet beside %s are right at once",
  (_, part) => {
    const sheetOf = (spec: object) => {
      const noodle = readNoodleData(spec, {});
      return noodle.ok ? askSheet(noodle.value) : noodle;
    };
    const outcome = sheetOf({ ...plain, ...part });
    const lines = outcome.ok ? [] : outcome.problems.flatMap(linesInPlace);
    expect([lines, problemsOf(sheetOf({ ...plain, ...part, ...parse(lines.join("\n")) }))]).toEqual([lines, []]);
  },
);

const whole = { name: "class", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } };

test.for<readonly [data: object, lines: readonly string[], advice?: string]>([
  [{ hydration: 36 }, ["water:", "  added: 36 %"], "write it under `water:`"],
  [{ kansui: "1 %" }, ["alkali:", "  - name: kansui", "    amount: 1 %"], "write it under `alkali:`"],
  [
    { "egg powder": "2 %" },
    ["ingredients:", "  - name: egg powder", "    amount: 2 %"],
    "write it under `ingredients:`",
  ],
  [{ bowls: 40 }, ["batch:", "  bowls: 40"], "write it under `batch:`"],
  [{ salt: "500" }, ["salt: 500 g"]],
  [{ salt: "1,5 %" }, ["salt: 1.5 %"]],
  [{ salt: "0,125 %" }, ["salt: 0.125 %"]],
  [{ salt: "12,5" }, ["salt: 12.5 %"]],
  [{ flours: ["bread flour 100%"] }, ["flours:", "  - name: bread flour", "    amount: 100 %"]],
  [{ alkali: ["1 % sodium carbonate"] }, ["alkali:", "  - name: sodium carbonate", "    amount: 1 %"]],
  [
    { flours: { "bread flour": "90 %", "rye flour": "10 %" } },
    ["flours:", "  - name: bread flour", "    amount: 90 %", "  - name: rye flour", "    amount: 10 %"],
  ],
  [{ alkali: ["a pinch of soda"] }, ["alkali:", "  - name: sodium carbonate", "    amount: 0.9 %"]],
])("%j is shown as it is right, with its own names and values", ([data, lines, advice]) => {
  const problems = problemsOf(readSpec({ ...whole, ...data }));
  const shown = problems.map((one) => linesInPlace(one).slice(0, advice === undefined ? undefined : lines.length));
  expect(shown).toEqual([lines]);
  if (advice !== undefined) expect(problems.map((one) => told(one).advice)).toEqual([advice]);
});

test("a key under another name is not missing besides", () => {
  const outcome = readSpec({ name: "class", flour: [{ name: "bread flour", amount: "100 %" }], hydration: "36 %" });
  expect(outcome.ok ? [] : outcome.problems.map(({ code }) => code)).toEqual(["spec.unknown-key", "spec.unknown-key"]);
});
