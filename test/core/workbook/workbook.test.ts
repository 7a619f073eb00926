import { askBatch, type UnitSystem } from "@noodlewright/core";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { beside, notAlone } from "./beside.ts";
import {
  cellsOf,
  changedBy,
  commandGraph,
  type Data,
  Engine,
  exampleData,
  examples,
  figurePlaces,
  type Input,
  inputsOf,
  noodleOf,
  same,
  type Typed,
  workbookFor,
} from "./kit.ts";

const opened = new Map<string, ReturnType<typeof openedNow>>();

/** The workbook beside the command, in another engine, which stays open. */
function inEngine(name: string, units: UnitSystem = "metric", more: Data = {}) {
  const key = JSON.stringify([name, units, more]);
  const book = opened.get(key) ?? openedNow(name, units, more);
  opened.set(key, book);
  return book;
}

function openedNow(name: string, units: UnitSystem, more: Data) {
  const { held, ...book } = beside(name, units, more);
  const engine = new Engine(book.workbook);
  const wrong: unknown[] = [];
  let changed: readonly Input[] = [];
  /** Types into inputs; the others are again what they were. */
  const type = (typed: ReadonlyMap<Input, number | string | null>): void => {
    const back = changed
      .filter((input) => !typed.has(input))
      .map(({ place, before, takes }) => [place, takes.optional ? null : before] as const);
    engine.type([...back, ...[...typed].map(([{ place }, value]) => [place, value] as const)]);
    changed = [...typed.keys()];
  };
  const answerTo = (changes: ReadonlyMap<Input, Typed>) => {
    type(new Map([...changes].map(([input, { value }]) => [input, value])));
    const one = held(changes, (place) => engine.value(place));
    wrong.push(...one.wrong);
    return one.says;
  };
  /** Changes inputs together, and where that has no answer, fewer of them by less; gives those that have none by themselves. */
  const unanswered = (inputs: readonly Input[], percentOf: (input: Input) => number): readonly Input[] => {
    const answer = answerTo(new Map(inputs.map((input) => [input, changedBy(percentOf(input), input)])));
    if (answer === "answered") return [];
    if (book.forCommand || (inputs.length === 1 && percentOf === slightly)) return inputs;
    const middle = Math.ceil(inputs.length / 2);
    return [inputs.slice(0, middle), inputs.slice(middle)].flatMap((some) => unanswered(some, slightly));
  };
  return { ...book, engine, type, answerTo, unanswered, wrong };
}

const slightly = () => -1;

const inOunces = {
  scales: [
    { division: "0.5 oz", capacity: "20 lb" },
    { division: "0.05 oz", capacity: "10 oz" },
  ],
  alkali: [
    { name: "sodium carbonate", amount: "12 meq" },
    { name: "potassium carbonate", amount: "0.4 %", as: "anhydrous salts" },
  ],
};

const written: readonly (readonly [name: string, units: UnitSystem, more: Data])[] = [
  ...examples.map((name) => [name, "metric", {}] as const),
  ["pin-and-sticks", "us", {}],
  ["written-in-grams", "metric", { batch: { dough: "4 kg" }, rework: { amount: "8 %" } }],
  [
    "evening-class",
    "us",
    {
      batch: { flour: "3 kg" },
      water: { dough: "37 %" },
      scales: [{ division: "2 g", capacity: "3 kg" }, { division: "0.1 g" }],
    },
  ],
  [
    "school-noodle",
    "metric",
    {
      rework: { amount: "1.3 kg" },
      batch: { load: "largest" },
      salt: "0 %",
      water: { dough: "35 %" },
      scales: [{ division: "5 g" }, { division: "0.1 g" }],
    },
  ],
  [
    "school-noodle",
    "us",
    {
      rework: { amount: "1.3 kg" },
      ...inOunces,
      wanted: {
        basis: "13 % mb",
        protein: "11 %",
        glutenProtein: "9 %",
        ash: "0.3 to 0.5 %",
        wholegrain: "at most 20 %",
        addedWater: "35 %",
        doughWater: "34 % ± 1",
        alkalinity: "17 meq",
        anhydrousSalts: "at most 1 %",
        potassiumShare: "40 %",
        saltInDough: "0.7 %",
        saltInBowl: "0.5 to 1 g",
        sodium: "800 mg",
        bowlPrice: "0.25 EUR",
        price: "1.2 EUR/kg",
        batchPrice: "30 EUR",
      },
      weighingTolerance: "0.5 %",
    },
  ],
];

