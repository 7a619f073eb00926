import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planBatch } from "../../../packages/core/src/batch/batch.ts";
import { type Decimal, dec, sum } from "../../../packages/core/src/number/decimal.ts";
import { formulas, kitchens } from "../formula/random-spec.ts";
import { type Written, workedOut } from "../formula/worked-out.ts";
import { figuresIn } from "../report/figures-in.ts";
import { expectOneFigureAnId, expectSound, expectWorkingHolds } from "../report/sound.ts";

const all = (written: Written) => {
  const { spec, formula } = workedOut(written);
  return { formula, outcome: planBatch(spec, formula) };
};

const batches = fc.tuple(formulas, kitchens).map(([formula, kitchen]): Written => ({ ...formula, ...kitchen }));
const total = (masses: readonly { readonly value: string }[]): Decimal => sum(masses.map(({ value }) => dec(value)));

describe("any batch", () => {
  it("adds up exactly: ingredients to the load, loads to the batch, all in whole divisions", () => {
    fc.assert(
      fc.property(batches, (written) => {
        const { outcome } = all(written);
        if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
        const { lines, loadTotal, batchTotal, loads, target } = outcome.value;
        expect(total(lines.map(({ load }) => load)).eq(loadTotal.value)).toBe(true);
        expect(total(lines.map(({ batch }) => batch)).eq(batchTotal.value)).toBe(true);
        expect(dec(loadTotal.value).times(loads.count.value).eq(batchTotal.value)).toBe(true);
        for (const { load, batch, division } of lines) {
          expect(dec(load.value).mod(division).isZero()).toBe(true);
          expect(dec(load.value).times(loads.count.value).eq(batch.value)).toBe(true);
        }
        const exact = total(lines.map((line) => line.exact));
        expect(exact.minus(loads.dough.value).abs().lt("1e-15")).toBe(true);
        const coarsest = lines.reduce((most, { division }) => (most.gt(division) ? most : dec(division)), dec(0));
        expect(dec(loadTotal.value).minus(exact).abs().lte(coarsest.div(2).plus("1e-15"))).toBe(true);
        expect(dec(loads.dough.value).times(loads.count.value).minus(target.dough.value).abs().lt("1e-15")).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it("keeps small weights within what it says that rounding may be off", () => {
    fc.assert(
      fc.property(batches, (written) => {
        const { outcome } = all(written);
        if (!outcome.ok) return;
        const { lines } = outcome.value;
        const largest = lines.reduce((most, { exact }) => (most.gt(exact.value) ? most : dec(exact.value)), dec(0));
        for (const { exact, load, worst, division } of lines) {
          const off = dec(load.value).minus(exact.value).abs();
          // the large ones take up the total: at most as many steps as there are weights
          if (dec(exact.value).gt(largest.div(20)))
            expect(off.lte(dec(division).times(lines.length).plus(dec(exact.value).div(500)))).toBe(true);
          else
            expect(
              off.lte(dec(worst.value).times(exact.value).div(100).plus(dec(exact.value).div(1000)).plus("1e-15")),
            ).toBe(true);
        }
      }),
      { numRuns: 50 },
    );
  });

  it("is sound, shows workings that hold, and one figure for an id", () => {
    fc.assert(
      fc.property(batches, (written) => {
        const { outcome } = all(written);
        expectSound(outcome);
        const figures = figuresIn(outcome);
        expectOneFigureAnId(figures);
        figures.forEach(expectWorkingHolds);
      }),
      { numRuns: 50 },
    );
  });

  it("brings the raw strands to the bowls, whatever the losses", () => {
    fc.assert(
      fc.property(batches, (written) => {
        const { outcome } = all(written);
        if (!outcome.ok || written.batch?.bowls === undefined) return;
        const { strands, rawWeight, bowls } = outcome.value.target;
        expect(bowls?.value).toBe(String(written.batch.bowls));
        const needed = dec(rawWeight?.value ?? 0).times(written.batch.bowls);
        expect(dec(strands.value).minus(needed).abs().lt("1e-15")).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it("weighs k times as much for k times the flour, and the formula stays", () => {
    fc.assert(
      fc.property(
        formulas,
        fc.integer({ min: 200, max: 20_000 }),
        fc.integer({ min: 2, max: 40 }),
        (written, flour, k) => {
          const dough = (grams: Decimal) => {
            const { formula, outcome } = all({ ...written, batch: { flour: `${grams.toFixed()} g` } });
            return outcome.ok ? { formula, exact: outcome.value.lines.map(({ exact }) => exact.value) } : undefined;
          };
          const one = dough(dec(flour));
          const more = dough(dec(flour).times(k));
          expect(more?.formula).toEqual(one?.formula);
          one?.exact.forEach((mass, index) => {
            expect(
              dec(more?.exact[index] ?? 0)
                .div(k)
                .minus(mass)
                .abs()
                .lt("1e-15"),
            ).toBe(true);
          });
        },
      ),
      { numRuns: 40 },
    );
  });
});
