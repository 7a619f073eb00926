import fc from "fast-check";
import { expect, it } from "vitest";
import { cornersOf, type Sides } from "#core/figure/corners.ts";
import { always } from "../../always.ts";

const count = 9;

/** Every corner of the box of masses, by brute force in binary fractions. */
function corners(masses: readonly number[], errors: readonly number[], proteins: readonly number[]): readonly number[] {
  return Array.from({ length: 2 ** count }, (_, corner) => {
    const weighed = masses.map((mass, index) => mass + ((corner >> index) & 1 ? 1 : -1) * (errors[index] ?? 0));
    const protein = weighed.reduce((total, mass, index) => total + mass * (proteins[index] ?? 0), 0);
    return protein / weighed.reduce((total, mass) => total + mass, 0);
  });
}

it("finds the ends of a mixture of many flours, of which no weighing has a side of its own", () => {
  const masses = fc.array(fc.integer({ min: 100, max: 900 }), { minLength: count, maxLength: count });
  const errors = fc.array(fc.integer({ min: 1, max: 90 }), { minLength: count, maxLength: count });
  const proteins = fc.array(fc.integer({ min: 80, max: 140 }), { minLength: count, maxLength: count });
  always(60, [masses, errors, proteins], (mass, error, tenths) => {
    const protein = tenths.map((value) => value / 10);
    const at = (sides: Sides): number => {
      const weighed = mass.map((one, index) => one + (error[index] ?? 0) * (sides[index] ?? 0));
      const total = weighed.reduce((all, one) => all + one, 0);
      return weighed.reduce((all, one, index) => all + one * (protein[index] ?? 0), 0) / total;
    };
    const { low, high } = cornersOf(count, at);
    const all = corners(mass, error, protein);
    expect(at(low)).toBeCloseTo(Math.min(...all), 9);
    expect(at(high)).toBeCloseTo(Math.max(...all), 9);
  });
});
