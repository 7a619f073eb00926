import { solutionPh } from "@noodlewright/core/chemistry";
import { describe, expect, test } from "vitest";
import { dec } from "#core/number/decimal.ts";
import { answered } from "../core/told-of.ts";

type Salts = Readonly<Record<string, string>>;

function ph(salts: Salts, temperature = "25"): number {
  const total = Object.values(salts).reduce((sum, share) => sum.plus(share), dec(0));
  const solution = { species: salts, water: dec(100).minus(total).toString(), inert: "0" };
  return Number(answered(solutionPh(solution, temperature)).value);
}

/**
 * Salts in % by mass and pH at 25 °C on the MacInnes scale.
 * Source: PHREEQC (public geochemical code) with the parameters of Harvie, Møller and Weare 1984, and a solver written apart from
 * this project; the two agree within 0.005, hence the tolerance of 0.01.
 */
const sameModel: readonly (readonly [Salts, number])[] = [
  [{ Na2CO3: "0.1" }, 10.995],
  [{ Na2CO3: "0.5" }, 11.256],
  [{ Na2CO3: "1" }, 11.356],
  [{ Na2CO3: "2" }, 11.453],
  [{ Na2CO3: "5" }, 11.582],
  [{ K2CO3: "0.1" }, 10.949],
  [{ K2CO3: "0.5" }, 11.229],
  [{ K2CO3: "1" }, 11.342],
  [{ K2CO3: "2" }, 11.458],
  [{ K2CO3: "5" }, 11.639],
  [{ Na2CO3: "0.05", K2CO3: "0.05" }, 10.974],
  [{ Na2CO3: "0.5", K2CO3: "0.5" }, 11.35],
  [{ Na2CO3: "2.5", K2CO3: "2.5" }, 11.611],
  [{ NaHCO3: "1" }, 8.067],
  [{ KHCO3: "1" }, 8.099],
  [{ NaOH: "1" }, 13.257],
  [{ KOH: "1" }, 13.144],
  [{ Na2CO3: "1", NaCl: "1" }, 11.293],
  [{ Na2CO3: "1", NaCl: "5" }, 11.139],
  [{ Na2CO3: "0.5", NaHCO3: "0.5" }, 9.823],
  [{ Na2CO3: "0.9", NaOH: "0.1" }, 12.26],
];

test.each(sameModel)("%o is %d by the same model elsewhere", (salts, published) => {
  expect(Math.abs(ph(salts) - published)).toBeLessThanOrEqual(0.01);
});

/**
 * By °C: salt, % by mass and pH. Source: PHREEQC with the same parameters moved in temperature by its own rules.
 * This project moves only the dissociation constants; it claims 0.05.
 */
const withTemperature = Object.entries({
  5: "Na2CO3 0.1 11.475, NaOH 0.1 13.036, Na2CO3 1 11.832, K2CO3 1 11.818, NaHCO3 1 8.27, K2CO3 5 12.117, NaHCO3 5 8.043, NaOH 5 14.684",
  10: "Na2CO3 0.1 11.346, K2CO3 0.1 11.301, NaHCO3 0.1 8.371, K2CO3 1 11.69, NaHCO3 1 8.209, NaOH 1 13.781, Na2CO3 5 11.93, NaOH 5 14.498",
  15: "K2CO3 0.1 11.178, NaHCO3 0.1 8.318, NaOH 0.1 12.671, Na2CO3 1 11.582, NaOH 1 13.601, Na2CO3 5 11.809, K2CO3 5 11.868, NaHCO3 5 7.928",
  20: "Na2CO3 0.1 11.106, NaOH 0.1 12.498, Na2CO3 1 11.467, K2CO3 1 11.452, NaHCO3 1 8.108, K2CO3 5 11.752, NaHCO3 5 7.881, NaOH 5 14.145",
  30: "K2CO3 0.1 10.842, NaHCO3 0.1 8.198, NaOH 0.1 12.169, Na2CO3 1 11.253, NaOH 1 13.098, Na2CO3 5 11.484, K2CO3 5 11.538, NaHCO3 5 7.807",
  40: "Na2CO3 0.1 10.69, NaOH 0.1 11.86, Na2CO3 1 11.06, K2CO3 1 11.043, NaHCO3 1 7.981, K2CO3 5 11.344, NaHCO3 5 7.754, NaOH 5 13.511",
}).flatMap(([at, rows]) => rows.split(", ").map((row) => [...row.split(" "), at]));

test.each(withTemperature)("%s, %s %%, has a pH of %s at %s °C", (salt = "", percent = "", published, temperature) => {
  expect(Math.abs(ph({ [salt]: percent }, temperature) - Number(published))).toBeLessThanOrEqual(0.05);
});

/**
 * 0.025 mol/kg of sodium bicarbonate and as much sodium carbonate: a pH standard.
 * Source: B. R. Staples and R. G. Bates, J. Res. NBS 73A (1969) 37, abstract, for 25 °C; the other temperatures from memory.
 */
describe("the carbonate pH standard", () => {
  const water = dec(1000);
  const soda = dec("0.025").times("105.988");
  const bicarbonate = dec("0.025").times("84.006");
  const share = (mass: ReturnType<typeof dec>): string =>
    mass.times(100).div(water.plus(soda).plus(bicarbonate)).toFixed(10);
  const standard = { Na2CO3: share(soda), NaHCO3: share(bicarbonate) };

  test.each([
    ["10", 10.179],
    ["15", 10.118],
    ["20", 10.062],
    ["25", 10.012],
    ["30", 9.966],
    ["40", 9.889],
  ] as const)("at %s °C is %d within 0.02", (temperature, published) => {
    expect(Math.abs(ph(standard, temperature) - published)).toBeLessThanOrEqual(0.02);
  });
});

test("1 % sodium carbonate reads 11.3 (soda-ash safety data sheet, printed to 0.1)", () => {
  expect(Math.abs(ph({ Na2CO3: "1" }) - 11.3)).toBeLessThanOrEqual(0.1);
});

test("1 % sodium bicarbonate reads 8.0 to 8.6 (JECFA, sodium hydrogen carbonate)", () => {
  expect(ph({ NaHCO3: "1" })).toBeGreaterThanOrEqual(8);
  expect(ph({ NaHCO3: "1" })).toBeLessThanOrEqual(8.6);
});
