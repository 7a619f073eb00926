import { readFileSync } from "node:fs";
import * as core from "@noodlewright/core";
import { compositionOf, listSalts, makeUp, pure, splitByEndPoints } from "@noodlewright/core/chemistry";
import { searchBlend, squareRule } from "@noodlewright/core/explore";
import { type Path, pathText, recalculated } from "@noodlewright/core/figure";
import { gainFromWeights, momentAt } from "@noodlewright/core/sheet";
import { readKitchenFile } from "@noodlewright/core/spec";
import { expect, it } from "vitest";
import { parse } from "yaml";
import { catalogue } from "#core/materials/catalogue.ts";
import { nearestNames } from "#core/materials/nearest.ts";
import { unusualFigures } from "#core/materials/usual.ts";

const example = (file: string): unknown =>
  parse(readFileSync(new URL(`../../../examples/${file}`, import.meta.url), "utf8"));

function answered<T>(outcome: { readonly ok: true; readonly value: T } | { readonly ok: false }): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

/** The codes of problems, each with its place. */
function refusals(outcome: { readonly ok: boolean; readonly problems?: readonly core.Problem[] }): readonly string[] {
  return (outcome.problems ?? []).map(({ code, path }: { code: string; path: Path }) => `${code} ${pathText(path)}`);
}

const plain = {
  name: "class noodle",
  flours: [{ name: "bread flour", amount: "100 %" }],
  water: { added: "36 %" },
  batch: { dough: "1 kg" },
} as const satisfies core.SpecInput;
const kitchen = answered(readKitchenFile(example("harbour-store.yaml")));
const school = answered(core.readNoodleData(example("school-noodle.yaml"), { kitchens: [kitchen] }));
const noodle = answered(core.readNoodle(plain));

/** A solution of soda, with what is changed of it. */
const made = (division: string) =>
  makeUp({
    products: [{ name: "soda", composition: pure("Na2CO3"), parts: 1 }],
    ratioBy: "anhydrous",
    target: { measure: "mass-percent", value: "10" },
    amount: { grams: 1000 },
    temperature: "20",
    scale: "145",
    division,
  });
const ends = { phenolphthalein: "10", total: "20", normality: "1", sample: "1.06", potassium: "0" };

it.each([
  [compositionOf({ species: JSON.parse('{ "Na2C03": "60", "K2CO3": "40" }') }), "composition.unknown species.Na2C03"],
  [made("0"), "solutions.division division"],
  [splitByEndPoints({ ...ends, sample: "0" }), "titration.value "],
  [splitByEndPoints({ ...ends, potassium: "101" }), "figure.impossible potassium"],
  [core.explain(noodle.formula, "flour.9"), 'figure.unknown "flour.9"'],
  [recalculated(noodle.formula.graph, { "water.added-stated": `38.${"1".repeat(40)}` }), "figure.no-number"],
  [recalculated(noodle.formula.graph, JSON.parse('{ "water.added-stated": ["38"] }')), "figure.no-number"],
  [core.readNoodleData({ ...plain, include: ["store.yaml"], flours: [{ name: "mill flour", amount: "100 %" }] }), ""],
])("what is told from outside is refused at its place: %#", (outcome, code) => {
  expect(refusals(outcome)[0]).toContain(code === "" ? "noodle.not-handed-over include" : code);
});

it.each([
  [() => compositionOf({ species: { Na2CO3: "60 %" } }), 'Na2CO3: "60 %" is no decimal number'],
  [() => gainFromWeights("100 g", "180"), 'raw: "100 g" is no decimal number'],
  [() => pure("Na2CO3", "150"), "assayPercent: 150 is no share of 0 to 100 %"],
  [() => momentAt(Number.NaN), "minute: NaN is no number of minutes"],
  [
    () =>
      squareRule({
        one: { name: "soft", protein: "8 %", moisture: "14" },
        other: { name: "strong", protein: "13", moisture: "14" },
        target: "10",
        basis: { kind: "as is" },
      }),
    'protein of soft: "8 %" is no decimal number',
  ],
  [
    () =>
      searchBlend({
        flours: [{ name: "soft", protein: "8.3 %", moisture: "14" }],
        targets: {},
        prefer: { kind: "fewest" },
      }),
    'flours.0.protein: "8.3 %" is no decimal number',
  ],
])("a number that is none is a bug of the caller, told by its name: %#", (call, words) => {
  expect(call).toThrow(new RangeError(words));
});

