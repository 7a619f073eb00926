import { createHash } from "node:crypto";
import { additiveLimits, hydrate, hydrates, type Known, type Salt, species } from "@noodlewright/core/chemistry";
import { styleRanges } from "@noodlewright/core/explore";
import { heatOfSolution } from "@noodlewright/core/sheet";
import { expect, it } from "vitest";
import { baumeScales } from "#core/chemistry/baume.ts";
import { atomicWeights } from "#core/chemistry/elements.ts";
import { statements } from "#core/chemistry/hazard-statements.ts";
import { activities } from "#core/chemistry/pitzer.ts";
import { known } from "#core/chemistry/salts/record.ts";
import { additive, isDissolving, speciesNames } from "#core/chemistry/species.ts";
import { waterDensity } from "#core/chemistry/water-density.ts";
import { allergenLists } from "#core/materials/allergen-lists.ts";
import { everydayNames } from "#core/materials/catalogue/everyday-names.ts";
import { mextIngredientRows, mextNoodleRows } from "#core/materials/catalogue/mext-2020-rows.ts";
import { natures } from "#core/materials/catalogue/nature.ts";
import { saltEntries } from "#core/materials/catalogue/salts.ts";
import { usdaRows } from "#core/materials/catalogue/usda-sr28-rows.ts";
import { usdaSpreadRows } from "#core/materials/catalogue/usda-sr28-spread.ts";
import { flourClassList } from "#core/materials/flour-class-list.ts";
import { flourFactor, labelFactor } from "#core/materials/nitrogen.ts";
import { nutrientNames, nutrients } from "#core/materials/nutrients.ts";
import { ruleBooks } from "#core/materials/rounding-rules.ts";
import { severalThings } from "#core/materials/several.ts";
import { dec } from "#core/number/decimal.ts";
import { densities, specificHeats } from "#core/sheet/water/choi-okos.ts";

/** Where a figure comes from, and sentences about it, may be worded anew without a change of the table. */
const prose = "source sources notes note remark advice usedFor use text title".split(" ");

/** Plain data as text, keys in order, without prose. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join()}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const pairs = Object.entries(value).filter(([key, one]) => !prose.includes(key) && typeof one !== "function");
  return `{${pairs
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, one]) => `${JSON.stringify(key)}:${canonical(one)}`)
    .join()}}`;
}

/** What is known of the salts, by formula; those of which it is not known are left out. */
function knownOf<T>(of: (salt: Salt) => Known<T>): Readonly<Record<string, T>> {
  return Object.fromEntries(
    Object.values(species).flatMap((salt): readonly (readonly [string, T])[] => {
      const value = known(of(salt));
      return value === undefined ? [] : [[salt.formula, value]];
    }),
  );
}

const titrated = Object.values(species).map(
  ({ formula, name, atoms, molarMass, equivalentsM, equivalentsP, sodium, potassium, kind, additive: number }) => {
    const carbonate = kind === "carbonate";
    const same = { formula, name, atoms, molarMass, equivalentsM, equivalentsP, sodium, potassium, carbonate };
    return [formula, number === "no number" ? same : { ...same, additive: additive(number) }] as const;
  },
);

/** Values of the fits of density at the strengths and temperatures of the tables behind them, cm³/g: coefficients are not to be had one by one. */
const strengths = "0.5 1 2 3 4 6 8 9 12 15 16 18 20 22 24 28 32 34 40".split(" ");
const volumes = Object.entries(knownOf((salt) => salt.volume)).map(
  ([name, { temperature, strongest, doubt, volume }]) => [
    name,
    temperature,
    strongest,
    doubt.knots,
    ["10", "20", "25", "30", "40"].flatMap((t) =>
      strengths.filter((w) => dec(w).lte(strongest)).map((w) => volume(dec(w).div(100), dec(t)).toFixed(12)),
    ),
  ],
);

/** Activities in three waters of all ions, to nine digits, through which every parameter counts. */
const pitzer = [
  { Na: 2.1, K: 1.3, Cl: 0.7, OH: 0.5, HCO3: 0.6, CO3: 0.8 },
  { Na: 0.3, K: 2.2, Cl: 0.1, OH: 1.2, HCO3: 0.2, CO3: 0.5 },
  { Na: 0.9, K: 0.1, Cl: 0.2, OH: 0.1, HCO3: 0.3, CO3: 0.2 },
].map((water) => {
  const { cations, anions, water: ofWater } = activities(water);
  return [cations.Na, cations.K, anions.Cl, anions.OH, anions.HCO3, anions.CO3, ofWater].map((ln) => ln.toPrecision(9));
});

