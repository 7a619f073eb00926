import {
  driedWholeEgg,
  rawWholeEgg,
  replaceProduct,
  searchBlend,
  squareRule,
  waterAfter,
} from "@noodlewright/core/explore";
import { describe, expect, test } from "vitest";
import { blendFigures } from "#core/blend/blend-figures.ts";
import { given } from "#core/figure/figure.ts";
import { asIs } from "../core/explore/kitchen.ts";
import { answered } from "../core/told-of.ts";

const sr28 = "USDA National Nutrient Database SR28";
const mext = "Standard Tables of Food Composition in Japan 2020 (8th rev.)";

/** Two flours to a target, as is: share of the stronger, % of the blend. */
const squares = [
  {
    what: "all-purpose flour (20081) and vital gluten (48052) to 12.00 %",
    low: { name: "all-purpose flour", protein: "10.33", moisture: "11.92" },
    high: { name: "vital gluten", protein: "75.16", moisture: "8.20" },
    target: "12.00",
    expected: 2.576,
    tolerance: 0.0005,
    source: `${sr28}, lever rule`,
  },
  {
    what: "medium flour grade 1 (01018) and gluten powder (01071) to 11.0 %",
    low: { name: "medium flour", protein: "9.0", moisture: "14.0" },
    high: { name: "gluten powder", protein: "72.0", moisture: "6.5" },
    target: "11.0",
    expected: 3.175,
    tolerance: 0.0005,
    source: `${mext}, lever rule`,
  },
];

describe("two flours to a target", () => {
  test.each(squares)("$what ($source)", ({ low, high, target, expected, tolerance }) => {
    const { other } = answered(squareRule({ one: low, other: high, target, basis: asIs }));
    expect(Math.abs(Number(other.value) - expected)).toBeLessThan(tolerance);
    const answer = answered(
      searchBlend({
        flours: [low, high],
        step: "0.1",
        prefer: { kind: "most", flour: low.name },
        targets: { protein: { least: target, basis: asIs } },
      }),
    );
    const found =
      answer.kind === "found"
        ? answer.blends[0]?.shares.find(({ name }) => name === high.name)?.share.value
        : undefined;
    expect(found).toBe((Math.ceil(expected * 10) / 10).toString());
  });
});

test(`80 bread flour, 10 medium rye, 10 tapioca as is and at 14 % moisture (${sr28}: 20083, 20064, 20068)`, () => {
  const flours = [
    { name: "bread flour", protein: "11.98", moisture: "13.36", ash: "0.47" },
    { name: "medium rye flour", protein: "10.88", moisture: "10.97", ash: "1.20" },
    { name: "tapioca", protein: "0.19", moisture: "10.99", ash: "0.11" },
  ];
  const shares = ["80", "10", "10"].map((share) =>
    given({ id: share, label: "share", unit: "%", places: 0 }, share, "test"),
  );
  const figures = new Map(
    blendFigures({ flours, targets: {}, prefer: { kind: "cheapest" } }, shares).map(({ id, value: own }) => [
      id,
      Number(own),
    ]),
  );
  const expected = {
    "blend.protein.as-is": 10.691,
    "blend.moisture": 12.884,
    "blend.ash.as-is": 0.507,
    "blend.protein.14": 10.554,
  };
  for (const [id, number] of Object.entries(expected)) {
    expect(Math.abs((figures.get(id) ?? Number.NaN) - number), id).toBeLessThan(0.0005);
  }
  // averaging figures already converted would give 10.5825: the trap
  expect(figures.get("blend.protein.14")).not.toBeCloseTo(10.5825, 3);
});

describe("water", () => {
  test("2 % dry gluten on 100 of flour takes 3 % more water (T. Lehmann, dough forum answer)", () => {
    const before = [{ name: "flour", share: "100", moisture: "14" }];
    const after = [
      { name: "flour", share: "98.0392156862745098", moisture: "14" },
      { name: "dry gluten", share: "1.9607843137254902", moisture: "6.5", dryGluten: true },
    ];
    // 34 + 3 on the 100 of flour: the flours are 102 then
    expect(Number(waterAfter(before, after, "34").added.value) * 1.02).toBeCloseTo(37, 12);
  });

  test("3.175 % gluten to reach 11 % protein takes 4.76 % (composition tables of Japan, rule of 1.5)", () => {
    const before = [{ name: "flour", share: "100", moisture: "14" }];
    const after = [
      { name: "flour", share: "96.825", moisture: "14" },
      { name: "dry gluten", share: "3.175", moisture: "6.5", dryGluten: true },
    ];
    expect(Math.abs(Number(waterAfter(before, after, "0").added.value) - 4.76)).toBeLessThan(0.005);
  });

  /** Constant dough on 14 % moisture, 34 % water: arithmetic on the farinograph's basis, ICC Standard 115/1. */
  test.each([
    ["11.0", 38.67],
    ["12.0", 37.12],
    ["13.0", 35.56],
    ["13.5", 34.78],
    ["14.0", 34.0],
    ["15.0", 32.44],
  ])("flour of %s %% moisture takes %f %% of water as is", (moisture, expected) => {
    const before = [{ name: "flour", share: "100", moisture: "14" }];
    const { added } = waterAfter(before, [{ name: "flour", share: "100", moisture }], "34");
    expect(Math.abs(Number(added.value) - expected)).toBeLessThan(0.005);
  });

  test("10 oz of whole egg at 75 % water replaces 7.5 oz of the 196 oz of water (T. Lehmann, dough forum answer)", () => {
    const egg = { name: "whole egg", active: "25", water: "75" };
    const solids = { name: "egg solids", active: "100", water: "0" };
    expect(196 - Number(answered(replaceProduct("10", egg, solids)).water.value)).toBe(188.5);
  });

  test(`whole egg to dried egg and water (${sr28}: 01123, 01133)`, () => {
    const { mass, water } = answered(replaceProduct("100", rawWholeEgg, driedWholeEgg));
    // dry matter 23.85 in dried egg of 97.22 % dry matter
    expect(Number(mass.value)).toBeCloseTo(24.532, 3);
    expect(Number(water.value)).toBeCloseTo(75.468, 3);
    // protein of both tables: 12.56 in 100 g raw, 48.05 % of the dried egg; two samples, so within 7 %
    expect(Math.abs((Number(mass.value) * 48.05) / 100 / 12.56 - 1)).toBeLessThan(0.07);
  });
});
