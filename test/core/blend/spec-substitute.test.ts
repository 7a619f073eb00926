import { told } from "@noodlewright/core";
import type { Substitution } from "@noodlewright/core/answers";
import { type Hold, usualHold, usualLotHold } from "@noodlewright/core/explore";
import { describe, expect, test } from "vitest";
import { correctForLot, readHeld, replaceFlour } from "#core/blend/spec-substitute.ts";
import { sharesOf } from "../explore/kitchen.ts";
import { noteCodesOf, type Written, workedOut } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";

/** A flour whose figures are all at 14 % moisture. */
const flour = (protein: string, ash = "0.5 %") => ({ protein, ash, moisture: "14 %", nitrogenFactor: 5.7 });
const rye = { ...flour("9 %", "1.1 %"), glutenForming: false };

/** Some rye for its taste, in shares off the step. */
const ryeNoodle: Written = {
  flours: [
    { name: "strong flour", amount: "60.9 %", figures: flour("12.4 %") },
    { name: "plain flour", amount: "30 %", figures: flour("9.8 %") },
    { name: "rye flour", amount: "9.1 %", figures: rye },
  ],
  shelf: { "house flour": { figures: flour("11.4 %") }, "vital wheat gluten": { share: "at most 3 %" } },
  water: { added: "36 %" },
};

function without(missing: string, written: Written, hold: readonly Hold[] = usualHold): Substitution {
  const { spec, formula } = workedOut(written);
  return answered(replaceFlour(spec, formula, { missing, hold }));
}

function shareIn({ rows }: Substitution, name: string): string | undefined {
  return rows[0]?.blend.shares.find((one) => one.name === name)?.share.value;
}

describe("replaceFlour", () => {
  test("keeps the shares of the other flours, also those off the step, and the gluten-forming protein", () => {
    const found = without("strong flour", ryeNoodle);
    expect([shareIn(found, "plain flour"), shareIn(found, "rye flour")]).toEqual(["30", "9.1"]);
    const gluten = found.rows[0]?.changes.find(({ id }) => id === "blend.gluten-protein.14");
    expect(Number(gluten?.difference?.value)).toBeGreaterThan(-0.05);
    expect(found.rows[0]?.notHeld).toEqual([]);
  });

  test("moves the other flours only where nothing else takes the place, and says so", () => {
    const { spec, formula } = workedOut({ ...ryeNoodle, shelf: {} });
    const outcome = replaceFlour(spec, formula, { missing: "rye flour", hold: usualHold });
    expect(sharesOf(answered(outcome).answer)[0]).not.toContain("rye");
    expect(noteCodesOf(outcome)).toContain("substitute.moved");
  });

  test("lets a flour move that has limits of its own on the shelf", () => {
    const shelf = { ...ryeNoodle.shelf, "plain flour": { share: "20 to 40 %" } };
    const found = without("strong flour", { ...ryeNoodle, shelf });
    expect(shareIn(found, "rye flour")).toBe("9.1");
    expect(found.answer.kind).toBe("found");
  });

  test("names what moved and was not to be held", () => {
    const shelf = { "house rye": { figures: { ...rye, protein: "12.4 %" } } };
    const found = without("strong flour", { ...ryeNoodle, shelf }, ["protein"]);
    const labels = found.rows[0]?.notHeld.map(({ label }) => label);
    expect(labels).toContain("gluten-forming protein at 14 % mb");
    expect(labels).not.toContain("protein at 14 % mb");
  });

  test("puts no less of a flour in than the least share asked for", () => {
    const shelf = { "house flour": { figures: flour("11.4 %") }, "hard flour": { figures: flour("13.5 %") } };
    const shares = (least: string) => {
      const found = without("strong flour", { ...ryeNoodle, shelf, wanted: { leastShare: least } });
      return ["house flour", "hard flour"].map((name) => Number(shareIn(found, name) ?? 0));
    };
    // half of each meets the protein; 40 % of the one leaves no 40 % for the other
    expect(shares("2 %").every((share) => share > 20 && share < 40)).toBe(true);
    expect(shares("40 %").filter((share) => share > 0 && share < 40)).toEqual([]);
  });

  test("finds no blend where gluten-forming protein would fall", () => {
    const shelf = { "house rye": { figures: { ...rye, protein: "12.4 %" } } };
    expect(without("strong flour", { ...ryeNoodle, shelf }).answer.kind).toBe("out-of-reach");
  });

  test("never offers the missing flour itself as the way out", () => {
    const { answer } = without("strong flour", { ...ryeNoodle, shelf: {} });
    const moves = answer.kind === "found" ? [] : answer.conflicts.flat();
    expect(moves.length).toBeGreaterThan(0);
    expect(moves.filter(({ label }) => label.includes("strong flour"))).toEqual([]);
    expect(answer.kind === "found" ? [] : answer.flourNeeded.map(({ name }) => name)).not.toContain("strong flour");
  });

  test("holds what the spec wants beside what is held", () => {
    const wheat = { ...flour("11.5 %", "1.5 %"), wholegrain: true };
    const written: Written = {
      flours: [
        { name: "strong flour", amount: "80 %", figures: flour("12 %") },
        { name: "whole wheat", amount: "20 %", figures: wheat },
      ],
      shelf: { "house flour": { figures: flour("11.5 %") }, "coarse whole wheat": { figures: wheat } },
      wanted: { wholegrain: "at least 20 %" },
      water: { added: "36 %" },
    };
    const { answer } = without("whole wheat", written);
    expect(sharesOf(answer)[0]).toBe("strong flour 80, coarse whole wheat 20");
    const none = without("whole wheat", { ...written, shelf: { "house flour": { figures: flour("11.5 %") } } });
    expect(none.answer.kind).toBe("out-of-reach");
  });
});

