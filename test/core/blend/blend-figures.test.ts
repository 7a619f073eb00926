import type { BlendTargets } from "@noodlewright/core/explore";
import { describe, expect, test } from "vitest";
import { checksOfShares } from "#core/blend/blend-figures.ts";
import { wholeNumbers } from "#core/blend/blend-limits.ts";
import { dec } from "#core/number/decimal.ts";
import { asIs, soft, strong } from "../explore/kitchen.ts";

describe("a blend as it is, held against what is asked", () => {
  /** 60 % of strong and 40 % of soft flour: protein 0.6 × 12.6 + 0.4 × 8.3 = 10.88 as is, ash 0.46, 1.02 a kilogram. */
  const held = (targets: BlendTargets): readonly (readonly [string, string, boolean])[] =>
    checksOfShares(
      {
        flours: [
          { ...strong, least: "60", most: "59" },
          { ...soft, fixed: "40" },
        ],
        targets,
        prefer: { kind: "cheapest" },
      },
      ["60", "40"],
    ).map(({ id, reached, holds }) => [id, reached, holds]);

  test("meets a limit that it just reaches, and not the next hundredth, on either side", () => {
    const bounds = (least: string, most: string) => held({ protein: { least, most, basis: asIs } }).slice(0, 2);
    expect(bounds("10.88", "10.88")).toEqual([
      ["protein.least", "10.88", true],
      ["protein.most", "10.88", true],
    ]);
    expect(bounds("10.89", "10.87").map(([, , holds]) => holds)).toEqual([false, false]);
    const [price] = held({ price: { most: "1.01" } });
    expect(price).toEqual(["price.most", "1.02", false]);
  });

  test("is held to the limits of each flour", () => {
    expect(held({})).toEqual([
      ["share.1.least", "60", true],
      ["share.1.most", "60", false],
      ["share.2.least", "40", true],
      ["share.2.most", "40", true],
    ]);
  });
});

describe("limits as whole numbers", () => {
  test("keep ten digits of the greatest and no more", () => {
    // 1000 and a third: six places, which no number divides
    expect(wholeNumbers([dec(1000), dec(1).div(3)])).toEqual([1_000_000_000, 333_333]);
    // a thousandth and a third of it: twelve places
    expect(wholeNumbers([dec("0.001"), dec("0.001").div(3)])).toEqual([1_000_000_000, 333_333_333]);
    expect(wholeNumbers([dec("0.5"), dec("-1.25"), dec(0)])).toEqual([2, -5, 0]);
    expect(wholeNumbers([dec(0), dec(0)])).toEqual([0, 0]);
  });
});
