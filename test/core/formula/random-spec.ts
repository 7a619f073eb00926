import fc from "fast-check";
import type { Written } from "./worked-out.ts";

/** Random specs as a kitchen might write them: figures with the digits of a certificate, amounts with those of a scale. */

/** A percentage with two decimals. */
export const percent = (least: number, most: number): fc.Arbitrary<string> =>
  fc.integer({ min: Math.round(least * 100), max: Math.round(most * 100) }).map((n) => `${n / 100} %`);

const ownFlour = fc.record({
  moisture: percent(8, 16),
  protein: percent(6, 16),
  proteinBasis: fc.constantFrom("as is", "dry", "14 % mb", "13.5 % mb"),
  nitrogenFactor: fc.constantFrom(5.7, 5.83, 6.25),
  ash: percent(0.3, 2),
  ashBasis: fc.constantFrom("as is", "dry", "14 % mb"),
  glutenForming: fc.boolean(),
  wholegrain: fc.boolean(),
  // one price for all that are called the same
  price: fc.constant("0.95 EUR/kg"),
});

const namedFlour = fc.constantFrom(
  "bread flour",
  "cake flour",
  "whole wheat flour",
  "vital wheat gluten",
  "cornstarch",
);

const oneFlour = fc.oneof(
  namedFlour.map((name) => ({ name })),
  ownFlour.map((figures) => ({ name: "house flour", figures })),
  fc.tuple(namedFlour, percent(8, 16)).map(([name, moisture]) => ({ name, figures: { moisture } })),
);

/** One to four flours whose shares total 100 %, the last of them written as rest or not. */
export const flours: fc.Arbitrary<Written["flours"]> = fc
  .tuple(
    fc.array(fc.tuple(oneFlour, fc.integer({ min: 1, max: 2400 })), { minLength: 0, maxLength: 3 }),
    oneFlour,
    fc.boolean(),
  )
  .map(([some, last, asRest]) => {
    const left = 10_000 - some.reduce((total, [, share]) => total + share, 0);
    return [
      ...some.map(([flour, share]) => ({ ...flour, amount: `${share / 100} %` })),
      { ...last, amount: asRest ? "rest" : `${left / 100} %` },
    ];
  });

const product = fc.oneof(
  fc
    .constantFrom(
      "sodium carbonate",
      "potassium carbonate",
      "sodium carbonate decahydrate",
      "potassium carbonate sesquihydrate",
      "sodium bicarbonate",
    )
    .map((name) => ({ name })),
  fc.integer({ min: 5, max: 25 }).map((potash) => ({
    name: "kitchen liquor",
    figures: { composition: { K2CO3: `${potash} %`, Na2CO3: "12 %", water: "rest" } },
  })),
);

const dose = fc.oneof(
  percent(0.05, 1.5).map((amount) => ({ amount })),
  percent(0.05, 1.5).map((amount) => ({ amount, as: "anhydrous salts" as const })),
  percent(0.05, 1.5).map((amount) => ({ amount, as: "alkalinity" as const })),
  fc.integer({ min: 5, max: 250 }).map((tenths) => ({ amount: `${tenths / 10} meq` })),
);

const ingredient = fc.oneof(
  fc.record({ name: fc.constantFrom("whole egg", "egg yolk", "cornstarch"), amount: percent(0.1, 12) }),
  fc.record({ name: fc.constant("table salt"), amount: percent(0.1, 3) }),
);

const water: fc.Arbitrary<Written["water"]> = fc.oneof(
  percent(45, 70).map((added) => ({ added })),
  percent(25, 50).map((tap) => ({ tap })),
  percent(38, 50).map((dough) => ({ dough })),
);

const reference = fc.option(percent(12, 15), { nil: undefined, freq: 2 });

/** A whole formula in percent. */
export const formulas: fc.Arbitrary<Written> = fc
  .record({
    flours,
    water,
    reference,
    alkali: fc.array(fc.tuple(product, dose), { maxLength: 2 }),
    salt: percent(0, 3),
    ingredients: fc.array(ingredient, { maxLength: 2 }),
    dusting: fc.option(percent(0.5, 3), { nil: undefined }),
  })
  .map(({ reference: onFlourMoisture, alkali, dusting, ...written }) => ({
    ...written,
    water: { ...written.water, ...(onFlourMoisture && { onFlourMoisture }) },
    alkali: alkali.map(([one, amount]) => ({ ...one, ...amount })),
    ...(dusting && { dusting: { name: "cornstarch", amount: dusting } }),
  }));

const gramScale = fc.constantFrom("0.01 g", "0.1 g", "0.5 g", "1 g", "2 g", "5 g");
const metricScales = fc
  .tuple(gramScale, gramScale, fc.integer({ min: 100, max: 900 }))
  .map(([any, small, capacity]) => [
    { name: "bench scale", division: any },
    { name: "small scale", division: small, capacity: `${capacity} g` },
  ]);
const usScales = fc.constantFrom("0.05 oz", "0.1 oz", "1/8 oz", "0.5 oz").map((division) => [{ division }]);

/** The kitchen of a batch: size, mixer, losses, scales. */
export const kitchens: fc.Arbitrary<Partial<Written>> = fc.record({
  batch: fc.oneof<fc.Arbitrary<NonNullable<Written["batch"]>>[]>(
    fc
      .tuple(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 800, max: 2000 }))
      .map(([bowls, weight]) => ({ bowls, rawWeight: `${weight / 10} g` })),
    fc
      .tuple(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 150, max: 320 }))
      .map(([bowls, weight]) => ({ bowls, cookedWeight: `${weight} g`, cookGain: 1.85 })),
    fc.integer({ min: 200, max: 90_000 }).map((dough) => ({ dough: `${dough} g` })),
    fc.integer({ min: 1, max: 200 }).map((flour) => ({ flour: `${flour} lb` })),
  ),
  mixer: fc.integer({ min: 2, max: 30 }).map((kilograms) => ({ largest: `${kilograms} kg` })),
  losses: fc.record({ mixing: percent(0, 2), sheeting: percent(0, 8), cutting: percent(0, 3) }),
  scales: fc.oneof(metricScales, usScales),
});