test("an assumed moisture is told, and leaves the blend and its water open", () => {
  const shop = { kind: "flour", label: { protein: "12 g", serving: "100 g", rules: "EU" } } as const;
  const { spec, formula } = workedOut({
    flours: [{ name: "strong flour", amount: "100 %", figures: { ...flour("12.4 %"), moisture: "13.5 %" } }],
    shelf: { "shop flour": { figures: shop } },
    water: { added: "36 %" },
  });
  const outcome = replaceFlour(spec, formula, { missing: "strong flour", hold: [] });
  const row = answered(outcome).rows[0];
  const rangeOf = (id: string) => {
    const { low, high } = row?.blend.figures.find((one) => one.id === `alternative.1.${id}`)?.range ?? {
      low: "",
      high: "",
    };
    return [Number(low), Number(high)];
  };
  expect(rangeOf("blend.moisture")).toEqual([12, 15]);
  const [low = 0, high = 0] = rangeOf("blend.protein.as-is");
  const [lowAt = 0, highAt = 0] = rangeOf("blend.protein.14");
  expect(lowAt).toBeCloseTo((low * 86) / 88, 9);
  expect(highAt).toBeCloseTo((high * 86) / 85, 9);
  // the dough keeps its dry flour and its water, whatever the flour at hand holds of 12 to 15 %
  const byHand = (now: number): number => ((36 + 13.5) * (100 - now)) / 86.5 - now;
  expect(Number(row?.water.added.range?.low)).toBeCloseTo(byHand(15), 9);
  expect(Number(row?.water.added.range?.high)).toBeCloseTo(byHand(12), 9);
  const texts = outcome.ok ? outcome.notes.map(told) : [];
  expect(texts.some((text) => text.startsWith("shop flour: its moisture is not stated"))).toBe(true);
});

test("a lot reaches what the spec wants, where that is out of what was held", () => {
  const { spec, formula } = workedOut({
    ...ryeNoodle,
    lot: { of: "strong flour", figures: { protein: "11.9 %" } },
    wanted: { protein: "at least 11.6 %" },
  });
  const { rows } = answered(correctForLot(spec, formula, usualHold));
  const protein = rows[0]?.changes.find(({ id }) => id === "blend.protein.14")?.after;
  expect(Number(protein?.value)).toBeGreaterThanOrEqual(11.6);
});

test("the only flour of a noodle gives its water with another protein too, and says loudly what moves", () => {
  const { spec, formula } = workedOut({
    flours: [{ name: "strong flour", amount: "100 %", figures: flour("12 %") }],
    lot: { of: "strong flour", figures: { protein: "11.4 %", moisture: "14.5 %" } },
    water: { added: "36 %" },
  });
  const outcome = correctForLot(spec, formula, usualHold);
  // the dough keeps its dry flour and its water: 50 of water on 86 dry
  expect(Number(answered(outcome).rows[0]?.water.added.value)).toBeCloseTo((50 * 85.5) / 86 - 14.5, 12);
  const loud = outcome.ok ? outcome.notes.filter((one) => one.loud).map(told) : [];
  expect(loud).toHaveLength(1);
  expect(loud[0]).toContain("protein at 14 % mb from 12.00 % to 11.40 %");
});

test("what is held is a figure on both sides, or on one", () => {
  expect(answered(readHeld("protein, ash or less, gluten-protein or more"))).toEqual([
    "protein",
    "ash or less",
    "gluten protein or more",
  ]);
});

describe("the new lot of a flour beside a wholegrain one", () => {
  // 85/15 of 12.5 and 12.7 % is 12.53 %, held from 12.48 % on; with a lot of 12.4 % that takes 27 % of the other flour
  const written: Written = {
    flours: [
      { name: "strong flour", amount: "85 %", figures: flour("12.5 %") },
      { name: "graham flour", amount: "15 %", figures: { ...flour("12.7 %", "1.5 %"), wholegrain: true } },
    ],
    lot: { of: "strong flour", figures: flour("12.4 %") },
    water: { added: "36 %" },
  };
  const { spec, formula } = workedOut(written);

  test("does not make a white noodle a wholegrain one, and shows the nearest that stays white", () => {
    const { answer } = answered(correctForLot(spec, formula, usualLotHold));
    if (answer.kind === "found") throw new Error("found one");
    expect(answer.nearest?.shares.map(({ share }) => share.value)).toEqual(["80", "20"]);
  });

  test("moves it where it is not to be held: from 12.4 to 12.48 % is 27 % of the way to 12.7 %", () => {
    expect(shareIn(answered(correctForLot(spec, formula, usualHold)), "graham flour")).toBe("27");
  });
});