describe("a workbook, worked out by an engine that is not ours", () => {
  test.for(written)(
    "comes to the values of the command for %s, %s, %j, and for a change of each input",
    ([name, units, more]) => {
      const { workbook, places, graph, engine, inputs, unanswered, wrong, forCommand } = inEngine(name, units, more);
      const told = cellsOf(workbook).filter(({ cell }) => cell.formula !== undefined);
      const values = told.map((place) => [place.cell, engine.value(place)] as const);
      expect(told.length).toBeGreaterThan(150);
      expect(values.filter(([, value]) => String(value).startsWith("#"))).toEqual([]);
      expect(values.filter(([cell, value]) => !same(value, cell.value ?? "nothing"))).toEqual([]);
      expect(values.filter(([, value]) => value === 1e9)).toEqual([]);
      for (const { id, value } of Object.values(graph)) {
        expect([id, places.get(id)?.cell.value]).toEqual([id, Number(value)]);
      }
      const [order = []] = fc.sample(fc.shuffledSubarray([...inputs], { minLength: inputs.length }), 1);
      const some = fc.array(fc.integer({ min: -30, max: 40 }), { minLength: inputs.length });
      const percents = new Map(fc.sample(some, 1)[0]?.map((percent, index) => [inputs[index], percent]));
      const alone = order.filter(({ id }) => notAlone.test(id));
      const others = order.filter((input) => !alone.includes(input));
      // An example as it is by much, ten at once; what it has in another way by less, and most of it at once.
      const [size, share] = Object.keys(more).length === 0 ? [10, 1] : [25, 0.3];
      const left = Array.from({ length: Math.ceil(others.length / size) }, (_, index) =>
        others.slice(size * index, size * (index + 1)),
      ).flatMap((group) => unanswered(group, (input) => share * (percents.get(input) ?? 0)));
      for (const input of alone) unanswered([input], slightly);
      expect(wrong).toEqual([]);
      expect(forCommand ? [] : left.map(({ id }) => id)).toEqual([]);
    },
  );
});

test("a spec with too little for its scale says as written what the command weighs in place of it", () => {
  const noodle = noodleOf({
    name: "by the kilogram",
    flours: [{ name: "bread flour", amount: "100 %" }],
    water: { added: "36 %" },
    alkali: [{ name: "sodium carbonate", amount: "0.8 %" }],
    salt: "0.6 %",
    batch: { flour: "1 kg" },
    scales: [{ division: "1 g", capacity: "5 kg" }],
  });
  if (noodle === undefined) throw new Error("the spec is refused");
  const batch = askBatch(noodle);
  const weights = batch.ok ? (batch.value.withStock ?? []) : [];
  const workbook = workbookFor(noodle);
  const engine = new Engine(workbook);
  const rows = workbook.sheets[0]?.rows ?? [];
  const top = rows.findIndex((cells) => cells[6]?.value === "One load with the stock solution") + 1;
  const told = () =>
    weights.map((_, index) => [
      rows[top + index]?.[6]?.value,
      engine.value({ sheet: "Noodle", row: top + index, column: 7 }),
    ]);
  expect(told()).toEqual(weights.map(({ name, mass }) => [name, Number(mass.value)]));
  expect(told().map(([name]) => name)).toContain("stock solution of the salts");
  const input = inputsOf(workbook).find(({ id }) => id.startsWith("water."));
  if (input) engine.type([[input.place, input.before * 1.1]]);
  expect(told().map(([, value]) => value)).toEqual(weights.map(() => "make the workbook anew"));
});

