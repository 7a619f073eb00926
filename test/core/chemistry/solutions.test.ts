import { told } from "@noodlewright/core";
import {
  type Amount,
  blendStocks as blend,
  type Composition,
  correct,
  dilute,
  hydrate,
  makeUp,
  mixture,
  pure,
  type Recipe,
  severalStock,
  staysClear,
} from "@noodlewright/core/chemistry";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anhydrousShare, potassiumCarbonateShare, solutionOf, waterOnly } from "#core/chemistry/composition.ts";
import { mixInRatio } from "#core/chemistry/ratio.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { answered, codesOf } from "../told-of.ts";
import { amount, apart, distance, drySalts, wetProduct } from "./given.ts";

const percent = (value: string) => ({ measure: "mass-percent", value }) as const;
const here = { temperature: "20", scale: "145" } as const;
const soda = { name: "soda", composition: pure("Na2CO3") };
const potash = { name: "potash", composition: pure("K2CO3") };
const crystals = { name: "soda crystals", composition: hydrate("Na2CO3.10H2O") };

/** Soda and water of a strength. */
const ofSoda = (strength: string, amount: Amount, more: object = {}) =>
  makeUp({
    products: [{ ...soda, parts: 1 }],
    ratioBy: "as-weighed",
    target: percent(strength),
    amount,
    ...here,
    ...more,
  });

/** What the amounts of a recipe come to when they are really brought together. */
function together(recipe: Recipe, products: readonly Composition[]): Composition {
  const salts = products.map((composition, index) => ({ composition, mass: recipe.amounts[index]?.value ?? "0" }));
  return mixture([...salts, { composition: waterOnly, mass: recipe.water.value }]);
}

test("a make-up's species add up to the species asked for", () => {
  always(
    50,
    [wetProduct, drySalts, amount(1, 9), amount(1, 9), amount(0.5, 15), amount(10, 5000)],
    (one, other, first, second, strength, grams) => {
      const recipe = makeUp({
        products: [
          { name: "one", composition: one, parts: first },
          { name: "other", composition: other, parts: second },
        ],
        ratioBy: "anhydrous",
        target: percent(strength),
        amount: { grams },
        ...here,
      });
      const made = answered(recipe);
      expect(distance(together(made, [one, other]), made.composition)).toBeLessThan(1e-20);
      const total = sum([...made.amounts, made.water].map(({ value }) => dec(value)));
      expect(apart(total.toString(), grams)).toBeLessThan(1e-20);
      const anhydrous = [one, other].map((composition, index) =>
        anhydrousShare(composition).times(made.amounts[index]?.value ?? 0),
      );
      const ratio = anhydrous[0]
        ?.div(anhydrous[1] ?? 1)
        .div(dec(first).div(second))
        .minus(1)
        .abs();
      expect(ratio?.lt("1e-20")).toBe(true);
    },
  );
});

test("dilution conserves every species", () => {
  always(50, [wetProduct, amount(1, 2000), fc.integer({ min: 1, max: 99 })], (stock, mass, part) => {
    const aim = anhydrousShare(stock).times(part).div(100).toString();
    const recipe = answered(
      dilute({
        stock: { name: "stock", composition: stock, mass },
        target: percent(aim),
        ...here,
      }),
    );
    for (const [name, share] of Object.entries(stock.species)) {
      const before = dec(share).times(mass);
      const after = dec(recipe.composition.species[name as "Na2CO3"] ?? 0).times(recipe.mass.value);
      expect(before.minus(after).abs().lt(before.times("1e-20"))).toBe(true);
    }
    expect(distance(together(recipe, [stock]), recipe.composition)).toBeLessThan(1e-20);
  });
});

test("a litre of 10 % soda by hand: density 1.1036 at 20 °C, 110.4 g of soda, 993.2 g of water", () => {
  const recipe = answered(ofSoda("10", { millilitres: 1000 }));
  expect(Number(recipe.amounts[0]?.value)).toBeCloseTo(110.36, 1);
  expect(Number(recipe.water.value)).toBeCloseTo(993.2, 1);
  expect(apart(recipe.volume?.value ?? "0", "1000")).toBeLessThan(1e-20);
  expect(Number(recipe.strength.baume?.value)).toBeCloseTo(13.92, 1);
});

