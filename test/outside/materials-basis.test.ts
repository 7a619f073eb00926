import type { Formula } from "@noodlewright/core/answers";
import { describe, expect, it } from "vitest";
import { exact } from "#core/figure/figure.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { eaten, hundred, nothingBut } from "./portion-eaten.ts";

interface Conversion {
  readonly what: string;
  readonly value: string;
  readonly moisture: string;
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly expected: string;
  readonly tolerance: number;
  readonly source: string;
}

const grain = "Iowa State University, PM 1625, Moisture Basis Conversions for Grain Composition Data (about 1995)";
const usda = "USDA Standard Reference 28, on 14 % by hand";

/** A basis left out is as is. Tolerance: half the last digit of what is printed. */
const conversions: readonly Conversion[] = [
  {
    what: "oil at 20 % to 15 %",
    value: "6.0",
    moisture: "20",
    from: undefined,
    to: "15",
    expected: "6.4",
    tolerance: 0.05,
    source: grain,
  },
  {
    what: "oil at 20 % to 13 %",
    value: "6.0",
    moisture: "20",
    from: undefined,
    to: "13",
    expected: "6.5",
    tolerance: 0.05,
    source: grain,
  },
  {
    what: "oil at 20 % to dry",
    value: "6.0",
    moisture: "20",
    from: undefined,
    to: "0",
    expected: "7.5",
    tolerance: 0.05,
    source: grain,
  },
  {
    what: "bread flour protein to 14 %",
    value: "11.98",
    moisture: "13.36",
    from: undefined,
    to: "14",
    expected: "11.8915",
    tolerance: 0.00005,
    source: `${usda}, NDB 20083`,
  },
  {
    what: "bread flour protein to dry",
    value: "11.98",
    moisture: "13.36",
    from: undefined,
    to: "0",
    expected: "13.8273",
    tolerance: 0.00005,
    source: `${usda}, NDB 20083`,
  },
  {
    what: "arrowroot protein to 13.5 %",
    value: "0.30",
    moisture: "11.37",
    from: undefined,
    to: "13.5",
    expected: "0.293",
    tolerance: 0.0005,
    source: `${usda}, NDB 20003`,
  },
  {
    what: "Italian 00 ash limit to 14 %",
    value: "0.55",
    moisture: "14",
    from: "0",
    to: "14",
    expected: "0.4730",
    tolerance: 0.00005,
    source: "DPR 187/2001: 0.55 % dry",
  },
  {
    what: "Chinese noodle flour ash limit to 14 %",
    value: "0.70",
    moisture: "13",
    from: "0",
    to: "14",
    expected: "0.602",
    tolerance: 0.0005,
    source: "SB/T 10137-93: 0.70 % dry",
  },
  {
    what: "instant noodle flour protein to 14 %",
    value: "10.5",
    moisture: "13.7",
    from: undefined,
    to: "14",
    expected: "10.46",
    tolerance: 0.005,
    source: "Japanese instant noodle makers' association: 10.5 % at 13.7 % moisture",
  },
  {
    what: "instant noodle flour protein to dry",
    value: "10.5",
    moisture: "13.7",
    from: undefined,
    to: "0",
    expected: "12.17",
    tolerance: 0.005,
    source: "as above",
  },
  {
    what: "14 % mb to dry",
    value: "12",
    moisture: "11",
    from: "14",
    to: "0",
    expected: "13.9535",
    tolerance: 0.00005,
    source: "12 / 0.86 by hand",
  },
];

/** A dough of one flour, as its certificate states it. */
function doughOf(figures: object, water: object = { tap: "34 %" }): Formula {
  const outcome = formulaOf({ name: "test", flours: [{ name: "house flour", amount: "100 %", figures }], water });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value.formula;
}

/** The share, stated as ash, that a dough of this flour has on a basis: dry and 14 % are shown; any other is the flour's own. */
function onBasis({ value, moisture, from = moisture, to = moisture }: Conversion): string | undefined {
  const shown = to === "0" || to === "14";
  const figures = { moisture: `${shown ? moisture : to} %`, ash: `${value} %`, ashBasis: `${from} % mb` };
  const { ash } = doughOf(figures).blend;
  return (to === "0" ? ash?.dry : to === "14" ? ash?.at14 : ash?.asIs)?.value;
}

describe("moisture basis", () => {
  it.each(conversions)("$what ($source)", (conversion) => {
    expect(Math.abs(Number(onBasis(conversion)) - Number(conversion.expected))).toBeLessThanOrEqual(
      conversion.tolerance,
    );
  });

  // 34 % water on flour of 14 % moisture: 100 (100 − 14) / (100 − M), and the water that keeps 134 g. Rule of the
  // farinograph, ICC Standard 115/1; table by hand, two places.
  it.each([
    ["11.0", "96.63", "37.37"],
    ["12.0", "97.73", "36.27"],
    ["13.0", "98.85", "35.15"],
    ["13.5", "99.42", "34.58"],
    ["14.0", "100.00", "34.00"],
    ["15.0", "101.18", "32.82"],
  ])("flour at %s %% moisture: weigh %s g, add %s g", (moisture, flour, water) => {
    const stated = { added: "34 %", onFlourMoisture: "14 %" };
    const { referenceFactor, water: balance } = doughOf({ moisture: `${moisture} %` }, stated);
    if (referenceFactor === undefined) throw new Error("no reference");
    const weighed = exact(referenceFactor).pow(-1).times(100);
    expect(weighed.toFixed(2)).toBe(flour);
    expect(exact(balance.added).times(weighed).div(100).toFixed(2)).toBe(water);
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
