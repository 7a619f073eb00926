import fc from "fast-check";
import { expect, it } from "vitest";
import type { Cause } from "#core/blend/cause.ts";
import { boundsOf } from "#core/blend/interval.ts";
import { type Decimal, dec, sum, ZERO } from "#core/number/decimal.ts";

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
  fc.assert(
    fc.property(masses, errors, proteins, (mass, error, tenths) => {
      const protein = tenths.map((value) => value / 10);
      const causes = mass.map(
        (value, index): Cause => ({
          id: `${index}`,
          label: `weighing ${index}`,
          value: `${value}`,
          plusMinus: `${error[index]}`,
          unit: "g",
        }),
      );
      const model = (inputs: Readonly<Record<string, Decimal>>): Decimal => {
        const weighed = protein.map((_, index) => inputs[`${index}`] ?? ZERO);
        return sum(weighed.map((one, index) => one.times(protein[index] ?? 0))).div(sum(weighed));
      };
      const { low, high } = boundsOf(causes, model);
      const all = corners(mass, error, protein);
      expect(low.toNumber()).toBeCloseTo(Math.min(...all), 9);
      expect(high.toNumber()).toBeCloseTo(Math.max(...all), 9);
      expect(low.lte(dec(high))).toBe(true);
    }),
    { numRuns: 60 },
  );
});
