import { told } from "@noodlewright/core";
import {
  additiveLimits,
  additivesIn,
  assayed,
  type Composition,
  hazardOf,
  hydrate,
  idealYield,
  pure,
  type SpeciesName,
  solutionPh,
  splitByEndPoints,
} from "@noodlewright/core/chemistry";
import { expect, test } from "vitest";
import { alkalinityM, alkalinityP } from "#core/chemistry/composition.ts";
import { alkalinityAs } from "#core/chemistry/titration.ts";
import { dec } from "#core/number/decimal.ts";

/** mg that one mL of 1 N acid neutralises, as the monographs print it; tolerance half the last printed digit, or the monographs' own spread. */
const equivalents: readonly (readonly [SpeciesName, number, number, string])[] = [
  ["Na2CO3", 53.0, 0.05, "JECFA, sodium carbonate"],
  ["Na2CO3", 52.99, 0.01, "USP 32, sodium carbonate"],
  ["K2CO3", 69.11, 0.01, "USP 32, potassium carbonate"],
  ["NaHCO3", 84.01, 0.005, "JECFA, sodium hydrogen carbonate"],
  ["KHCO3", 100.1, 0.05, "USP 32, potassium bicarbonate"],
  ["NaOH", 40.0, 0.005, "JECFA, sodium hydroxide"],
  ["KOH", 56.11, 0.006, "JECFA, potassium hydroxide"],
];

test.each(equivalents)("1 mL of 1 N acid is worth %s: %d mg (%d, %s)", (salt, published, tolerance) => {
  expect(
    Math.abs(
      dec(1000)
        .div(alkalinityM(pure(salt)))
        .toNumber() - published,
    ),
  ).toBeLessThanOrEqual(tolerance);
});

/** mg for one mL of 1 N acid between phenolphthalein and methyl orange. Source: JECFA, sodium hydroxide and potassium hydroxide. */
test.each([
  ["Na2CO3", 106.0],
  ["K2CO3", 138.2],
] as const)("between the two end points 1 mL is %s: %d mg", (salt, published) => {
  const between = alkalinityM(pure(salt)).minus(alkalinityP(pure(salt)));
  expect(Math.abs(dec(1000).div(between).toNumber() - published)).toBeLessThanOrEqual(0.05);
});

test("pure potassium carbonate is 68.16 % K2O (Potassium Carbonate Handbook, section X, Table 1)", () => {
  expect(Math.abs(Number(alkalinityAs(alkalinityM(pure("K2CO3")), "K2O").value) - 68.16)).toBeLessThanOrEqual(0.005);
});

test("1 lb of potassium carbonate takes 0.528 lb of HCl (same place)", () => {
  const acid = alkalinityM(pure("K2CO3")).times("36.458").div(1000);
  expect(Math.abs(acid.toNumber() - 0.528)).toBeLessThanOrEqual(0.0005);
});

test("1 mL of 1 N acid is 30.99 mg Na2O (JECFA, sodium sesquicarbonate)", () => {
  expect(Math.abs(Number(alkalinityAs(1, "Na2O").value) * 10 - 30.99)).toBeLessThanOrEqual(0.005);
});

function within(composition: Composition, part: SpeciesName | "water", low: number, high: number): void {
  const share = Number(part === "water" ? composition.water : composition.species[part]);
  expect(share).toBeGreaterThanOrEqual(low);
  expect(share).toBeLessThanOrEqual(high);
}

test("sodium sesquicarbonate lies in its windows (JECFA 28th session, 1981)", () => {
  const composition = hydrate("Na2CO3.NaHCO3.2H2O");
  within(composition, "NaHCO3", 35.0, 38.6);
  within(composition, "Na2CO3", 46.4, 50.0);
  within(composition, "water", 13.8, 16.7);
});

test("the hydrates of soda lie in the windows of loss on drying (JECFA, sodium carbonate; USP 32)", () => {
  within(hydrate("Na2CO3.10H2O"), "water", 55, 65);
  within(hydrate("Na2CO3.H2O"), "water", 12, 15);
});