test("nine to one of anhydrous salts from crystals: the crystal water is allowed for", () => {
  const recipe = answered(
    makeUp({
      products: [
        { ...potash, parts: 1 },
        { ...crystals, parts: 9 },
      ],
      ratioBy: "anhydrous",
      target: percent("10"),
      amount: { grams: 1000 },
      ...here,
    }),
  );
  expect(Number(recipe.amounts[0]?.value)).toBeCloseTo(10, 9);
  expect(Number(recipe.amounts[1]?.value)).toBeCloseTo(242.975, 2);
});

test("a ratio by anhydrous salts and one as weighed differ by the crystal water", () => {
  const products = [
    { ...potash, parts: 1 },
    { ...crystals, parts: 1 },
  ];
  expect(Number(potassiumCarbonateShare(mixInRatio(products, "anhydrous")))).toBeCloseTo(50, 12);
  // By hand: crystals are 37.04 % soda, so potash is 100 / 137.04 of the carbonates.
  expect(Number(potassiumCarbonateShare(mixInRatio(products, "as-weighed")))).toBeCloseTo(72.971, 3);
});

test("a strong soda stock grows crystals in the fridge, and the recipe says so", () => {
  const outcome = ofSoda("15", { grams: 1000 }, { storage: "4" });
  expect(answered(outcome).made?.verdict).toBe("clear");
  expect(answered(outcome).kept?.verdict).toBe("crystals");
  expect(outcome.ok && outcome.notes.map(({ code }) => code)).toContain("solutions.crystals");
});

test("hydroxide and bicarbonate react, and the recipe says so", () => {
  const outcome = makeUp({
    products: [
      { name: "lye", composition: pure("NaOH"), parts: 1 },
      { name: "baking soda", composition: pure("NaHCO3"), parts: 1 },
    ],
    ratioBy: "as-weighed",
    target: percent("4"),
    amount: { grams: 100 },
    ...here,
  });
  expect(outcome.ok && outcome.notes.map(({ code }) => code)).toContain("solutions.reaction");
});

describe("blending two stocks", () => {
  const first = { name: "soda stock", composition: { species: { Na2CO3: "15" }, water: "85", inert: "0" } };
  const second = { name: "potash stock", composition: { species: { K2CO3: "40" }, water: "60", inert: "0" } };

  test("meets strength and ratio", () => {
    always(50, [amount(1, 99), amount(0.5, 14.9)], (share, strength) => {
      const recipe = answered(
        blend({
          stocks: [first, second],
          target: percent(strength),
          potassiumShare: share,
          amount: { grams: 1000 },
          ...here,
        }),
      );
      expect(potassiumCarbonateShare(recipe.composition)?.minus(share).abs().lt("1e-18")).toBe(true);
      expect(anhydrousShare(recipe.composition).minus(strength).abs().lt("1e-18")).toBe(true);
      expect(distance(together(recipe, [first.composition, second.composition]), recipe.composition)).toBeLessThan(
        1e-18,
      );
    });
  });

  test("names the reach of the stocks", () => {
    const wish = { stocks: [first, second] as const, amount: { grams: 1000 }, ...here };
    expect(codesOf(blend({ ...wish, target: percent("39"), potassiumShare: 50 }))).toEqual(["solution.too-strong"]);
  });
});