const waters = ["0", "5", "10", "15", "20", "25", "30", "35", "40"].map((t) => [t, waterDensity(dec(t)).toFixed(8)]);
const heats = speciesNames.filter(isDissolving).map((salt) => [salt, dec(heatOfSolution(salt).value).toFixed(6)]);
const salts = saltEntries.map(({ key, name, aliases, build }) => {
  const { moisture, sodium, potassium, composition, ash, allergens } = build();
  return [key, name, aliases, { moisture, sodium, potassium, composition, ash, allergens }];
});

/** Each table beside what it was compared with, row by row: the checksum holds what was compared. */
const tables: readonly (readonly [table: string, comparedWith: string, rows: unknown, sha256: string])[] = [
  [
    "flours, starches and eggs, United States",
    "USDA National Nutrient Database SR28, files FOOD_DES and NUT_DATA: all numbers and names of all foods; blank factors are printed there as 0",
    usdaRows,
    "3439ced36c87d2ad168557729e416c61000c9be070f4b3fbf84de54556f33cfa",
  ],
  [
    "samples behind those means",
    "USDA National Nutrient Database SR28, file NUT_DATA: all numbers of samples, errors and ends",
    usdaSpreadRows,
    "d3467c103696d1c288719c39486e735a08880a7fc4898fb661d30bc8a87bcaa6",
  ],
  [
    "flours, starches, eggs and noodles, Japan",
    "MEXT, Standard Tables of Food Composition in Japan 2020, items as listed: all numbers of all 30 foods",
    [mextIngredientRows, mextNoodleRows],
    "478992eee9b8618e5fcf2b5e01d9eb92e795360688be7e0dc9b46947e65b98fe",
  ],
  [
    "what the foods of the tables are by nature",
    "21 CFR 137.105 for barley in wheat flours; common practice, no source, for the rest",
    natures,
    "6232117607d8502c2d50d476c61bac482fa716a1608ecb5211be9663a76a4f73",
  ],
  [
    "salts",
    "CIAAW atomic weights 2021 by formula, and USDA SR28 item 02047 for table salt",
    salts,
    "b5a4fb60ff0eaa2f593b37b960c063973e37c053fefbd45799b752ff97c63f9e",
  ],
  [
    "everyday names and names that stand for several things",
    "CAC/GL 36, a public list of additive names in many languages, and trade pages: what 60 of the names stand for; the others are from memory",
    [everydayNames, severalThings.map(({ names, kind, between }) => [names, kind, between])],
    "9b54286aee5cd7d4efa7b25b7216a42bc6f61bb2ae64e3696e516481e579e9a5",
  ],
  [
    "atomic weights",
    "CIAAW, abridged standard atomic weights 2021: all",
    atomicWeights,
    "e7f2b1ae4871c138af4917f79702dc503284d7aaa7de804dcff1c69898245424",
  ],
  [
    "species and hydrates",
    "molar masses from the atomic weights and equivalents of acid of a textbook titration: those of the carbonates and hydroxides; INS numbers of CAC/GL 36 (from memory): all",
    [Object.fromEntries(titrated), hydrates],
    "6476907d4c1904c647af69a3251d3afa6bb5e3aef1e7dff3dc41db65c36af3f2",
  ],
  [
    "solubilities",
    "Comey and Hahn 1921 and Seidell by a public database, and the Salt Institute, for Na2CO3 at 0, 20, 25, 40, 80 and 100 °C, K2CO3 at 0 to 60 °C (155.8 there at 100 °C), NaHCO3 at 0, 20, 25, 40 and 60 °C and all of NaCl; the other rows are from memory or copies",
    knownOf((salt) => salt.solubility),
    "bd7a9a05c0cdf74230039fa5ad3de8acc9321fbc14f7eae0c1e782c96d68df36",
  ],
  [
    "densities of solutions",
    "Laliberté 2009: all coefficients; and the tables named with each fit",
    volumes,
    "b15b507696c8b7fef2dac8afd23fadd950504bdd512e4b52384eb7fe97af848f",
  ],
  [
    "densities of water",
    "Kell 1975 at 0 to 40 °C: all, to 0.00001 kg/m³",
    waters,
    "e3ddbd82c76ba71632aad1583dcd273daba6eb04eaf659ce1e0c96565171a9ba",
  ],
  [
    "activities of the ions of carbonate waters",
    "Harvie, Møller and Weare 1984, by the pH of solutions in chemistry-ph.test.ts; the parameters themselves were not compared again",
    pitzer,
    "9c41cbf22b04dc88c7c9e5e3652eb1751cad24582cdb987ee2bb79332ecdd1ae",
  ],
  [
    "degrees Baumé",
    "CRC Handbook, 51st ed., Japan, Measurement Unit Rules, Appended Table 1, and Metals Reference Book, 1949: all moduli",
    baumeScales,
    "2f21b32c48ba905ff5d35229c7937170aea93a8296343c594ad204c8d785051b",
  ],
  [
    "classes of hazard",
    "Regulation (EC) No 1272/2008, Annex VI, and safety data sheets of suppliers: classes and limits of the carbonates and hydroxides",
    [knownOf((salt) => salt.hazard), statements],
    "8b3a8ef883587d1e8916f9f46a2c4785c9085dfc1580d2411b318437960bf187",
  ],
  [
    "limits of food law",
    "JECFA specifications of INS 500(i) to (iii), 524 and 525, USP 32 and Codex GSFA 06.4.3: all; potassium carbonate is from memory, and the two caps of India are second hand",
    [
      knownOf((salt) => salt.additiveLimits),
      knownOf((salt) => salt.foodLimits),
      knownOf((salt) => salt.kansui),
      additiveLimits(hydrate("Na2CO3.NaHCO3.2H2O")),
    ],
    "7a40d7b1a3243a66b7555ea80cd66f1ca0c9c9905d07b41ad456913383db17b4",
  ],
  [
    "allergens by country",
    "21 USC 321(qq), Regulation (EU) No 1169/2011 Annex II, Canada B.01.010.1, Standard 1.2.3 of Australia and New Zealand, the lists of Japan (2026) and Korea, GB 7718-2025 and CXS 1-1985 as amended in 2024: all lines",
    allergenLists,
    "c45f6440f0dc52e83e9fa3ff3ed443879a2f96637cadfff76bfc465107a5addf",
  ],
  [
    "rounding on labels",
    "21 CFR 101.9(c), the Commission's guidance of December 2012, and Japan's Food Labelling Standards, Appended Table 9: all bands; the smallest places of Japan are from memory",
    [ruleBooks, nutrientNames.map((name) => [name, nutrients[name].label, nutrients[name].tolerance])],
    "e7cd46d4d3966a2af746f559eceaddf5b089079e6deafe087c6599f89b84fa77",
  ],
  [
    "factors of energy, nitrogen and salt",
    "Regulation (EU) No 1169/2011 Annexes I and XIV (of what flour, eggs and oil hold): all",
    [nutrientNames.map((name) => [name, nutrients[name].counted]), flourFactor, labelFactor],
    "c54e12784f5b452855173f7557de2c1bacd8b7017fd2eb15d26e1e5f0930c241",
  ],
  [
    "classes of flour",
    "DIN 10355 (1992), decree 63-720 and the order of 13 July 1963, DPR 187/2001, 21 CFR 137, CODEX STAN 152 and 163, and trade pages of Japan: all limits",
    flourClassList,
    "a6efcd015f285feb16ea3963e77a9108e7526eaaddb6a22a53916f630ca3f5d8",
  ],
  [
    "ranges by style",
    "the papers, rules and trade pages named on each row: all but the water of white salted, yellow alkaline and Malaysian noodles",
    styleRanges(),
    "6b68380fa0c87241ec91e5ae094668e08396e853c3a4a99fe6a6e60f783234cd",
  ],
  [
    "densities and specific heats of food components",
    "Choi and Okos 1986 as printed in ASHRAE 2006, chapter 9: all but the specific heat of water, which begins with 4.1762",
    [densities, specificHeats],
    "2c7fdf996de69597e4768ba6d996fe3508144633ecb901ee7d9401442259a763",
  ],
  [
    "heats of solution",
    "CRC Handbook, standard enthalpies of formation, when it was written; not compared again",
    heats,
    "4aa5d33b9c6971cc6643264b1c9d628fd1118dd0e903068f7e828b8732fd1bfe",
  ],
];

it.each(tables)("the table of %s is as it was compared with %s", (table, comparedWith, rows, sha256) => {
  const now = createHash("sha256").update(canonical(rows)).digest("hex");
  const why = `the table of ${table} has changed. If that was meant: compare what changed with ${comparedWith}, correct the words beside it here if the source is another one, and put ${now} in place of the old checksum. If it was not: take the change back.`;
  expect(now, why).toBe(sha256);
});
