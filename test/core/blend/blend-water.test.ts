import { told } from "@noodlewright/core";
import { waterAfter, waterTrial } from "@noodlewright/core/explore";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { always } from "../../always.ts";
import { answered } from "../told-of.ts";

const soft = { name: "soft flour", share: "100", moisture: "14" };

describe("waterAfter", () => {
  test("names the flours no source tells about, and never raises water for protein", () => {
    const after = [
      { ...soft, share: "50" },
      { name: "strong flour", share: "50", moisture: "14" },
    ];
    const water = waterAfter([soft], after, "35");
    expect(water.added.value).toBe("35");
    expect(water.notKnown).toEqual(["soft flour", "strong flour"]);
    expect(water.notes.map(({ code }) => code)).toEqual(["blend.water-not-known"]);
    expect(water.notes[0]?.facts).toMatchObject({ names: ["soft flour", "strong flour"] });
    const gluten = { name: "gluten", share: "1", moisture: "8", dryGluten: true };
    expect(
      waterAfter([soft], [{ ...soft, share: "99" }, gluten], "35")
        .notes.map(told)
        .join(),
    ).toContain("soft flour takes");
  });

  test("goes by the kitchen's own figures where all flours have one, with their range", () => {
    const own = (percent: string, plusMinus: string) => ({ ownWater: { percent, plusMinus } });
    const before = [{ ...soft, ...own("34", "0.5") }];
    const after = [
      { ...soft, share: "80", ...own("34", "0.5") },
      { name: "rye flour", share: "20", moisture: "13", ...own("44", "2") },
    ];
    const { added } = waterAfter(before, after, "33");
    // 33 + 20 % of (44 - 34); the errors come in with the 20 % that changed: 0.2 × 0.5 + 0.2 × 2
    expect(added.value).toBe("35");
    expect([added.range?.low, added.range?.high]).toEqual(["34.5", "35.5"]);
  });

  test("goes by what the new flours take where that of the old ones is not known, and says so", () => {
    const lot = { ...soft, moisture: "14.4", newLot: true, ownWater: { percent: "38", plusMinus: "0.5" } } as const;
    const { added, notes } = waterAfter([soft], [lot], "36");
    expect([added.value, added.range?.low, added.range?.high]).toEqual(["38", "37.5", "38.5"]);
    expect(notes).toMatchObject([{ code: "blend.water-of-new", loud: true, facts: { names: ["soft flour"] } }]);
  });

  test("lets a flour that stays as it is take whatever it takes", () => {
    const lot = (percent: string, moisture: string) => ({
      ...soft,
      share: "85",
      moisture,
      ownWater: { percent, plusMinus: "0" },
    });
    const whole = { name: "whole wheat", share: "15", moisture: "11" };
    const { added, notes } = waterAfter([lot("34", "14"), whole], [lot("38", "13"), whole], "36");
    // 36 + 85 % of (38 - 34)
    expect(added.value).toBe("39.4");
    expect(notes).toEqual([]);
  });

  test("never leaves a stated absorption unused in silence", () => {
    const whole = { name: "whole wheat", share: "15", moisture: "11" };
    const old = { ...soft, share: "85" };
    const lot = { ...old, newLot: true, ownWater: { percent: "38", plusMinus: "0.5" } } as const;
    const { added, notes } = waterAfter([old, whole], [lot, whole], "36");
    expect(added.value).toBe("36");
    expect(notes).toMatchObject([
      {
        code: "blend.absorption-unused",
        loud: true,
        facts: { names: ["soft flour"], open: ["whole wheat"], before: ["soft flour"] },
      },
      { code: "blend.water-not-known", facts: { names: ["soft flour"] } },
    ]);
  });

  test("tells where the kitchen's own figures do not come to the water of the spec", () => {
    const own = (share: string, percent: string) => ({ ...soft, share, ownWater: { percent, plusMinus: "0.5" } });
    const codes = (added: string) =>
      waterAfter([own("100", "34")], [own("100", "34")], added).notes.map(({ code }) => code);
    // the flour is known to half a percent, and half a percent more is nothing to speak of
    expect([codes("35"), codes("33"), codes("35.1"), codes("32.9")]).toEqual([
      [],
      [],
      ["blend.water-apart"],
      ["blend.water-apart"],
    ]);
  });

  test("takes the water of the flour that dry gluten replaces away, as the kitchen's own figures would", () => {
    const flour = (share: string, percent: string) => ({
      ...soft,
      share,
      ownWater: { percent, plusMinus: "0.5" },
    });
    const gluten = { name: "dry gluten", share: "4", moisture: "8", dryGluten: true };
    const own = { ...gluten, ownWater: { percent: "150", plusMinus: "0" } };
    // by hand: 96 % of 36 and 4 % of 150
    const byOwn = waterAfter([flour("100", "36")], [flour("96", "36"), own], "36");
    expect(byOwn.added.value).toBe("40.56");
    const { added } = waterAfter([soft], [{ ...soft, share: "96" }, gluten], "36");
    expect(added.value).toBe("40.56");
    const back = waterAfter([{ ...soft, share: "96" }, gluten], [soft], "40.56");
    expect(Number(back.added.value)).toBeCloseTo(36, 12);
  });

  test("leaves the rule of dry gluten where the dough had not the water for it", () => {
    const gluten = { name: "dry gluten", share: "40", moisture: "8", dryGluten: true };
    const water = waterAfter([{ ...soft, share: "60" }, gluten], [soft], "50");
    expect(Number(water.added.value)).toBeGreaterThan(45);
    expect(water.notKnown).toContain("dry gluten");
  });

  test("tells how far an assumed moisture leaves the water open", () => {
    const open = { ...soft, moisture: "13.5", moistureRange: { low: "12", high: "15" } };
    const lot = { ...soft, moisture: "14" };
    const { added } = waterAfter([open], [lot], "36");
    const byHand = (old: number): number => ((36 + old) * 86) / (100 - old) - 14;
    expect(Number(added.range?.low)).toBeCloseTo(byHand(12), 9);
    expect(Number(added.range?.high)).toBeCloseTo(byHand(15), 9);
    // the same flour before and after: whatever it holds, it keeps its water
    expect(waterAfter([open], [open], "36").added.range).toBeUndefined();
  });

  test("keeps water to dry flour whatever the moisture", () => {
    const moisture = fc.integer({ min: 80, max: 160 }).map((tenths) => (tenths / 10).toFixed(1));
    always(100, [moisture, moisture], (old, fresh) => {
      const { added } = waterAfter([{ ...soft, moisture: old }], [{ ...soft, moisture: fresh }], "35");
      const ratio = (water: number, own: number): number => (water + own) / (100 - own);
      expect(ratio(Number(added.value), Number(fresh))).toBeCloseTo(ratio(35, Number(old)), 12);
    });
  });
});

test("a trial lays out three doughs with their masses", () => {
  const trial = answered(waterTrial({ flour: "200", water: "34", others: [{ name: "salt", percent: "1" }] }));
  expect(trial.doughs.map(({ masses }) => masses.map((mass) => mass.value))).toEqual([
    ["200", "66", "2"],
    ["200", "68", "2"],
    ["200", "70", "2"],
  ]);
  expect(trial.look.length).toBeGreaterThan(3);
});