/** The workbook of an example after something was typed into it, by the ids of its inputs. */
function afterTyping(name: string, typed: Readonly<Record<string, number | string | null>>) {
  const { workbook, inputs, engine, type } = inEngine(name);
  type(new Map(inputs.flatMap((input) => (typed[input.id] === undefined ? [] : [[input, typed[input.id] ?? null]]))));
  const texts = cellsOf(workbook)
    .filter(({ sheet }) => sheet === "Noodle")
    .map((place) => [place.column, String(engine.value(place))] as const);
  const value = (id: string) => engine.value(figurePlaces(workbook).get(id) ?? { sheet: "", row: 0, column: 0 });
  const inColumn = (column: number) => texts.filter(([at]) => at === column).map(([, text]) => text);
  return { inColumn, value };
}

test("stays within what there is of an ingredient as the command does, however little there is", () => {
  const typed = exampleData("written-in-grams");
  for (const grams of [3, 10, 47.6, 812.7]) {
    const asked = noodleOf({ ...typed, batch: { have: { name: "dark rye flour", amount: `${grams} g` } } });
    const weights = [1, 2].map((flour) => asked && Number(commandGraph(asked)?.[`flour.${flour}.load`]?.value));
    const { value, inColumn } = afterTyping("written-in-grams", { "batch.have": grams });
    expect([grams, ...[1, 2].map((flour) => value(`flour.${flour}.load`))]).toEqual([grams, ...weights]);
    expect(inColumn(1).join("\n")).not.toContain("what is short");
  }
});

test.for([
  [{}, "go by the stock solution beside"],
  [{ "flour.1.price": 9, "shopping.flour.1.on-hand": 9, "flour.2.protein": 9 }, "go by the stock solution beside"],
  [{ "salt.stated": 0.4 }, "for a stock solution of what was changed make the workbook anew"],
] as const)("goes by the stock solution as long as nothing behind it is changed: %j", ([typed, says]) => {
  const { inColumn } = afterTyping("barley-egg-noodle", typed);
  expect(inColumn(1).filter((text) => text.startsWith("an ingredient is too little"))).toEqual([
    `an ingredient is too little for its scale: ${says}`,
  ]);
  expect(inColumn(7).includes("make the workbook anew")).toBe(says.endsWith("anew"));
});

test("keeps the weights that are within what there is where nothing behind them is changed", () => {
  const { value, inColumn } = afterTyping("written-in-grams", { "flour.2.ash": 2.825, "flour.1.nitrogen-factor": 6 });
  expect([1, 2].map((flour) => value(`flour.${flour}.load`))).toEqual([2266, 566]);
  expect(inColumn(1).join("\n")).not.toContain("make the workbook anew");
});

test("takes no dose of nothing where another product takes its place", () => {
  expect(afterTyping("one-bottle", { "alkali.1.parts": 0 }).inColumn(1).join("\n")).toContain("none that can be taken");
});

test("says of a loss typed beyond what kitchens have what the command says of it", () => {
  const said = (loss: number) => afterTyping("school-noodle", { "loss.sheeting": loss }).inColumn(1).join("\n");
  expect(said(35)).toContain("one is more than kitchens have: check the number and its unit");
  expect(said(25)).not.toContain("more than kitchens have");
});

test("shows a price by the pound in the digits that it was stated in", () => {
  const prices = { "bread flour": "4.90 USD per 5 lb" };
  const plain = { name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } };
  const noodle = noodleOf({ ...plain, batch: { flour: "10 lb" }, prices }, "us");
  const values = noodle ? cellsOf(workbookFor(noodle)).map(({ cell }) => cell.value) : [];
  expect(values.filter((value) => typeof value === "number" && Math.abs(value - 0.98) < 1e-9)).toEqual(
    expect.arrayContaining([0.98]),
  );
  expect(values).not.toContain(0.9800000000000001);
});

