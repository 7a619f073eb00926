import { newLot, substitute } from "@noodlewright/core/explore";
import { expect, test } from "vitest";
import { at14, barley, gluten, sharesOf, soft, strong, whole } from "../explore/kitchen.ts";
import { answered } from "../told-of.ts";

const blend = [
  { name: "strong flour", share: "60" },
  { name: "soft flour", share: "40" },
];
const base = { blend, hold: ["protein"] as const, basis: at14, water: "36" };

test("a missing strong flour is replaced by those at hand, protein held, before and after side by side", () => {
  const flours = [strong, soft, { ...whole, most: "30" }, { ...gluten, dryGluten: true }];
  const outcome = substitute({ ...base, flours, missing: "strong flour" });
  const { answer, rows } = answered(outcome);
  expect(sharesOf(answer)[0]).not.toContain("strong flour");
  const protein = rows[0]?.changes.find(({ label }) => label.startsWith("protein at 14"));
  // by hand: 60 % of 12.6 and 40 % of 8.3 at 14.3 % moisture
  expect(Number(protein?.before?.value)).toBeCloseTo(((0.6 * 12.6 + 0.4 * 8.3) * 86) / (100 - 14.3), 9);
  expect(Math.abs(Number(protein?.difference?.value))).toBeLessThan(0.5);
  const share = rows[0]?.changes.find(({ label }) => label === "share of strong flour");
  expect(share?.after?.value).toBe("0");
  expect(outcome.ok && outcome.notes.some(({ code }) => code === "blend.water-not-known")).toBe(true);
});

test("a weaker, wetter lot takes more of it and less water", () => {
  const lot = { ...strong, protein: "12.0", moisture: "15.0" };
  const { answer, rows } = answered(newLot({ ...base, flours: [strong, soft], lot }));
  const [text] = sharesOf(answer);
  // by hand: the first share from 60 up that is within 0.05 of the old 10.918 % at 14 % mb
  const at = (share: number): number => ((share * 12 + (100 - share) * 8.3) * 0.86) / (100 - (14 + share / 100));
  const share = Array.from({ length: 40 }, (_, more) => 60 + more).find((one) => at(one) >= (10.88 * 86) / 85.7 - 0.05);
  expect(text).toBe(`strong flour ${share}, soft flour ${100 - (share ?? 0)}`);
  const moisture = 14 + (share ?? 0) / 100;
  const byHand = ((36 + 14.3) * (100 - moisture)) / (100 - 14.3) - moisture;
  expect(Number(rows[0]?.water.added.value)).toBeCloseTo(byHand, 9);
});

test("a figure that is held is held on both sides", () => {
  const flours = [
    { ...strong, glutenProtein: "11.0" },
    { ...soft, glutenProtein: "7.0" },
    { ...whole, glutenProtein: "9.0" },
    { ...barley, glutenProtein: "0" },
    { ...gluten, glutenProtein: "72.0" },
  ];
  const question = {
    ...base,
    flours,
    missing: "strong flour",
    hold: ["protein", "ash", "gluten protein"] as const,
    step: "0.5",
  };
  const { answer } = answered(substitute(question));
  expect(answer.kind).toBe("found");
  const checks = answer.kind === "found" ? answer.blends[0]?.checks : undefined;
  expect(checks?.every(({ holds }) => holds)).toBe(true);
  const sides = checks?.map(({ label, side }) => `${label} ${side}`);
  const both = (label: string): readonly string[] => [`${label} least`, `${label} most`];
  expect(sides).toEqual(["protein near", ...both("gluten-forming protein"), ...both("ash")]);
});
