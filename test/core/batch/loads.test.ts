import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toldIn } from "#core/figure/told.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import type { Written } from "../formula/worked-out.ts";
import { codesOf, toldOf } from "../told-of.ts";
import { plan, planned } from "./planned.ts";

const of = (dough: string, smallest: string | undefined, largest: string, what?: "flour"): Partial<Written> => ({
  batch: { dough },
  mixer: { ...(smallest && { smallest }), largest, ...(what && { of: what }) },
});

describe("loads", () => {
  it.each([
    ["one", of("5 kg", "1 kg", "5 kg"), "1", "5000"],
    ["two equal ones", of("5001 g", "1 kg", "5 kg"), "2", "2500.5"],
    ["as few as the mixer allows", of("17 kg", "1 kg", "5 kg"), "4", "4250"],
    ["no smallest", of("10 g", undefined, "5 kg"), "1", "10"],
    ["no mixer", { batch: { dough: "400 kg" } }, "1", "400000"],
    ["limits in flour", of("13700 g", undefined, "2.5 kg", "flour"), "4", "3425"],
    ["limits in flour, exactly full", of("13700 g", undefined, "5 kg", "flour"), "2", "6850"],
  ] as const)("%s", (_, written, count, dough) => {
    const { loads } = planned(written);
    expect([loads.count.value, loads.dough.value]).toEqual([count, dough]);
  });

  it("fills the mixer once when one load of it is asked for, whatever the formula", () => {
    always(
      60,
      [fc.integer({ min: 100, max: 3000 }), fc.integer({ min: 20, max: 90 }), fc.integer({ min: 1, max: 99 })],
      (flour, share, kilograms) => {
        const { loads } = planned({
          flours: [{ name: "bread flour", amount: `${flour} g` }],
          water: { tap: `${(flour * share) / 100} g` },
          batch: { load: "largest" },
          mixer: { largest: `${kilograms} kg`, of: "flour" },
        });
        expect(loads.count.value).toBe("1");
        expect(loads.flour.value).toBe(String(kilograms * 1000));
      },
    );
  });

  it("have no answer where equal ones fall below the smallest, and the nearest is told", () => {
    const outcome = plan(of("5.5 kg", "3 kg", "5 kg"));
    const advice = "make at most 5000 g of dough in 1 load, or make at least 6000 g of dough in 2 loads";
    expect(toldOf(outcome)).toMatchObject([
      { code: "mixer.no-equal-loads", kind: "no-answer", path: ["mixer"], advice },
    ]);
    const us = outcome.ok ? [] : outcome.problems.map((one) => toldIn("us")(one).advice);
    expect(us).toEqual(["make at most 11.023 lb of dough in 1 load, or make at least 13.228 lb of dough in 2 loads"]);
    expect(planned(of("5 kg", "3 kg", "5 kg")).loads.count.value).toBe("1");
    expect(planned(of("6 kg", "3 kg", "5 kg")).loads.count.value).toBe("2");
  });

  it("have no answer for a batch below the smallest load", () => {
    const outcome = plan(of("500 g", "1 kg", "5 kg"));
    expect(codesOf(outcome)).toEqual(["mixer.no-equal-loads"]);
    expect(toldOf(outcome)[0]?.advice).toBe("make at least 1000 g of dough in 1 load");
  });

  it("stay within the limits, or none would", () => {
    const mass = (least: number, most: number) => fc.integer({ min: least, max: most });
    always(60, [mass(100, 60_000), mass(100, 4000), mass(0, 6000)], (dough, smallest, more) => {
      const largest = smallest + more;
      const outcome = plan(of(`${dough} g`, `${smallest} g`, `${largest} g`));
      const fits = Array.from({ length: 700 }, (_, index) => dough / (index + 1)).some(
        (load) => load >= smallest && load <= largest,
      );
      expect(outcome.ok).toBe(fits);
      if (!outcome.ok) return;
      const { loads, target } = outcome.value;
      const load = dec(loads.dough.value);
      expect(load.gte(smallest) && load.lte(largest)).toBe(true);
      expect(load.times(loads.count.value).minus(target.dough.value).abs().lt("1e-20")).toBe(true);
      // fewest: one load less would be too large
      expect(dec(dough).div(dec(loads.count.value).minus(1).plus("1e-30")).gt(largest)).toBe(true);
    });
  });
});