describe("correcting a batch", () => {
  const batch = (share: string) => ({
    name: "batch",
    composition: { species: { Na2CO3: share }, water: dec(100).minus(share).toString(), inert: "0" },
    mass: "1000",
  });
  const target = percent("10");

  test("too strong: water; too weak: salts", () => {
    const strong = answered(correct({ batch: batch("12"), target, salts: soda, ...here }));
    expect(strong.water.value).toBe("200");
    const weak = answered(correct({ batch: batch("9"), target, salts: soda, ...here }));
    // By hand: 1000 × (10 − 9) / (100 − 10) = 11.11 g
    expect(Number(weak.amounts[1]?.value)).toBeCloseTo(11.1111, 4);
    expect(anhydrousShare(weak.composition).minus(10).abs().lt("1e-20")).toBe(true);
  });

  test("what is itself too weak does not help", () => {
    expect(codesOf(correct({ batch: batch("9"), target, salts: batch("9.5"), ...here }))).toEqual([
      "solution.too-strong",
    ]);
  });
});

describe("a correction in a tank, from a reading", () => {
  const made = { name: "batch", composition: { species: { Na2CO3: "12" }, water: "88", inert: "0" }, mass: "4000" };
  const target = percent("10");
  const notes = (more: object): string => {
    const outcome = correct({ batch: made, target, salts: soda, ...here, ...more });
    return outcome.ok ? outcome.notes.map(told).join("\n") : "refused";
  };

  test("says what either end of the strength takes", () => {
    // By hand: 4000 × (11.5 / 10 − 1) and 4000 × (12.5 / 10 − 1) g of water, and 4000 × 0.5 / 90 g of soda.
    expect(notes({ within: { low: "11.5", high: "12.5" } })).toMatch(/600 g of water.*1000 g of water/u);
    expect(notes({ within: { low: "9.5", high: "12.5" } })).toMatch(/22 g of soda.*1000 g of water/u);
  });

  test("says where it overfills the tank, and how much would fit", () => {
    // 4800 g of 10 % soda at 1.1029 g/mL (CRC Handbook 2021) fill 4.35 L.
    expect(notes({ tank: "4000" })).toMatch(/fills 4\.3[5-7] L, more than the 4\.00 L of the tank/u);
    expect(notes({ tank: "4500" })).not.toContain("tank");
  });

  test("no solution is made of ice or steam", () => {
    const cold = { ...here, temperature: "-5" };
    expect(codesOf(correct({ batch: made, target, salts: soda, ...cold }))).toEqual(["solutions.temperature"]);
  });
});

test("a hydrometer strength aimed at carries the doubt of the fit", () => {
  const stated = { measure: "degrees-baume", scale: "145", value: "20" } as const;
  const asked = {
    products: [{ ...potash, parts: 1 }],
    ratioBy: "anhydrous",
    amount: { grams: 1000 },
    ...here,
  } as const;
  const outcome = makeUp({ ...asked, target: stated });
  expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(
    expect.arrayContaining(["strength.read-at", "strength.fit"]),
  );
  const volume = answered(makeUp({ ...asked, target: stated, amount: { millilitres: 1000 } }));
  expect(volume.mass.range?.why).toContain("potassium carbonate");
});

test("a stock of salts that keep each other back is as strong as stays clear, and no stronger", () => {
  const both = { name: "powder", composition: { species: { KHCO3: "50", NaCl: "50" }, water: "0", inert: "0" } };
  const wish = { scales: [{ division: "0.1" }], tolerance: "1", loads: 5, storage: 20, ...here };
  const { recipe } = answered(severalStock({ products: [{ ...both, mass: 3000 }], ...wish }));
  expect(recipe.kept?.verdict).toBe("clear");
  // a round dose is at most a tenth more than the least, and each salt may be 1 % more
  const stronger = dec(anhydrousShare(recipe.composition)).times("1.13");
  const next = answered(solutionOf(both.composition, stronger));
  expect(answered(staysClear(next, 20)).verdict).not.toBe("clear");
});

test("nothing to dilute or to correct is refused, and no carbonate to count a ratio by", () => {
  const target = percent("1");
  const batch = {
    name: "batch",
    composition: { species: { Na2CO3: "9" }, water: "91", inert: "0" },
    mass: "0",
  } as const;
  expect(codesOf(dilute({ stock: batch, target, ...here }))).toEqual(["solutions.amount"]);
  expect(codesOf(correct({ batch, target, salts: soda, ...here }))).toEqual(["solutions.amount"]);
  const products = [{ name: "salt", composition: pure("NaCl"), parts: 1 }] as const;
  expect(codesOf(makeUp({ ratioBy: "anhydrous", products, target, amount: { grams: 1 }, ...here }))).toEqual([
    "solutions.parts",
  ]);
});