/** Mass left of 100, from the equation and atomic weights by hand: 105.988 / 168.012 and 138.204 / 200.228. */
test.each([
  ["NaHCO3", 63.0836],
  ["KHCO3", 69.0233],
] as const)("%s leaves %d %% when baked through", (salt, published) => {
  expect(Math.abs(Number(idealYield(salt).value) - published)).toBeLessThanOrEqual(0.00005);
});

/** Source: Regulation (EC) No 1272/2008 and its forerunner: hydroxide from 5 and 2 % corrosive, from 0.5 % irritant. */
test.each([
  ["5", "Danger", ["H290", "H314"]],
  ["2", "Danger", ["H290", "H314"]],
  ["1.9", "Warning", ["H315", "H319"]],
  ["0.5", "Warning", ["H315", "H319"]],
  ["0.4", "none", []],
] as const)("sodium hydroxide of %s %% is %s", (percent, signal, codes) => {
  const hazard = hazardOf({ species: { NaOH: percent }, water: dec(100).minus(percent).toString(), inert: "0" });
  expect(hazard.signal).toBe(signal);
  expect(hazard.statements.map(({ code }) => code)).toEqual(codes);
});

test("sodium carbonate is a warning, H319 (harmonised entry, read in a copy)", () => {
  const hazard = hazardOf(pure("Na2CO3"));
  expect([hazard.signal, hazard.pictograms, hazard.statements.map(({ code }) => code)]).toEqual([
    "Warning",
    ["GHS07"],
    ["H319"],
  ]);
});

/**
 * Unlike limits: the sum of share over limit is one or more. Source: Regulation (EC) No 1272/2008, Annex I, parts 3.2 and
 * 3.3, and the guidance to it (read in a summary); 0.5 % of hydroxide and 10 % of carbonate are the limits.
 */
test.each([
  ["0.3 % of hydroxide and 5 % of soda: 0.6 + 0.5", { NaOH: "0.3", Na2CO3: "5" }, ["H319"]],
  ["0.3 % of hydroxide and 3 % of soda: 0.6 + 0.3", { NaOH: "0.3", Na2CO3: "3" }, []],
  ["0.3 % of hydroxide and 5 % of potash, for the skin as well", { KOH: "0.3", K2CO3: "5" }, ["H315", "H319"]],
  ["1 % of either hydroxide: 0.5 + 0.5 of the limit of burns", { KOH: "1", NaOH: "1" }, ["H290", "H314"]],
] as const)("sums hydroxide and carbonate: %s", (_, species, codes) => {
  const hazard = hazardOf({ species, water: "90", inert: "0" });
  expect(hazard.statements.map(({ code }) => code)).toEqual(codes);
});

/** Source: Regulation (EC) No 1272/2008, Annex I, tables 3.2.4 and 3.3.4 (read in a summary): 3 % of an irritant. */
test.each([
  ["5", /from 3 %.*from 1 %/u],
  ["2", /pH 11\.5 or more counts as corrosive from 1 %/u],
  ["0.5", undefined],
] as const)("soda of %s %% is below the limit for sums, and what stays open is said", (percent, open) => {
  const hazard = hazardOf({ species: { Na2CO3: percent }, water: dec(100).minus(percent).toString(), inert: "0" });
  expect(hazard.signal).toBe("none");
  if (open === undefined) expect(hazard.open).toEqual([]);
  else expect(hazard.open.join(" ")).toMatch(open);
});

/** Source: Regulation (EC) No 1272/2008, Annex I, 3.2.3.1.2 (read in a copy): pH 11.5 or more. */
test.each([
  ["1 % soda, 11.36 (Harvie, Møller and Weare)", { Na2CO3: "1" }, undefined],
  ["5 % soda, 11.58 (Harvie, Møller and Weare)", { Na2CO3: "5" }, /what is known of the salts/u],
  ["1 % sodium hydroxide, 13.26", { NaOH: "1" }, /limits of its own entry/u],
  ["0.9 % soda with 0.1 % sodium hydroxide, 12.26", { Na2CO3: "0.9", NaOH: "0.1" }, /stays open/u],
] as const)("the pH rule is told beside a pH of 11.5 or more: %s", (_, species, why) => {
  const outcome = solutionPh({ species, water: "95", inert: "0" }, 25);
  const [rule] = outcome.ok ? outcome.notes.filter(({ code }) => code === "ph.classification").map(told) : ["no pH"];
  if (why === undefined) expect(rule).toBeUndefined();
  else expect(rule).toMatch(why);
});

