import { askBlend, askCost, askFlourReplacement, askLot, askNutrition, readNoodleData } from "@noodlewright/core";
import type { Path } from "@noodlewright/core/figure";
import type { SpecChange } from "@noodlewright/core/spec";
import fc from "fast-check";
import { expect, test } from "vitest";
import { always } from "../../always.ts";
import { answered } from "../told-of.ts";

/** Plain data with changes made to it. */
function changed(data: unknown, changes: readonly SpecChange[]): unknown {
  return changes.reduce<unknown>((now, { path, value }) => put(now, path, value), data);
}

function put(data: unknown, [step, ...rest]: Path, value: unknown): unknown {
  if (step === undefined) return value;
  const copy = Array.isArray(data) ? [...data] : { ...(data as object) };
  const old: unknown = Reflect.get(copy, step);
  const fresh = put(old, rest, value);
  if (fresh !== undefined) Reflect.set(copy, step, fresh);
  else if (Array.isArray(copy)) copy.splice(Number(step), 1);
  else Reflect.deleteProperty(copy, step);
  return copy;
}

test("what is kept of the old lot holds at the moisture of the new one once it is written", () => {
  const tenths = (min: number, max: number) => fc.integer({ min, max }).map((value) => value / 10);
  always(
    25,
    [tenths(110, 160), tenths(110, 160), fc.constantFrom(undefined, "as is", "dry", "13 % mb")],
    (old, fresh, proteinBasis) => {
      fc.pre(old !== fresh);
      const figures = { protein: "12 %", proteinBasis, ash: "0.5 %", ashBasis: "as is", moisture: `${old} %` };
      const data = {
        name: "class noodle",
        flours: [{ name: "house flour", amount: "100 %", figures: { ...figures, absorption: "36 %" } }],
        water: { added: "36 %" },
        lot: { of: "house flour", figures: { moisture: `${fresh} %` } },
      };
      const before = answered(readNoodleData(data));
      const lot = askLot(before);
      expect(JSON.parse(JSON.stringify(lot))).not.toHaveProperty("changes");
      const after = answered(readNoodleData(changed(data, lot.ok ? lot.changes() : [])));
      const [flour, used] = [before, after].map(({ formula }) => formula.lines[0]?.material);
      const dry = (value = "0", moisture = "0"): number => Number(value) / (100 - Number(moisture));
      expect(dry(used?.protein?.value, used?.moisture)).toBeCloseTo(dry(flour?.protein?.value, flour?.moisture), 12);
      expect(dry(used?.ash, used?.moisture)).toBeCloseTo(dry(flour?.ash, flour?.moisture), 12);
      // the dough keeps its dry flour and its water; four digits are written
      const byHand = ((36 + old) * (100 - fresh)) / (100 - old) - fresh;
      expect(Math.abs(Number(used?.absorption?.percent) - byHand)).toBeLessThan(0.0051);
      expect(Math.abs(Number(after.formula.water.added.value) - byHand)).toBeLessThan(0.0051);
    },
  );
});

/** The flour that a spec weighs out for its costs, kg, and what it is to be paid for, not rounded to coins. */
function costed(data: unknown) {
  const lines = answered(askCost(answered(readNoodleData(data)))).lines.flatMap(({ weighed: { line, batch } }) =>
    line.role === "flour" ? [{ line, mass: Number(batch.value) / 1000 }] : [],
  );
  const kilograms = new Map(lines.map(({ line, mass }) => [line.name, mass]));
  const price = lines.reduce((all, { line, mass }) => all + mass * Number(line.material.price?.perKilogram), 0);
  return { kilograms, price };
}

