import type { Formula } from "@noodlewright/core/answers";
import { describe, expect, it } from "vitest";
import { type Written, workedOut } from "../core/formula/worked-out.ts";
import { eaten, hundred, nothingBut } from "./portion-eaten.ts";

type Conversion = readonly [
  what: string,
  value: string,
  moisture: string,
  from: string,
  to: string,
  expected: number,
  tolerance: number,
  source: string,
];

const grain = "Iowa State University, PM 1625, Moisture Basis Conversions for Grain Composition Data (about 1995)";
const usda = "USDA Standard Reference 28, on 14 % by hand";

const association = "Japanese instant noodle makers' association: 10.5 % at 13.7 % moisture";

/** Tolerance: half the last digit of what is printed. */
const conversions: readonly Conversion[] = [
  ["oil at 20 % to 15 %", "6.0", "20", "20", "15", 6.4, 0.05, grain],
  ["oil at 20 % to 13 %", "6.0", "20", "20", "13", 6.5, 0.05, grain],
  ["oil at 20 % to dry", "6.0", "20", "20", "0", 7.5, 0.05, grain],
  ["bread flour protein to 14 %", "11.98", "13.36", "13.36", "14", 11.8915, 0.00005, `${usda}, NDB 20083`],
  ["bread flour protein to dry", "11.98", "13.36", "13.36", "0", 13.8273, 0.00005, `${usda}, NDB 20083`],
  ["arrowroot protein to 13.5 %", "0.30", "11.37", "11.37", "13.5", 0.293, 0.0005, `${usda}, NDB 20003`],
  ["Italian 00 ash limit to 14 %", "0.55", "14", "0", "14", 0.473, 0.00005, "DPR 187/2001: 0.55 % dry"],
  ["Chinese noodle flour ash limit to 14 %", "0.70", "13", "0", "14", 0.602, 0.0005, "SB/T 10137-93: 0.70 % dry"],
  ["instant noodle flour protein to 14 %", "10.5", "13.7", "13.7", "14", 10.46, 0.005, association],
  ["instant noodle flour protein to dry", "10.5", "13.7", "13.7", "0", 12.17, 0.005, association],
  ["14 % mb to dry", "12", "11", "14", "0", 13.9535, 0.00005, "12 / 0.86 by hand"],
];

/** A dough of one flour, as its certificate states it. */
function doughOf(figures: Written["flours"][number]["figures"]): Formula {
  return workedOut({ flours: [{ name: "house flour", amount: "100 %", figures }], water: { tap: "34 %" } }).formula;
}

/** The share, stated as ash, that a dough of this flour has on a basis: dry and 14 % are shown; any other is the flour's own. */
function onBasis(value: string, moisture: string, from: string, to: string): string | undefined {
  const shown = to === "0" || to === "14";
  const figures = { moisture: `${shown ? moisture : to} %`, ash: `${value} %`, ashBasis: `${from} % mb` };
  const { ash } = doughOf(figures).blend;
  return (to === "0" ? ash?.dry : to === "14" ? ash?.at14 : ash?.asIs)?.value;
}

describe("moisture basis", () => {
  it.each(conversions)("%s", (_, value, moisture, from, to, expected, tolerance, source) => {
    const converted = Number(onBasis(value, moisture, from, to));
    expect(Math.abs(converted - expected), source).toBeLessThanOrEqual(tolerance);
  });
});

describe("nitrogen factor", () => {
  it.each([
    // protein, its factor, the factor wanted, expected, tolerance, source. Labels of the Union count 6.25, blends 5.7.
    ["12.0", "5.7", "6.25", "13.1579", 0.00005, "USDA A-A-20126F; Regulation (EU) No 1169/2011, Annex I"],
    ["12", "6.25", "5.7", "10.9440", 0.00005, "the same, the other way"],
    ["47.01", "5.71", "6.25", "51.46", 0.005, "USDA releases 26 (47.01 at 5.71) and 28 (51.46 at 6.25), NDB 16117"],
    ["10.88", "5.83", "5.7", "10.6374", 0.00005, "USDA Standard Reference 28, NDB 20064, by hand"],
  ] as const)("%s %% at %s is %s: %s %%", (value, from, to, expected, tolerance, source) => {
    const figures = {
      moisture: "12 %",
      protein: `${value} %`,
      proteinBasis: "as is",
      nitrogenFactor: Number(from),
    } as const;
    const converted =
      to === "5.7"
        ? Number(doughOf(figures).blend.protein?.asIs.value)
        : hundred(eaten(nothingBut("house flour", figures), "EU"), "protein");
    expect(Math.abs(converted - Number(expected)), source).toBeLessThanOrEqual(tolerance);
  });
});