test("no phosphate is called unclassified without a source: the class of some is not known", () => {
  expect(hazardOf(pure("Na5P3O10"))).toMatchObject({ signal: "not known", statements: [] });
  expect(hazardOf(pure("Na2HPO4")).open.join()).toContain("disodium hydrogen phosphate is not known");
  // Safety data sheets of suppliers (read): H315 and H319, some H335.
  expect(hazardOf(pure("Na4P2O7")).statements.map(({ code }) => code)).toEqual(["H315", "H319", "H335"]);
});

test("each salt cites its own entry", () => {
  const cites = (name: "Na2CO3" | "K2CO3") =>
    hazardOf(pure(name))
      .sources.map(({ cite }) => cite)
      .join();
  expect(cites("Na2CO3")).toContain("011-005-00-2, sodium carbonate");
  expect(cites("K2CO3")).not.toContain("sodium carbonate");
});

test("sodium sesquicarbonate has its own additive number and purity (JECFA 28th session, 1981)", () => {
  const trona = hydrate("Na2CO3.NaHCO3.2H2O");
  expect(additivesIn(trona).map(({ eu }) => eu)).toEqual(["E 500(iii)"]);
  const onIt = additiveLimits(trona).limits;
  expect(onIt.map(({ least, most }) => [least, most])).toEqual([
    ["46.4", "50.0"],
    ["35.0", "38.6"],
    ["13.8", "16.7"],
  ]);
});

test("potassium carbonate is a warning, H315, H319, H335 (suppliers' safety data sheets)", () => {
  expect(hazardOf(pure("K2CO3")).statements.map(({ code }) => code)).toEqual(["H315", "H319", "H335"]);
});

/** Source: United States Pharmacopeia 32 (read in a copy): carbonates to 100.5 %, potassium bicarbonate to 101.5 %, dried. */
test.each([
  ["18.9 mL of 1 N acid for 1 g, 100.16 %", { acid: { millilitres: "18.9", normality: 1, sample: 1 } }, "Na2CO3", true],
  ["100.3 % as Na2CO3", { as: "Na2CO3", percent: "100.3" }, "Na2CO3", true],
  ["100.6 % as Na2CO3", { as: "Na2CO3", percent: "100.6" }, "Na2CO3", false],
  ["101.4 %, 10.13 mL of 1 N acid for 1 g", { as: "K2CO3", percent: "69.99" }, "KHCO3", true],
  ["19.2 mL of 1 N acid for 1 g, 101.7 %", { acid: { millilitres: "19.2", normality: 1, sample: 1 } }, "Na2CO3", false],
] as const)("a pure salt may read a little over 100 %%: %s", (_, stated, salt, allowed) => {
  const outcome = assayed(stated, pure(salt));
  expect(outcome.ok).toBe(allowed);
  if (!outcome.ok) return;
  expect(outcome.value.composition).toEqual(pure(salt));
  expect(outcome.notes.map(({ code }) => code)).toEqual(["titration.taken-as-whole"]);
});

test("both end points of pure soda may read a little over 100 % (the same pharmacopoeia)", () => {
  const ends = { phenolphthalein: "9.45", total: "18.9", normality: 1, sample: 1, potassium: 0 };
  const outcome = splitByEndPoints(ends);
  expect(outcome.ok && outcome.value.composition).toEqual(pure("Na2CO3"));
  expect(splitByEndPoints({ ...ends, phenolphthalein: "9.6", total: "19.2" }).ok).toBe(false);
});
