import {
  askBatch,
  askCard,
  askCompare,
  askCost,
  askFormula,
  askLot,
  askNutrition,
  askSheet,
  askStyle,
  askWorkbook,
  type Noodle,
  readNoodle,
  readNoodleData,
  type SpecInput,
  told,
} from "@noodlewright/core";
import { hydrates, species } from "@noodlewright/core/chemistry";
import { recalculated, toldIn } from "@noodlewright/core/figure";
import { renderCsv, renderHtml, renderMarkdown } from "@noodlewright/core/render";
import { readKitchenFile } from "@noodlewright/core/spec";
import { describe, expect, expectTypeOf, test, vi } from "vitest";
import { type Decimal, dec } from "#core/number/decimal.ts";

/** Of the demo kitchen: bowls for a class, and a sheet that gives fewer than are wanted. */
const spec: SpecInput = {
  name: "class noodle",
  flours: [{ name: "bread flour", amount: "100 %" }],
  water: { added: "36 %" },
  batch: { bowls: 40, rawWeight: "130 g" },
  losses: { mixing: "1 %" },
};

function noodleOf(input: SpecInput, wishes?: Parameters<typeof readNoodle>[1]): Noodle {
  const reading = readNoodle(input, wishes);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.value;
}

describe("a noodle", () => {
  test("is not read from something else than a spec, which the compiler tells", () => {
    expectTypeOf<SpecInput>().toExtend<Parameters<typeof readNoodle>[0]>();
    expectTypeOf<{ nme: number }>().not.toExtend<Parameters<typeof readNoodle>[0]>();
    const bare = { ...spec, flours: [{ name: "bread flour", amount: 100 }] };
    expectTypeOf(bare).not.toExtend<SpecInput>();
    expect(readNoodleData(bare)).toMatchObject({
      problems: [{ code: "quantity.unreadable", facts: { why: "no unit" } }],
    });
    expectTypeOf<{ name: string }>().not.toExtend<Parameters<typeof readNoodle>[0]>();
    const twoWaters = { ...spec, water: { added: "36 %", tap: "34 %" } };
    const twoSizes = { ...spec, batch: { bowls: 40, rawWeight: "130 g", dough: "5 kg" } };
    expectTypeOf({ ...spec, water: {} }).not.toExtend<SpecInput>();
    expectTypeOf(twoWaters).not.toExtend<SpecInput>();
    expectTypeOf(twoSizes).not.toExtend<SpecInput>();
    expectTypeOf({ ...spec, batch: { rawWeight: "130 g" } }).toExtend<SpecInput>();
    expectTypeOf({
      ...spec,
      batch: { bowls: 40, rawWeight: "130 g", cookedWeight: "230 g" },
    }).not.toExtend<SpecInput>();
    const passes = { machine: "bench rolls", thickness: "1.4 mm", start: "7 mm" };
    expectTypeOf({ ...spec, sheet: passes }).toExtend<SpecInput>();
    expectTypeOf({ ...spec, sheet: { ...passes, start: undefined } }).not.toExtend<SpecInput>();
    expectTypeOf({ ...spec, sheet: { ...passes, compounding: { gap: "4 mm", folds: 2 } } }).not.toExtend<SpecInput>();
    expect(readNoodleData(twoWaters)).toMatchObject({ problems: [{ path: ["water"] }] });
    expect(readNoodleData({ nme: 3 }).ok).toBe(false);
  });

  test("is not put together of parts, which the compiler tells", () => {
    expectTypeOf<Pick<Noodle, "spec" | "kitchen" | "units" | "formula" | "notes">>().not.toExtend<Noodle>();
  });

  test("takes the later of two kitchens that have a flour of the same name", () => {
    const kitchens = ["12 %", "14 %"].flatMap((moisture) => {
      const kitchen = readKitchenFile({ materials: { "own flour": { kind: "flour", moisture } } });
      return kitchen.ok ? [kitchen.value] : [];
    });
    const noodle = noodleOf({ ...spec, flours: [{ name: "own flour", amount: "100 %" }] }, { kitchens });
    expect(noodle.formula.lines[0]?.material.moisture).toBe("14");
  });

  test("is worked out once", () => {
    const noodle = noodleOf(spec);
    const [first, second] = [askBatch(noodle), askBatch(noodle)];
    expect(first.ok && second.ok && first.value === second.value).toBe(true);
  });

  test("answers in plain data that survives JSON", () => {
    const batch = askBatch(noodleOf(spec));
    if (!batch.ok) throw new Error("no batch");
    expect(JSON.parse(JSON.stringify(batch.value))).toEqual(batch.value);
  });

  test.each([
    [{ batch: { bowls: 40, rawWeight: "100 kg" } }, "batch.rawWeight"],
    [{ losses: { mixing: "60 %", cutting: "2 %" } }, "losses.mixing"],
    [
      { sheet: { machine: "bench rolls", thickness: "1.4 mm", cutter: 20, start: "12 mm", springBack: 3 } },
      "sheet.springBack",
    ],
    [{ batch: { bowls: 40, rawWeight: "1 kg" }, losses: { mixing: "30 %" } }, undefined],
  ])("of %j it says loudly what no kitchen has: %s", (more, path) => {
    const reading = readNoodleData({
      name: "a",
      flours: [{ name: "bread flour", amount: "100 %" }],
      water: { added: "36 %" },
      ...more,
    });
    expect(reading.ok).toBe(true);
    const notes = reading.ok ? reading.notes.filter(({ code }) => code === "spec.unusual") : [];
    expect(notes.map((one) => [one.path.join("."), one.loud])).toEqual(path === undefined ? [] : [[path, true]]);
  });

  test("tells what no kitchen has in the units asked for, in digits that tell", () => {
    const reading = readNoodleData({ ...spec, batch: { bowls: 40, rawWeight: "40 oz" } });
    const notes = reading.ok ? reading.notes.filter(({ code }) => code === "spec.unusual") : [];
    const words = (["metric", "us"] as const).flatMap((units) => notes.map((one) => toldIn(units)(one)));
    expect(words.map((text) => text.split(" (")[0])).toEqual([
      "raw noodles of a bowl: 1133.981 g is more than kitchens have, which is 1000 g at most",
      "raw noodles of a bowl: 2.500 lb is more than kitchens have, which is 2.205 lb at most",
    ]);
  });

  test("weighs in ounces where it is read so and no scale is named", () => {
    const units = (noodle: Noodle) => {
      const batch = askBatch(noodle);
      return batch.ok ? [...new Set(batch.value.lines.map(({ unit }) => unit))] : [];
    };
    expect(units(noodleOf(spec))).toEqual(["g"]);
    expect(units(noodleOf(spec, { units: "us" }))).toEqual(["oz"]);
  });
});