test("leaves something for the flour that is the rest, and takes the smallest load as it is typed", () => {
  expect(afterTyping("school-noodle", { "flour.1.parts": 100 }).inColumn(1)).toContain(
    "the shares of the flours do not total 100 %",
  );
  expect(afterTyping("school-noodle", { "mixer.smallest": 9900 }).inColumn(1).join("\n")).toContain(
    "a load is below the least of the mixer",
  );
  const tight = afterTyping("school-noodle", { "mixer.largest": 100 }).inColumn(1);
  expect(tight).toContain("the two limits contradict: the smallest load is above the largest");
  expect(tight.join("\n")).not.toContain("more or fewer loads");
});

test("shows no sign of an error whatever is typed, and no weight where the command refuses it, for each kind of input", () => {
  const seen = new Set<string>();
  for (const [name, units, more] of [
    ["school-barley-noodle", "metric", {}],
    ["pin-and-sticks", "metric", {}],
    ["evening-class", "us", {}],
    ["school-noodle", "us", inOunces],
  ] as const) {
    const { workbook, inputs, engine, type, answerTo, wrong } = inEngine(name, units, more);
    const cells = cellsOf(workbook).filter(({ sheet, cell }) => sheet === "Noodle" && cell.formula !== undefined);
    const results = cells.filter(({ cell }) => cell.role === "result");
    const signs = () => cells.filter((place) => String(engine.value(place)).startsWith("#"));
    const needed = inputs.filter(({ takes }) => !takes.optional);
    const kinds = new Map(needed.map((input) => [input.id.replace(/\d+/gu, ""), input]));
    for (const [kind, input] of kinds) {
      if (seen.has(kind)) continue;
      seen.add(kind);
      const { least = 0, above, most } = input.takes;
      const none = seen.size % 2 === 0 ? null : "a cup";
      const beyond = [above ?? least - 1, ...(most === undefined ? [] : [1.01 * most])];
      for (const typed of [none, ...beyond]) {
        if (typeof typed === "number") {
          const answer = answerTo(new Map([[input, { value: typed, unit: input.unit }]]));
          expect([input.id, typed, answer]).toEqual([input.id, typed, "refused"]);
        } else type(new Map([[input, typed]]));
        const said = engine.value({ ...input.place, column: 4 });
        expect([input.id, typed, said]).toEqual([input.id, typed, typed === none ? "no number" : "not taken"]);
        expect(results.filter((place) => engine.value(place) !== "")).toEqual([]);
        expect([input.id, typed, signs()]).toEqual([input.id, typed, []]);
      }
      for (const value of seen.size % 2 === 0 ? [0, 1e9] : [0.1, 5]) {
        answerTo(new Map([[input, { value, unit: input.unit }]]));
        expect([input.id, value, signs()]).toEqual([input.id, value, []]);
      }
    }
    const flours = inputs.filter(({ id }) => /^flour\.\d+\.(?:parts|written)$/u.test(id));
    expect([name, wrong]).toEqual([name, []]);
    type(new Map(flours.map((input) => [input, 0])));
    expect(signs()).toEqual([]);
  }
  expect(seen.size).toBeGreaterThan(40);
});

