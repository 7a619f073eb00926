import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { always } from "../always.ts";
import { listed, workedOut } from "../core/formula/worked-out.ts";
import { cereals, food } from "./ifct.ts";

interface Row {
  readonly name: string;
  readonly moisture: number;
  readonly protein: number;
  readonly factor: number;
  readonly ash: number;
}

/** USDA National Nutrient Database for Standard Reference, Release 28 (public domain): % as is, nitrogen factor. */
const usda = {
  bread: { name: "bread flour", moisture: 13.36, protein: 11.98, factor: 5.7, ash: 0.47 }, // NDB 20083
  cake: { name: "cake flour", moisture: 12.51, protein: 8.2, factor: 5.7, ash: 0.39 }, // NDB 20084
  whole: { name: "whole wheat flour", moisture: 10.74, protein: 13.21, factor: 5.83, ash: 1.58 }, // NDB 20080
  starch: { name: "cornstarch", moisture: 8.32, protein: 0.26, factor: 6.25, ash: 0.09 }, // NDB 20027
} as const satisfies Readonly<Record<string, Row>>;

/** What a blend comes to, in plain floating point. */
function expectedOf(shares: readonly (readonly [Row, number])[]) {
  const mean = (of: (row: Row) => number): number =>
    shares.reduce((total, [row, share]) => total + (share / 100) * of(row), 0);
  const moisture = mean((row) => row.moisture);
  const protein = mean((row) => (row.protein * 5.7) / row.factor);
  const ash = mean((row) => row.ash);
  const [at14, dry] = [86 / (100 - moisture), 100 / (100 - moisture)];
  return { moisture, protein, ash, protein14: protein * at14, ash14: ash * at14, proteinDry: protein * dry };
}

function expectBlend(
  written: Parameters<typeof workedOut>[0]["flours"],
  shares: readonly (readonly [Row, number])[],
): void {
  const { blend } = workedOut({ flours: written, water: { added: "36 %" } }).formula;
  const expected = expectedOf(shares);
  expect(Number(blend.moisture.value)).toBeCloseTo(expected.moisture, 9);
  expect(Number(blend.protein?.asIs.value)).toBeCloseTo(expected.protein, 9);
  expect(Number(blend.protein?.dry.value)).toBeCloseTo(expected.proteinDry, 9);
  expect(Number(blend.protein?.at14.value)).toBeCloseTo(expected.protein14, 9);
  expect(Number(blend.ash?.asIs.value)).toBeCloseTo(expected.ash, 9);
  expect(Number(blend.ash?.at14.value)).toBeCloseTo(expected.ash14, 9);
}

describe("blends of USDA rows by their catalogue names", () => {
  it.each([
    ["one flour", { bread: 100 }],
    ["two flours", { bread: 70, cake: 30 }],
    ["two nitrogen factors", { bread: 80, whole: 20 }],
    ["a starch", { bread: 60, whole: 25, starch: 15 }],
  ] as const)("%s", (_, blend) => {
    const shares = Object.entries(blend).map(([key, share]) => [usda[key as keyof typeof usda], share] as const);
    const written = shares.map(([{ name }, share]) => ({ name, amount: `${share} %` }));
    expectBlend(written, shares);
  });
});

describe("gluten to reach a protein", () => {
  // MEXT Standard Tables of Food Composition in Japan 2020: medium flour 01018 9.0 %, gluten powder 01071 72.0 %.
  it("3.175 % of gluten powder brings medium flour from 9.0 to 11.0 % as is, by hand", () => {
    const { blend, graph } = workedOut({
      flours: listed({ "mext 01018": "rest", "mext 01071": "3.175 %" }),
      water: { tap: "36 %" },
    }).formula;
    const valuesOf = (id: RegExp) =>
      Object.values(graph)
        .filter((figure) => id.test(figure.id))
        .map(({ value }) => Number(value));
    const contents = valuesOf(/^flour\.\d\.protein$/u);
    expect(contents).toEqual([9, 72]);
    const asIs = (96.825 * 9 + 3.175 * 72) / 100;
    expect(Math.abs(asIs - 11)).toBeLessThanOrEqual(0.0005);
    const factors = valuesOf(/nitrogen-factor$/u);
    const onBlendFactor = (96.825 * 9 * 5.7) / (factors[0] ?? 0) + (3.175 * 72 * 5.7) / (factors[1] ?? 0);
    expect(Number(blend.protein?.asIs.value)).toBeCloseTo(onBlendFactor / 100, 9);
  });
});

describe("blends of the Indian Food Composition Tables 2017, National Institute of Nutrition, read at test time", () => {
  // Its appendix on nitrogen: 5.7 for refined wheat flour, 5.83 for rye and whole wheat, 5.95 for rice, 6.25 for the rest.
  const factors = fc.constantFrom(5.7, 5.83, 5.95, 6.25);

  function row(code: string, factor: number): Row {
    const { name, water, protcnt, ash } = food(code);
    return { name, moisture: water, protein: protcnt, factor, ash };
  }

  it("are the means of their cereals, as is, dry and at 14 % mb", () => {
    const two = fc.tuple(fc.constantFrom(...cereals), factors);
    always(60, [two, two, fc.integer({ min: 1, max: 9999 })], ([one, f1], [other, f2], hundredths) => {
      const share = hundredths / 100;
      const shares = [
        [row(one, f1), share],
        [row(other, f2), 100 - share],
      ] as const;
      const written = shares.map(([{ moisture, protein, factor, ash }], index) => ({
        name: `cereal ${index + 1}`,
        amount: index === 0 ? `${share} %` : "rest",
        figures: {
          moisture: `${moisture} %`,
          protein: `${protein} %`,
          proteinBasis: "as is",
          nitrogenFactor: factor,
          ash: `${ash} %`,
          ashBasis: "as is",
        },
      }));
      expectBlend(written, shares);
    });
  });
});