describe("the notes of an answer", () => {
  const sheet: SpecInput = {
    ...spec,
    machines: { pin: { width: "300 mm", gap: { least: "1 mm", greatest: "9 mm" }, cutters: [{ size: 20 }] } },
    prices: { "bread flour": "0.90 EUR/kg" },
    sheet: { machine: "pin", thickness: "2 mm", cutter: 20, start: "9 mm", endTrim: "40 mm" },
  };

  const codes = (answer: { readonly ok: boolean; readonly notes?: readonly { readonly code: string }[] }) =>
    (answer.notes ?? []).map(({ code }) => code);

  test("tell with the batch and its cost, as with the sheet, that the sheets give too few portions", () => {
    const noodle = noodleOf(sheet);
    for (const answer of [askSheet(noodle), askBatch(noodle), askCost(noodle)])
      expect(codes(answer)).toContain("sheet.portions-short");
  });

  test("find the portions of a batch without the roots that only written passes need", () => {
    const number: Decimal = Object.getPrototypeOf(dec(1));
    const power = vi.spyOn(number, "pow");
    const roots = () => power.mock.calls.filter(([exponent]) => !dec(exponent.toString()).isInteger()).length;
    const noodle = noodleOf(sheet);
    askBatch(noodle);
    expect(roots()).toBe(0);
    askSheet(noodle);
    expect(roots()).toBeGreaterThan(0);
    power.mockRestore();
  });

  test("leave the scale that was assumed to answers that weigh", () => {
    const noodle = noodleOf(sheet);
    expect(codes(askBatch(noodle))).toContain("scales.assumed");
    expect(codes(askSheet(noodle))).not.toContain("scales.assumed");
  });

  test("stand in the report", () => {
    const batch = askBatch(noodleOf(sheet));
    if (!batch.ok) throw new Error("no batch");
    expect(batch.report().notes.map(({ text }) => text)).toEqual(expect.arrayContaining(batch.notes.map(told)));
  });
});

describe("what is no spec", () => {
  const spec = { name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } };
  const codes = (data: unknown) => {
    const reading = readNoodleData(data);
    return reading.ok ? [] : [...new Set(reading.problems.map(({ code }) => code))];
  };

  test.each([
    ["null", null, "spec.type"],
    ["nothing", undefined, "spec.missing"],
    ["a whole number without end", 10n, "spec.type"],
    ["bytes", { ...spec, notes: new Uint8Array(1_000_000) }, "spec.not-data"],
    ["a list of a million", { ...spec, flours: Array.from({ length: 1_000_000 }) }, "spec.too-large"],
    ["many keys", Object.fromEntries(Array.from({ length: 50_000 }, (_, index) => [`k${index}`, 1])), "spec.too-large"],
    ["a prototype", JSON.parse('{ "materials": { "__proto__": { "moisture": "14 %" } } }'), "spec.unknown-key"],
    [
      "data that throws",
      {
        get name(): string {
          throw new Error("no");
        },
      },
      "spec.not-data",
    ],
  ])("%s is told as a problem", (_, data, code) => {
    expect(codes(data)).toContain(code);
  });

  test("no answer can change the catalogue for the next noodle", () => {
    const reading = readNoodleData(spec);
    if (!reading.ok) throw new Error("no noodle");
    const { material } = reading.value.formula.lines[0] ?? {};
    expect(() => Object.assign(material?.source ?? {}, { cite: "changed" })).toThrow(TypeError);
  });
});