test("holds what is reached against what is wanted as it is shown, and where amounts were found asks for them anew", () => {
  const { inputs, answerTo, wrong, workbook, engine } = inEngine("school-noodle", "metric", {
    wanted: { addedWater: "30 to 35 %", doughWater: "35.5 %" },
  });
  const typed = (id: string, value: number): ReadonlyMap<Input, Typed> =>
    new Map(inputs.filter((input) => input.id === id).map((input) => [input, { value, unit: input.unit }]));
  const met = () => {
    const row =
      workbook.sheets[0]?.rows.findIndex(
        (cells) => cells[6]?.value === "added water" && String(cells[11]?.value).endsWith("met"),
      ) ?? -1;
    return engine.value({ sheet: "Noodle", row, column: 11 });
  };
  // 35.004 is shown as 35.00, 35.006 as 35.01; 30 to 35 wants no more than 35.00
  for (const [water, says] of [
    [35.004, "met"],
    [35.006, "not met"],
    [29.996, "met"],
    [29.994, "not met"],
  ] as const) {
    expect([water, answerTo(typed("water.added-stated", water)), met()]).toEqual([water, "answered", says]);
  }
  // 1 % of 35.5 is 0.355, so that 35.145 meets it, which is a half of what is shown
  for (const tolerance of [1, 0.5, 3]) answerTo(typed("weighing.tolerance", tolerance));
  expect(wrong).toEqual([]);
  expect(answerTo(typed("wanted.added-water.least", 36))).toBe("refused");
  const anew = /^found for the spec as it is written: mill strong flour, .*salt; make the workbook anew$/mu;
  const said = (id: string, number: number) =>
    afterTyping("friday-noodle", { [id]: number })
      .inColumn(1)
      .join("\n");
  // how many bowls there are says nothing of what is in them
  expect(said("batch.bowls", 80)).not.toMatch(anew);
  for (const id of ["wanted.alkalinity", "flour.1.moisture", "salt.parts"])
    expect([id, said(id, 3)]).toEqual([id, expect.stringMatching(anew)]);
});

test("names no scale for a weight of nothing", () => {
  const { workbook, engine, inputs, type } = inEngine("school-noodle");
  type(new Map(inputs.filter(({ id }) => id === "salt.parts").map((input) => [input, 0])));
  const rows = workbook.sheets[0]?.rows ?? [];
  const row = rows.findIndex((cells) => cells[6]?.value === "table salt" && cells[9]?.role === "words");
  expect([7, 9].map((column) => engine.value({ sheet: "Noodle", row, column }))).toEqual([0, ""]);
});

test("tells what is wanted in one row each: reached, unit, the ends that meet it, whether; and why it cannot be told", () => {
  const { flours, water, batch } = exampleData("evening-class");
  const noodle = noodleOf({
    name: "wanted",
    flours,
    water,
    batch,
    alkali: [{ name: "sodium carbonate", amount: "1 %" }],
    wanted: {
      basis: "13 % mb",
      protein: "12 % ± 0.5",
      ash: "0.3 to 0.6 %",
      addedWater: "40 %",
      doughWater: "at most 40 %",
      bowlPrice: "0.25 EUR",
    },
    weighingTolerance: "2 %",
  });
  const rows = (noodle && workbookFor(noodle).sheets[0]?.rows) ?? [];
  const top = rows.findIndex((cells) => cells[6]?.value === "Wanted");
  const said = rows.slice(top, top + 6).map((cells) => cells.slice(6).map((cell) => cell?.value ?? ""));
  // 2 % of 40 is 0.8
  expect(said.map(([label, , unit, from, to, word]) => [label, unit, from, to, word])).toEqual([
    ["Wanted", "unit", "met from", "to", ""],
    ["protein at 13 % mb", "%", 11.5, 12.5, "met"],
    ["ash at 13 % mb", "%", 0.3, 0.6, "met"],
    ["added water", "% of flour", 39.2, 40.8, "not met"],
    ["dough water", "% of dough", "", 40, "met"],
    ["cost of a bowl", "EUR", "", 0.25, "cannot be told: prices are missing"],
  ]);
  const untold = noodleOf({ name: "no bowl", flours, water, batch: { flour: "1 kg" }, wanted: { saltInBowl: "1 g" } });
  const row = untold && workbookFor(untold).sheets[0]?.rows.find((cells) => cells[6]?.value === "cannot be told");
  expect(row?.[7]?.value).toBe(
    "the salt and sodium wanted in a bowl cannot be told: the weight of a bowl is not stated",
  );
  expect(rows.map(([label]) => label?.value)).toContain("protein at 13 % mb wanted, ±");
});

