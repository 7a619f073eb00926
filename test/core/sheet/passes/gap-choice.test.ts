import type { Decimal } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dec } from "#core/number/decimal.ts";
import { bestWay, fewestPasses, keepsTo, tooBigSteps } from "#core/sheet/passes/gap-choice.ts";
import { always } from "../../../always.ts";

/** Hundredths of a millimetre, so that the brute force can compare fractions of whole numbers exactly. */
const thickness = fc.integer({ min: 20, max: 1200 });
const shelf = fc.uniqueArray(thickness, { minLength: 2, maxLength: 9 }).map((all) => [...all].sort((a, b) => b - a));
const limit = fc.integer({ min: 10, max: 60 });

interface Fraction {
  readonly over: bigint;
  readonly under: bigint;
}

/** Reductions of a way as exact fractions, largest first. */
function reductionsOf(way: readonly number[]): readonly Fraction[] {
  return way
    .slice(1)
    .map((after, index) => {
      const before = way[index] ?? after;
      return { over: BigInt(before - after), under: BigInt(before) };
    })
    .sort((a, b) => compare(b, a));
}

function compare(a: Fraction, b: Fraction): number {
  const difference = a.over * b.under - b.over * a.under;
  return difference > 0n ? 1 : difference < 0n ? -1 : 0;
}

function better(one: readonly number[], other: readonly number[]): boolean {
  if (one.length !== other.length) return one.length < other.length;
  const [mine, theirs] = [reductionsOf(one), reductionsOf(other)];
  for (const [index, fraction] of mine.entries()) {
    const difference = compare(fraction, theirs[index] ?? fraction);
    if (difference !== 0) return difference < 0;
  }
  const at = one.findIndex((value, index) => value !== other[index]);
  return at >= 0 && (one[at] ?? 0) > (other[at] ?? 0);
}

/** Every subset of the stops in between, tried one after the other. */
function bruteForce(all: readonly number[], largest: number): readonly number[] | undefined {
  const [first = 0] = all;
  const last = all.at(-1) ?? 0;
  const between = all.slice(1, -1);
  let best: readonly number[] | undefined;
  for (let mask = 0; mask < 2 ** between.length; mask += 1) {
    const way = [first, ...between.filter((_, index) => (mask >> index) % 2 === 1), last];
    const within = reductionsOf(way).every(({ over, under }) => over * 100n <= BigInt(largest) * under);
    if (within && (best === undefined || better(way, best))) best = way;
  }
  return best;
}

function millimetres(value: number): Decimal {
  return dec(value).div(100);
}

function chosen(all: readonly number[], largest: number): readonly number[] | undefined {
  const [first = 0, ...rest] = all;
  const stops = rest.map((value) => ({ name: String(value), gap: millimetres(value), thickness: millimetres(value) }));
  return bestWay(millimetres(first), stops, dec(largest))?.map((stop) => Number(stop.name));
}

describe("the best way through fixed stops", () => {
  it("equals brute force over all subsets", () => {
    always(400, [shelf, limit], (all, largest) => {
      expect(chosen(all, largest)).toEqual(bruteForce(all, largest)?.slice(1));
    });
  });

  it("is there exactly when no neighbouring step is too big", () => {
    always(100, [shelf, limit], (all, largest) => {
      const [first = 0, ...rest] = all.map(millimetres);
      const stops = rest.map((value) => ({ name: value.toString(), gap: value, thickness: value }));
      const tooBig = tooBigSteps(dec(first), stops, dec(largest));
      expect(bestWay(dec(first), stops, dec(largest)) === undefined).toBe(tooBig.length > 0);
    });
  });

  it("keeps the sheet thicker for longer where two ways are equally even", () => {
    // 8-6-3.6-2.7 and 8-4.8-3.6-2.7 both take off 40, 25 and 25 %.
    expect(chosen([800, 600, 480, 360, 270], 40)).toEqual([600, 360, 270]);
    expect(bruteForce([800, 600, 480, 360, 270], 40)).toEqual([800, 600, 360, 270]);
  });
});

describe("equal passes", () => {
  it("are the fewest: one less would go beyond the limit", () => {
    always(100, [thickness, thickness, limit], (a, b, largest) => {
      fc.pre(a !== b);
      const [first, final] = [millimetres(Math.max(a, b)), millimetres(Math.min(a, b))];
      const passes = fewestPasses(first, final, dec(largest));
      const keep = 1 - largest / 100;
      const exactPasses = Math.log(final.div(first).toNumber()) / Math.log(keep);
      expect(passes).toBeGreaterThanOrEqual(exactPasses - 1e-9);
      expect(passes).toBeLessThan(exactPasses + 1 + 1e-9);
    });
  });

  it("allow exactly one third", () => {
    expect(keepsTo(dec("33.3333333333333333333333333333"), dec("1.5"), dec("1"))).toBe(true);
    expect(keepsTo(dec("33.33"), dec("1.5"), dec("1"))).toBe(false);
  });
});