describe("what nobody changes for others", () => {
  /** Everything within a result that can be written in. */
  const open = (value: unknown): readonly unknown[] => {
    if (typeof value !== "object" || value === null) return [];
    return [...(Object.isFrozen(value) ? [] : [value]), ...Object.values(value).flatMap(open)];
  };

  test("is what a noodle holds, what it answers, and the tables and sources behind them", () => {
    const noodle = noodleOf(spec);
    const batch = askBatch(noodle);
    const { formula, kitchen, notes } = noodle;
    expect(open([formula, kitchen, notes, noodle.spec, species, hydrates]).length).toBe(1);
    const wholes = [readNoodle(spec), batch, batch.ok && batch.report(), askCard(noodle, { date: "2026-11-25" })];
    const others = [askStyle(noodle), askWorkbook(noodle), askCompare([]), askLot(noodle)];
    const again = recalculated(formula.graph, { "water.added-stated": "38" });
    expect([...wholes, ...others, again].map((whole) => open(whole).length)).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(() => Object.assign(formula.graph["dough.water"] ?? {}, { value: "99" })).toThrow(TypeError);
  });

  test("leaves the batch the graph of all that its lines show", () => {
    const batch = askBatch(noodleOf(spec));
    if (!batch.ok) throw new Error("no batch");
    expect(batch.value.lines.filter(({ line }) => batch.value.graph[line.parts.id] === undefined)).toEqual([]);
  });
});

describe("wishes that no compiler held back", () => {
  const codes = (outcome: { readonly ok: boolean; readonly problems?: readonly { readonly code: string }[] }) =>
    outcome.problems?.map(({ code }) => code) ?? [];
  const read = (wishes: unknown) => Reflect.apply(readNoodleData, undefined, [spec, wishes]);

  test("are told where they are of the wrong kind", () => {
    const outcomes = [{ units: "imperial" }, null, { kitchens: [null] }, { kitchens: "store.yaml" }].map(read);
    expect(outcomes.map(codes)).toEqual([["spec.choice"], ["spec.type"], ["spec.type"], ["spec.type"]]);
    const noodle = noodleOf(spec);
    expect(codes(Reflect.apply(askNutrition, undefined, [noodle, { rules: "UK" }]))).toEqual(["spec.choice"]);
    expect(["", "2026-99-99"].flatMap((date) => codes(askCard(noodle, { date })))).toEqual(["card.date", "card.date"]);
    const named = ["plain", "", "plain"].map((name) => ({ name, noodle }));
    expect(codes(askCompare(named))).toEqual(["compare.name", "compare.name"]);
    const few = [[], named.slice(0, 1)].map((noodles) => askCompare(noodles));
    expect(few.flatMap((one) => (one.ok ? [] : one.problems.map((each) => told(each).found)))).toEqual([
      "no noodle",
      "one noodle",
    ]);
  });

  test("take the data of a kitchen file, and the kitchen of another noodle", () => {
    const own: SpecInput = { ...spec, flours: [{ name: "own flour", amount: "100 %" }], include: ["store.yaml"] };
    const raw = { materials: { "own flour": { kind: "flour", moisture: "12 %" } } };
    const noodle = Reflect.apply(readNoodle, undefined, [own, { kitchens: [raw] }]).value;
    expect(noodle.formula.lines[0].material.moisture).toBe("12");
    const again = noodleOf(own, { kitchens: [noodle.kitchen] });
    expect(again.notes.map(({ code }) => code)).not.toContain("noodle.not-included");
  });

  test("do not pass a map or a date off as a section", () => {
    for (const materials of [new Map([["own flour", {}]]), new Date(0)]) {
      expect(codes(readNoodleData({ ...spec, materials }))).toEqual(["spec.not-data"]);
    }
  });
});

test("a name is printed and not obeyed, whatever prints it", () => {
  const flour = "sand\u001B[2J\u202E";
  const noodle = noodleOf({
    ...spec,
    materials: { [flour]: { kind: "flour" } },
    flours: [{ name: flour, amount: "100 %" }],
  });
  const formula = askFormula(noodle);
  const wrong = readNoodle({ ...spec, flours: [{ name: flour, amount: "100 %" }] });
  if (!formula.ok || wrong.ok) throw new Error("a formula, and a flour that nobody knows");
  const report = formula.report();
  const csv = renderCsv(report, undefined);
  const texts = [
    csv.ok ? csv.text : "",
    renderMarkdown(report),
    renderHtml(report),
    wrong.problems.map((one) => told(one).found).join(),
  ];
  expect(texts.map((text) => [text.includes("sand·"), text.includes("\u001B") || text.includes("\u202E")])).toEqual(
    texts.map(() => [true, false]),
  );
});
