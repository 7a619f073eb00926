import { expect, test } from "vitest";
import { Spread } from "#core/explore/random.ts";

test("from seed 1 the 10,000th number is 399268537 (ISO/IEC 14882, [rand.predef], minstd_rand)", () => {
  const spread = new Spread(1);
  for (let count = 1; count < 10_000; count += 1) spread.next();
  expect(spread.next()).toBe(399_268_537);
});

test("another seed is refused", () => {
  expect(() => new Spread(0)).toThrow(RangeError);
});