it("takes nothing for a noodle that reading did not make", () => {
  const wish = { date: "2026-11-26" };
  const foreign = structuredClone(school);
  const asks: readonly ((one: core.Noodle) => unknown)[] = [
    core.askBatch,
    core.askBlend,
    core.askCost,
    core.askDay,
    core.askFormula,
    core.askLot,
    core.askSettle,
    core.askSheet,
    core.askStyle,
    core.askTolerance,
    core.askTrial,
    core.askWater,
    core.askWorkbook,
    core.missed,
    core.shortPortions,
    (one) => core.askCard(one, wish),
    (one) =>
      core.askCompare([
        { name: "a", noodle: one },
        { name: "b", noodle: one },
      ]),
    (one) => core.askFlourReplacement(one, { missing: "bread flour" }),
    (one) => core.askIngredientReplacement(one, { missing: "whole egg", by: "dried whole egg" }),
    (one) => core.askMend(one, { weighed: [] }),
    (one) => core.askNutrition(one),
  ];
  for (const ask of asks) expect(() => ask(foreign)).toThrow(/a noodle is made by readNoodle; it is not data/u);
});

const nothing = null as never;
const wishes: readonly (readonly [
  name: string,
  ask: (wish: never) => object,
  odd: readonly (readonly [unknown, string])[],
])[] = [
  [
    "readNoodle",
    (wish) => core.readNoodle(plain, wish),
    [
      [{ units: "imperial" }, "spec.choice units"],
      [{ kitchens: [null] }, "spec.type kitchens[0]"],
      [{ kitchens: kitchen }, "spec.type kitchens"],
      [{ kitchen: [] }, "spec.unknown-key kitchen"],
      [
        { kitchens: [{ materials: { flour: { moisture: 13, ash: "x" } } }] },
        "quantity.unreadable kitchens[0].materials.flour.moisture,quantity.unreadable kitchens[0].materials.flour.ash",
      ],
    ],
  ],
  [
    "askCard",
    (wish) => core.askCard(noodle, wish),
    [
      [{}, "spec.missing date"],
      [{ date: 20261126 }, "spec.type date"],
      [{ date: "2026-11-26", loads: 1 }, "spec.type loads"],
      [{ date: "2026-11-26", files: [{}] }, "spec.missing files[0].name,spec.missing files[0].checksum"],
    ],
  ],
  [
    "askFlourReplacement",
    (wish) => core.askFlourReplacement(noodle, wish),
    [
      [{ missing: nothing }, "spec.type missing"],
      [{ missing: "bread flour", hold: ["protein"] }, "spec.type hold"],
    ],
  ],
  [
    "askIngredientReplacement",
    (wish) => core.askIngredientReplacement(noodle, wish),
    [[{ missing: "egg" }, "spec.missing by"]],
  ],
  ["askLot", (wish) => core.askLot(noodle, wish), [[{ hold: 5 }, "spec.type hold"]]],
  [
    "askMend",
    (wish) => core.askMend(noodle, wish),
    [
      [{ weighed: {} }, "spec.type weighed"],
      [{ weighed: [{ name: "tap water", amount: 3170 }] }, "spec.type weighed[0].amount"],
      [{ weighed: [], noMore: "salt" }, "spec.type noMore"],
    ],
  ],
  [
    "askNutrition",
    (wish) => core.askNutrition(noodle, wish),
    [
      [{ rules: "UK" }, "spec.choice rules"],
      [{ jurisdiction: 1 }, "spec.choice jurisdiction"],
    ],
  ],
  [
    "askTolerance",
    (wish) => core.askTolerance(noodle, wish),
    [
      [{ seed: "7" }, "spec.type seed"],
      [{ seed: 0, draws: Number.NaN }, "spec.size seed,spec.type draws"],
      [{ draws: 100_001 }, "spec.size draws"],
    ],
  ],
  [
    "askTrial",
    (wish) => core.askTrial(noodle, wish),
    [
      [{ flour: 200 }, "quantity.unreadable flour"],
      [{ step: "50 %" }, "quantity.out-of-range step"],
      [{ steps: "1 %" }, "spec.unknown-key steps"],
    ],
  ],
];