test("says of what a load is, and where the number of an input and of a figure is from, and that it was typed", () => {
  const { workbook, engine, inputs, type } = inEngine("barley-egg-noodle");
  const label = (id: string) =>
    cellsOf(inEngine("school-noodle").workbook).some(({ column, cell }) => column === 0 && cell.value === id);
  expect(["largest load of flour", "smallest load of flour"].map(label)).toEqual([true, true]);
  const words = (id: string, ...at: readonly number[]) => {
    const { row = 0 } = figurePlaces(workbook).get(id) ?? {};
    const beside = inputs.find((input) => input.id === id)?.place;
    return [
      beside ? engine.value({ ...beside, column: 4 }) : "",
      ...at.map((column) => engine.value({ sheet: "Figures", row, column })),
    ];
  };
  expect(words("loss.sheeting", 3)).toEqual(["", "spec, 4 %"]);
  expect(words("loss.mixing", 3, 4)).toEqual(["not stated", "none stated", "common practice, no source"]);
  expect(words("flour.3.moisture")).toEqual(["catalogue"]);
  // the table of NDB 48052 prints no factor
  const [word, how, source] = words("flour.3.nitrogen-factor", 3, 4);
  expect([word, how]).toEqual(["assumed", "assumed, since nobody states it"]);
  expect(source).not.toContain("48052");
  type(new Map(inputs.filter(({ id }) => id === "flour.1.moisture").map((input) => [input, 13])));
  expect(words("flour.1.moisture", 3, 4)).toEqual(["changed", "typed here", "whoever typed it"]);
  const found = inEngine("friday-noodle");
  const water = found.inputs.find(({ id }) => id === "water.added-stated")?.place;
  expect(water && found.engine.value({ ...water, column: 4 })).toBe("found");
});

test("reserves what has no price until one is typed for it", () => {
  const { workbook, engine, inputs, type } = inEngine("evening-class", "metric", { wanted: { bowlPrice: "0.25 EUR" } });
  const rows = workbook.sheets[0]?.rows ?? [];
  const said = (label: string, column: number) =>
    engine.value({ sheet: "Noodle", row: rows.findLastIndex((cells) => cells[6]?.value === label), column });
  const all = () => [said("to pay", 9), said("the batch", 9), said("cost of a bowl", 11)];
  expect(all()).toEqual(["for what is priced", "what is priced of it", "cannot be told: prices are missing"]);
  const open = inputs.filter(({ takes }) => takes.optional);
  expect(open.map(({ id }) => id)).toEqual(["salt.price"]);
  const before = said("the batch", 7);
  type(new Map(open.map((input) => [input, 0.6])));
  expect(all()).toEqual(["", "", "met"]);
  expect(said("the batch", 7)).toBeGreaterThan(Number(before));
});

test("tells ingredients of one name apart", () => {
  const bag = { name: "bread flour", amount: "50 %" };
  const noodle = noodleOf({
    ...exampleData("evening-class"),
    alkali: undefined,
    flours: [bag, { ...bag, figures: { moisture: "13 %" } }],
  });
  const { sheets, names } = noodle ? workbookFor(noodle) : { sheets: [], names: [] };
  const labels = sheets[0]?.rows.flatMap((cells) => [cells[0]?.value, cells[6]?.value]) ?? [];
  expect(labels.filter((label) => /^(?:moisture of )?bread flour/u.test(String(label)))).toEqual([
    "bread flour (1)",
    "bread flour (2)",
    "bread flour (1)",
    "moisture of bread flour (1)",
    "bread flour (2)",
    "moisture of bread flour (2)",
  ]);
  expect(names.map(({ name }) => name)).toContain("moisture_of_bread_flour_2");
});