describe("a stock for weighing", () => {
  const wish = {
    products: [{ ...soda, mass: "8" }],
    scales: [{ division: "1" }],
    tolerance: "1",
    loads: "20",
    storage: "20",
    temperature: "20",
    scale: "145",
  } as const;

  test("is weak enough for the scale and stays clear", () => {
    const stock = answered(severalStock(wish));
    // By hand: half a gram is 1 % of 50 g; 21.5 g of soda in 100 g of water is the limit, four fifths of it 17.2 g: 8 g in 47 g.
    expect(stock.perLoad.value).toBe("55");
    expect(Number(stock.error.value)).toBeLessThanOrEqual(1);
    expect(stock.recipe.kept?.verdict).toBe("clear");
    expect(stock.recipe.amounts[0]?.value).toBe("160");
    expect(stock.lasts.value).toBe("20");
    expect(Number(stock.dryError.value)).toBeCloseTo(6.25, 9);
    const strength = Number(stock.recipe.strength.massPercent.value);
    expect(Number(stock.water.value)).toBeCloseTo(55 * (1 - strength / 100), 9);
  });

  test("is weaker in the cold", () => {
    const warm = answered(severalStock(wish));
    const cold = answered(severalStock({ ...wish, storage: "4" }));
    expect(Number(cold.recipe.strength.massPercent.value)).toBeLessThan(Number(warm.recipe.strength.massPercent.value));
    expect(cold.recipe.kept?.verdict).toBe("clear");
  });

  test("is said not to be needed where the salts can be weighed", () => {
    const outcome = severalStock({ ...wish, scales: [{ division: "0.1" }] });
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toContain("stock.not-needed");
  });

  test("of several salts is needed where one of them is too little for the scale", () => {
    // By hand: half a gram is 0.05 % of 1000 g and 2.5 % of 20 g.
    const products = [
      { ...soda, mass: "1000" },
      { ...potash, mass: "20" },
      { ...crystals, mass: "0" },
    ] as const;
    const outcome = severalStock({ ...wish, products });
    expect(answered(outcome).dryError.value).toBe("2.5");
    expect(answered(outcome).recipe.amounts).toHaveLength(2);
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).not.toContain("stock.not-needed");
    const fine = severalStock({ ...wish, scales: [{ division: "0.1" }], products });
    expect(fine.ok && fine.notes.map(({ code }) => code)).toContain("stock.not-needed");
  });

  test("is made for more loads where those to come need too little to weigh", () => {
    // By hand: 5 loads of 8 g are 40 g, which half a gram changes by 1.25 %; 7 loads are 56 g.
    expect(answered(severalStock({ ...wish, loads: "5" })).lasts.value).toBe("7");
    const fine = { division: "0.1", capacity: "300" };
    // 5 g on the fine scale are enough; what it does not take, the coarse one weighs
    const two = answered(severalStock({ ...wish, loads: "1", scales: [{ division: "5" }, fine] }));
    expect([two.lasts.value, two.recipe.amounts[0]?.value]).toEqual(["1", "8"]);
  });

  test("of salts that nobody knows to stay clear together is refused", () => {
    const phosphate = { name: "phosphate", composition: pure("Na2HPO4"), mass: "4" };
    const wanted = { ...wish, products: [{ ...soda, mass: "8" }, phosphate] };
    // no activities of phosphate ions are at hand, and its sodium keeps soda from dissolving
    expect(
      answered(staysClear(mixture([{ ...soda, mass: 8 }, phosphate, { composition: waterOnly, mass: 10_000 }]), 20))
        .verdict,
    ).toBe("not known");
    expect(codesOf(severalStock(wanted))).toEqual(["stock.not-clear"]);
  });
});