it.each(wishes)("%s tells what is wrong with a wish that no compiler saw", (_name, ask, odd) => {
  for (const wish of [null, 1, "wish", ["wish"]]) expect(refusals(ask(wish as never) as never)).toEqual(["spec.type "]);
  for (const [wish, told] of odd) expect(refusals(ask(wish as never) as never).join()).toBe(told);
});

it("tells what is wrong with what is compared and looked up", () => {
  expect(refusals(core.askCompare(nothing))).toEqual(["spec.type "]);
  expect(refusals(core.askCompare([nothing]))).toEqual(["spec.type [0]"]);
  expect(refusals(core.askCompare([{ name: nothing, noodle }]))).toEqual(["spec.type [0].name"]);
  expect(refusals(core.listWords(nothing))).toEqual(["spec.type "]);
  expect(refusals(core.listMaterials(nothing, "sand" as never))).toEqual(["spec.type words", "spec.choice kind"]);
  expect(refusals(listSalts(nothing))).toEqual(["spec.type words"]);
});

it("reads a noodle in a copy of a kitchen that was read, and in the data of one", () => {
  const formula = school.formula.water.tap.value;
  const copies = [structuredClone(kitchen), { ...kitchen }, JSON.parse(JSON.stringify(kitchen)) as typeof kitchen];
  for (const copy of copies) {
    const again = core.readNoodleData(example("school-noodle.yaml"), { kitchens: [copy] });
    expect(answered(again).formula.water.tap.value).toBe(formula);
  }
  const data = { materials: { "mill flour": { kind: "flour", moisture: "12 %" } } } as const;
  const flours = [{ name: "mill flour", amount: "100 %" }] as const;
  expect(core.readNoodle({ ...plain, flours }, { kitchens: [data] }).ok).toBe(true);
});

it.each([
  [{ moisture: "1.4 %" }, ["moisture"]],
  [{ moisture: "40 %" }, ["moisture"]],
  [{ protein: "1.24 %", proteinBasis: "as is" }, ["protein"]],
  [{ protein: "50 %", proteinBasis: "as is" }, ["protein"]],
  [{ moisture: "12 %", protein: "12 %", proteinBasis: "as is" }, []],
])("a flour of %j is told to be unlike others", (figures, told) => {
  const outcome = core.readNoodleData({ ...plain, flours: [{ ...plain.flours[0], figures }] });
  const notes = outcome.ok ? outcome.notes.filter(({ code }) => code === "materials.unusual") : [];
  expect(notes.map(({ facts }) => "figure" in facts && facts.figure)).toEqual(told);
});

it("tells nothing of the catalogue's own flours, starches and glutens", () => {
  expect(catalogue().flatMap((one) => unusualFigures(one, one.name, []))).toEqual([]);
});

it("suggests no short word of which half is another", () => {
  expect(nearestNames("UK", ["US", "EU", "JP"])).toEqual([]);
  expect(nearestNames("slat", ["salt", "soda"])).toEqual(["salt"]);
});

it("tells a code that it does not know by the code", () => {
  const future = JSON.parse('{ "code": "future.code", "path": [], "facts": {} }') as core.Problem;
  expect(core.told(future)).toMatchObject({ found: expect.stringContaining("future.code") });
});

it("writes one minus sign in the working of a figure", () => {
  const { graph } = answered(core.askWater(school));
  const cold = answered(recalculated(graph, { "flour.temperature": "40" }));
  const { lines } = answered(core.explain({ graph: cold }, "water.temperature"));
  expect(lines.filter((line) => !line.startsWith("source:")).join("\n")).not.toMatch(/-\d/u);
  expect(lines.join("\n")).toContain("−");
});

it("says that a way of working no longer stands once its inputs would take another", () => {
  const { graph } = answered(core.askWater(school));
  const found = (changes: Readonly<Record<string, string>>) => {
    const again = recalculated(graph, changes);
    return again.ok ? again.notes.flatMap(({ facts }) => ("labels" in facts ? facts.labels : [])) : refusals(again);
  };
  expect(found({ "flour.temperature": "21" })).toEqual([]);
  expect(found({ "flour.temperature": "40" })).toEqual(["water temperature"]);
  expect(found({ "flour.temperature": "-29", "dough.temperature": "50" })).toEqual([
    'figure.impossible "water.temperature"',
  ]);
});
