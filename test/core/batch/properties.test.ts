import type { Decimal } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { formulas, kitchens } from "../formula/random-spec.ts";
import { type Written, workedOut } from "../formula/worked-out.ts";
import { figuresIn } from "../report/figures-in.ts";
import { expectOneFigureAnId, expectSound, expectWorkingHolds } from "../report/sound.ts";
import { answered } from "../told-of.ts";

const all = (written: Written) => {
  const { spec, formula } = workedOut(written);
  return { formula, outcome: planBatch(spec, formula) };
};

const batches = fc.tuple(formulas, kitchens).map(([formula, kitchen]): Written => ({ ...formula, ...kitchen }));
const total = (masses: readonly { readonly value: string }[]): Decimal => sum(masses.map(({ value }) => dec(value)));

describe("any batch", () => {
  it("adds up exactly: ingredients to the load, loads to the batch, all in whole divisions", () => {
    always(50, [batches], (written) => {
      const { outcome } = all(written);
      const { lines, loadTotal, batchTotal, loads, target } = answered(outcome);
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
    });
  });

  it("tells how far each weight as printed is off, and passes none over that is beyond the tolerance", () => {
    always(50, [batches], (written) => {
      const { outcome } = all(written);
      if (!outcome.ok) return;
      const { lines, remedies, tolerance } = outcome.value;
      for (const { line, exact, load, off } of lines) {
        if (dec(exact.value).isZero()) continue;
        const really = dec(load.value).minus(exact.value).times(100).div(exact.value);
        expect(really.minus(off.value).abs().lt("1e-15")).toBe(true);
        const told = remedies.tooLittle.some((weighed) => weighed.line.id === line.id);
        if (really.abs().gt(dec(tolerance).plus("1e-15"))) expect(told).toBe(true);
      }
    });
  });

  it("stays within the mixer and within what there is, in the weights as rounded", () => {
    const grams = fc.integer({ min: 700, max: 4000 });
    always(60, [grams, grams, fc.constantFrom("flour", "dough"), fc.boolean()], (limit, have, of, largest) => {
      const { outcome } = all({
        flours: [{ name: "bread flour", amount: "100 %" }],
        water: { tap: "36 %" },
        salt: "1 %",
        dusting: { name: "bread flour", amount: "3 %" },
        scales: [{ division: "5 g" }],
        mixer: { largest: `${limit} g`, of },
        batch: largest ? { load: "largest" } : { have: { name: "white bread flour", amount: `${have} g` } },
      });
      const { lines, dusting, loadTotal, loads } = answered(outcome);
      const flour = dec(lines[0]?.load.value ?? 0);
      const load = of === "flour" ? flour : dec(loadTotal.value);
      expect(load.lte(limit)).toBe(true);
      const taken = flour.plus(dusting?.load.value ?? 0).times(loads.count.value);
      if (!largest) expect(taken.lte(have)).toBe(true);
      // no more is left unused than a division of flour and one of dusting a load, and what the total needs
      const unused = largest ? dec(limit).minus(load) : dec(have).minus(taken).div(loads.count.value);
      expect(unused.lt(largest ? 10 : 15)).toBe(true);
    });
  });

  it("is sound, shows workings that hold, and one figure for an id", () => {
    always(50, [batches], (written) => {
      const { outcome } = all(written);
      expectSound(outcome);
      const figures = figuresIn(outcome);
      expectOneFigureAnId(figures);
      for (const figure of figures) expectWorkingHolds(figure, outcome.ok ? outcome.value.graph : {});
    });
  });

  it("brings the raw strands to the bowls, whatever the losses", () => {
    always(50, [batches], (written) => {
      const { outcome } = all(written);
      if (!outcome.ok || written.batch?.bowls === undefined) return;
      const { strands, rawWeight, bowls } = outcome.value.target;
      expect(bowls?.value).toBe(String(written.batch.bowls));
      const needed = dec(rawWeight?.value ?? 0).times(written.batch.bowls);
      expect(dec(strands.value).minus(needed).abs().lt("1e-15")).toBe(true);
    });
  });

  it("weighs k times as much for k times the flour, and the formula stays", () => {
    always(
      40,
      [formulas, fc.integer({ min: 200, max: 20_000 }), fc.integer({ min: 2, max: 40 })],
      (written, flour, k) => {
        const dough = (grams: Decimal) => {
          const { formula, outcome } = all({ ...written, batch: { flour: `${grams.toFixed()} g` } });
          return outcome.ok ? { formula, exact: outcome.value.lines.map(({ exact }) => exact.value) } : undefined;
        };
        const one = dough(dec(flour));
        const more = dough(dec(flour).times(k));
        expect(more?.formula).toEqual(one?.formula);
        one?.exact.forEach((mass, index) => {
          const each = dec(more?.exact[index] ?? 0).div(k);
          expect(each.minus(mass).abs().lt("1e-15")).toBe(true);
        });
      },
    );
  });
});