test("the batch price, the store and the bags that a new blend is told to take are those of the costs once it is written", () => {
  const names = ["pale flour", "middle flour", "dark flour", "vital wheat gluten"] as const;
  const [moisture, absorption] = [
    fc.integer({ min: 80, max: 160 }).map((tenths) => `${tenths / 10} %`),
    fc.option(fc.integer({ min: 30, max: 45 }), { nil: undefined }),
  ];
  const flour = fc.record({ moisture, absorption, price: fc.integer({ min: 80, max: 300 }) });
  const way = fc.constantFrom("added", "tap");
  const have = (name: string, amount: string) => ({ have: { name, amount } });
  const batches = fc.constantFrom({ dough: "20 kg" }, have("middle flour", "7 kg"), have("tap water", "5 kg"));
  const bags = fc.constantFrom({}, { bag: "1 kg" });
  const kitchens = fc.tuple(way, batches, bags, fc.integer({ min: 90, max: 130 }));
  always(30, [fc.tuple(flour, flour, flour, flour), kitchens], (all, [water, batch, bag, percent]) => {
    const figures = all.map(({ moisture: own, absorption: takes }, index) => ({
      protein: `${[10, 12, 14, 78][index]} %`,
      moisture: own,
      ...(takes !== undefined && { absorption: `${takes + (index === 3 ? 110 : 0)} %` }),
    }));
    const [first, second, third, gluten] = figures;
    const data = {
      name: "class noodle",
      flours: [
        { name: names[0], amount: "70 %", figures: first },
        { name: names[1], amount: "30 %", figures: second },
      ],
      shelf: { [names[2]]: { figures: third, ...bag }, [names[3]]: { share: "at most 5 %", figures: gluten } },
      prices: Object.fromEntries(names.map((name, at) => [name, `${(all[at]?.price ?? 0) / 100} EUR/kg`])),
      water: { [water]: "36 %" },
      batch,
      scales: [{ division: "0.001 g", capacity: "40 kg" }],
    };
    const now = costed(data);
    const wanted = { protein: "at least 12.2 %", batchPrice: `${((now.price * percent) / 100).toFixed(2)} EUR` };
    const stock = Object.fromEntries(names.map((name) => [name, "9 kg"]));
    const asked = { ...data, wanted, stock };
    for (const found of [
      askBlend(answered(readNoodleData(asked))),
      askFlourReplacement(answered(readNoodleData(asked)), { missing: "pale flour" }),
    ]) {
      const { answer } = found.ok ? found.value : {};
      if (answer?.kind !== "found") continue;
      const [blend] = answer.blends;
      const written = changed(data, found.ok ? found.changes() : []);
      const { formula } = answered(readNoodleData(written));
      // a flour that is dropped is gone from the list, with its allergens
      const flours = formula.lines.filter(({ role }) => role === "flour").map(({ name }) => name);
      expect(flours.toSorted()).toEqual(blend?.shares.map(({ name }) => name).toSorted());
      const after = costed(written);
      // the water is written to the hundredth, of 36 where it is what there is
      const near = (told: string, paid = 0): void => expect(Math.abs(Number(told) / paid - 1)).toBeLessThan(1.5e-4);
      for (const { id, label, reached, holds } of blend?.checks ?? []) {
        expect(`${label}: ${holds}`).toBe(`${label}: true`);
        if (id === "price-of-the-flour-of-the-batch.most") near(reached, after.price);
        if (id.startsWith("bag.") && Number(reached) > 0)
          near(`${Math.round(Number(reached))}`, after.kilograms.get(label));
        if (id.startsWith("store.")) near(reached, after.kilograms.get(label.replace(" from the store", "")));
      }
      const price = blend?.figures.find(({ id }) => id === "blend.batch-price");
      near(price?.value ?? "", after.price);
    }
  });
});

test("a flour at 0 % brings no allergen", () => {
  const bread = { name: "bread flour", amount: "100 %" };
  const data = {
    name: "class noodle",
    flours: [bread, { name: "barley flour", amount: "0 %" }],
    water: { added: "36 %" },
  };
  const noodle = answered(readNoodleData(data));
  expect(noodle.formula.allergens).toEqual(["wheat"]);
  expect(noodle.formula.blend.allergens).toEqual(["wheat"]);
  expect(answered(askNutrition(noodle)).allergens.contains.flatMap(({ materials }) => materials)).not.toContain(
    "barley flour",
  );
});
