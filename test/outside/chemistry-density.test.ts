import {
  type Composition,
  pure,
  readHydrometer,
  type SpeciesName,
  solutionDensity,
} from "@noodlewright/core/chemistry";
import { describe, expect, test } from "vitest";
import { waterDensity } from "#core/chemistry/water-density.ts";
import { dec } from "#core/number/decimal.ts";
import { answered } from "../core/told-of.ts";

function solution(salt: SpeciesName, percent: string): Composition {
  return { species: { [salt]: percent }, water: dec(100).minus(percent).toString(), inert: "0" };
}

function density(salt: SpeciesName, percent: string, temperature: string): number {
  return Number(answered(solutionDensity(solution(salt, percent), temperature)).value);
}

/** % that a density is off a published one. */
function offBy(salt: SpeciesName, percent: string, temperature: string, published: string): number {
  return Math.abs(100 * (density(salt, percent, temperature) / Number(published) - 1));
}

/** % of the density: the accuracy the project asks for, ten times the last digit that the tables print. */
const USUAL = 0.1;

const handbook =
  "CRC Handbook of Chemistry and Physics, 102nd ed. (2021), Concentrative Properties of Aqueous Solutions, 20 °C, read in a copy";

interface Table {
  readonly salt: SpeciesName;
  readonly tolerance: number;
  readonly why?: string;
  /** % by mass and g/mL */
  readonly rows: readonly (readonly [string, string])[];
}

const tables: readonly Table[] = [
  {
    salt: "Na2CO3",
    tolerance: USUAL,
    rows: [
      ["0.5", "1.0034"],
      ["1", "1.0086"],
      ["2", "1.0190"],
      ["3", "1.0294"],
      ["4", "1.0398"],
      ["5", "1.0502"],
      ["6", "1.0606"],
      ["7", "1.0711"],
      ["9", "1.0922"],
      ["10", "1.1029"],
      ["12", "1.1244"],
      ["13", "1.1353"],
      ["15", "1.1574"],
    ],
  },
  {
    salt: "NaHCO3",
    tolerance: USUAL,
    rows: [
      ["0.5", "1.0018"],
      ["1", "1.0054"],
      ["2", "1.0125"],
      ["2.5", "1.0160"],
      ["3.5", "1.0231"],
      ["4", "1.0266"],
      ["5", "1.0337"],
      ["5.5", "1.0372"],
    ],
  },
  {
    salt: "NaCl",
    tolerance: USUAL,
    rows: [
      ["0.1", "0.9989"],
      ["0.3", "1.0004"],
      ["0.4", "1.0011"],
      ["1", "1.0053"],
      ["1.5", "1.0089"],
      ["2", "1.0125"],
      ["2.5", "1.0160"],
      ["3", "1.0196"],
      ["4", "1.0268"],
      ["4.5", "1.0304"],
      ["5", "1.0340"],
      ["6", "1.0413"],
      ["7", "1.0486"],
      ["9", "1.0633"],
      ["10", "1.0707"],
      ["12", "1.0857"],
      ["13", "1.0932"],
      ["15", "1.1085"],
      ["16", "1.1162"],
      ["18", "1.1319"],
      ["19", "1.1398"],
      ["20", "1.1478"],
      ["21", "1.1558"],
      ["22", "1.1640"],
      ["24", "1.1804"],
      ["25", "1.1887"],
    ],
  },
  {
    salt: "KCl",
    tolerance: USUAL,
    rows: [
      ["0.5", "1.0014"],
      ["2", "1.0110"],
      ["3", "1.0174"],
      ["5", "1.0304"],
      ["6", "1.0369"],
      ["8", "1.0500"],
      ["9", "1.0566"],
      ["11", "1.0700"],
      ["12", "1.0768"],
      ["14", "1.0905"],
      ["15", "1.0974"],
      ["17", "1.1114"],
      ["18", "1.1185"],
      ["20", "1.1328"],
      ["22", "1.1474"],
    ],
  },
  {
    salt: "NaOH",
    tolerance: USUAL,
    rows: [
      ["2", "1.0207"],
      ["4", "1.0428"],
      ["5", "1.0538"],
      ["7", "1.0758"],
      ["10", "1.1089"],
      ["13", "1.1419"],
      ["16", "1.1751"],
      ["19", "1.2082"],
      ["20", "1.2192"],
      ["24", "1.2631"],
      ["30", "1.3277"],
      ["36", "1.3901"],
    ],
  },
  {
    salt: "KHCO3",
    tolerance: USUAL,
    rows: [
      ["0.5", "1.0014"],
      ["1", "1.0046"],
      ["3", "1.0181"],
      ["4", "1.0247"],
      ["6", "1.0379"],
      ["7", "1.0446"],
      ["9", "1.0581"],
      ["10", "1.0650"],
    ],
  },
  {
    salt: "KHCO3",
    tolerance: 0.2,
    why: "the apparent volumes of the rows of this salt jump; measured points end at 10 %",
    rows: [
      ["14", "1.0929"],
      ["16", "1.1073"],
      ["20", "1.1372"],
      ["22", "1.1527"],
    ],
  },
  {
    salt: "K2CO3",
    tolerance: USUAL,
    rows: [
      ["0.5", "1.0027"],
      ["1", "1.0072"],
      ["2", "1.0163"],
      ["3", "1.0254"],
      ["5", "1.0437"],
      ["6", "1.0529"],
    ],
  },
  {
    salt: "K2CO3",
    tolerance: 0.45,
    why: "the table is older than the measurements of Gonçalves and Kestin, which modern points at 25 °C bear out; the two differ by 0.10 % at 8 % and by 0.44 % at 50 %",
    rows: [
      ["8", "1.0715"],
      ["9", "1.0809"],
      ["10", "1.0904"],
      ["12", "1.1095"],
      ["14", "1.1291"],
      ["16", "1.1490"],
      ["18", "1.1692"],
      ["20", "1.1898"],
      ["28", "1.2755"],
      ["32", "1.3204"],
      ["40", "1.4142"],
      ["44", "1.4633"],
      ["50", "1.5404"],
    ],
  },
];

describe.each(tables)("$salt at 20 °C", ({ salt, tolerance, rows }) => {
  test.each(rows)(`%s % is %s g/mL (${handbook})`, (percent, published) => {
    expect(offBy(salt, percent, "20", published)).toBeLessThanOrEqual(tolerance);
  });
});

const points = "apparent molar volumes of the compilation behind Laliberté 2009, turned into densities";
const caustic = "advancedthermo.com, density of NaOH solutions (to 20 %), and soapworld.biz, caustic soda table";
const potash = "Cracow University of Technology, physics tables, 18 °C, printed to 0.001";
const brine = "Poradnik fizykochemiczny, WNT 1974";
const fit = "F. A. Gonçalves and J. Kestin, Int. J. Thermophysics 2 (1981) 315, value of the polynomial";
const scatter =
  "the measured points scatter by this much: at 20 °C those at 12.5 and 16.3 % are off in opposite directions";
const differing = "published tables of this salt differ among themselves by 0.2 to 0.7 % at this strength";
const cold = "the fit is weakest in the cold near saturation";

/** Of the measured points every second to sixth of a salt is taken, and the worst of each. */
const elsewhere: readonly (readonly [
  salt: SpeciesName,
  percent: string,
  at: string,
  published: string,
  tolerance: number,
  source: string,
])[] = [
  ["K2CO3", "1.0959", "5", "1.010456", USUAL, points],
  ["K2CO3", "3.9939", "5", "1.037170", USUAL, points],
  ["K2CO3", "1.0959", "10", "1.009976", USUAL, points],
  ["K2CO3", "3.9939", "10", "1.036357", USUAL, points],
  ["K2CO3", "1.0959", "15", "1.009216", USUAL, points],
  ["K2CO3", "3.9939", "15", "1.035295", USUAL, points],
  ["K2CO3", "1.0959", "25", "1.006919", USUAL, points],
  ["K2CO3", "3.9819", "25", "1.032101", USUAL, points],
  ["K2CO3", "5.2375", "25", "1.043301", USUAL, points],
  ["K2CO3", "6.5271", "25", "1.055413", USUAL, points],
  ["K2CO3", "8.8180", "25", "1.075801", USUAL, points],
  ["K2CO3", "11.0625", "25", "1.096801", USUAL, points],
  ["K2CO3", "2.0379", "35", "1.011883", USUAL, points],
  ["K2CO3", "6.5271", "35", "1.051546", USUAL, points],
  ["KHCO3", "4.7989", "5", "1.033499", USUAL, points],
  ["KHCO3", "0.5026", "5", "1.003479", USUAL, points],
  ["KHCO3", "2.9320", "10", "1.019835", USUAL, points],
  ["KHCO3", "0.3010", "10", "1.001744", USUAL, points],
  ["KHCO3", "1.4844", "15", "1.009184", USUAL, points],
  ["KHCO3", "0.1505", "15", "1.000102", USUAL, points],
  ["KHCO3", "0.8009", "25", "1.002380", USUAL, points],
  ["KHCO3", "1.4844", "25", "1.006910", USUAL, points],
  ["KHCO3", "2.8580", "25", "1.016109", USUAL, points],
  ["KHCO3", "4.7651", "25", "1.028500", USUAL, points],
  ["KHCO3", "6.5430", "25", "1.040438", USUAL, points],
  ["KHCO3", "9.0385", "25", "1.057434", USUAL, points],
  ["KHCO3", "1.4844", "35", "1.003741", USUAL, points],
  ["KHCO3", "0.1505", "35", "0.995007", USUAL, points],
  ["Na2CO3", "0.1031", "1", "1.001080", USUAL, points],
  ["Na2CO3", "0.7090", "1", "1.007893", USUAL, points],
  ["Na2CO3", "2.5585", "1", "1.028360", USUAL, points],
  ["Na2CO3", "1.2067", "5", "1.013294", USUAL, points],
  ["Na2CO3", "4.2301", "5", "1.046332", USUAL, points],
  ["Na2CO3", "8.1728", "5", "1.089404", 0.21, `${points}; ${cold}`],
  ["Na2CO3", "3.2882", "15", "1.033978", USUAL, points],
  ["Na2CO3", "4.0456", "20", "1.040101", USUAL, points],
  ["Na2CO3", "12.5037", "20", "1.129102", 0.21, `${points}; ${scatter}`],
  ["Na2CO3", "16.2895", "20", "1.173803", 0.21, `${points}; ${scatter}`],
  ["Na2CO3", "0.1218", "25", "0.998331", USUAL, points],
  ["Na2CO3", "0.4185", "25", "1.001409", USUAL, points],
  ["Na2CO3", "0.6855", "25", "1.004171", USUAL, points],
  ["Na2CO3", "1.3321", "25", "1.010859", USUAL, points],
  ["Na2CO3", "2.4945", "25", "1.022780", USUAL, points],
  ["Na2CO3", "4.3831", "25", "1.042281", USUAL, points],
  ["Na2CO3", "6.3082", "25", "1.062421", USUAL, points],
  ["Na2CO3", "9.4440", "25", "1.095455", USUAL, points],
  ["Na2CO3", "17.4898", "25", "1.183333", USUAL, points],
  ["Na2CO3", "12.5515", "30", "1.124802", 0.21, `${points}; ${scatter}`],
  ["Na2CO3", "0.4607", "35", "0.998766", USUAL, points],
  ["Na2CO3", "8.6118", "35", "1.082444", USUAL, points],
  ["NaHCO3", "0.0364", "1", "1.000188", USUAL, points],
  ["NaHCO3", "1.1075", "1", "1.008580", USUAL, points],
  ["NaHCO3", "5.8949", "1", "1.045756", 0.17, `${points}; ${cold}`],
  ["NaHCO3", "3.2239", "5", "1.024323", USUAL, points],
  ["NaHCO3", "7.7524", "5", "1.058740", 0.17, `${points}; ${cold}`],
  ["NaHCO3", "2.5982", "15", "1.017962", USUAL, points],
  ["NaHCO3", "7.8102", "15", "1.056562", USUAL, points],
  ["NaHCO3", "6.6106", "20", "1.045900", USUAL, points],
  ["NaHCO3", "0.1484", "25", "0.998113", USUAL, points],
  ["NaHCO3", "0.4408", "25", "1.000191", USUAL, points],
  ["NaHCO3", "0.8355", "25", "1.003040", USUAL, points],
  ["NaHCO3", "1.6406", "25", "1.008760", USUAL, points],
  ["NaHCO3", "2.4511", "25", "1.014497", USUAL, points],
  ["NaHCO3", "3.2445", "25", "1.020156", USUAL, points],
  ["NaHCO3", "4.2512", "25", "1.027495", USUAL, points],
  ["NaHCO3", "5.3144", "25", "1.035120", USUAL, points],
  ["NaHCO3", "6.2964", "25", "1.042270", USUAL, points],
  ["NaHCO3", "7.7356", "25", "1.052285", USUAL, points],
  ["NaHCO3", "2.5469", "35", "1.011828", USUAL, points],
  ["NaHCO3", "7.7731", "35", "1.049034", USUAL, points],
  ["NaOH", "0.7936", "10", "1.00893", USUAL, caustic],
  ["NaOH", "0.7936", "25", "1.00584", USUAL, caustic],
  ["NaOH", "0.7936", "40", "1.00078", USUAL, caustic],
  ["NaOH", "3.8459", "10", "1.0434", USUAL, caustic],
  ["NaOH", "3.8459", "25", "1.03911", USUAL, caustic],
  ["NaOH", "3.8459", "40", "1.03323", USUAL, caustic],
  ["NaOH", "7.4069", "10", "1.08315", USUAL, caustic],
  ["NaOH", "7.4069", "25", "1.07787", USUAL, caustic],
  ["NaOH", "7.4069", "40", "1.07114", USUAL, caustic],
  ["NaOH", "13.7922", "10", "1.15437", USUAL, caustic],
  ["NaOH", "13.7922", "25", "1.14776", USUAL, caustic],
  ["NaOH", "13.7922", "40", "1.1398", USUAL, caustic],
  ["NaOH", "28", "20", "1.3064", USUAL, caustic],
  ["NaOH", "28", "30", "1.3003", USUAL, caustic],
  ["NaOH", "28", "40", "1.2942", USUAL, caustic],
  ["NaOH", "36", "20", "1.39", USUAL, caustic],
  ["NaOH", "36", "30", "1.3834", USUAL, caustic],
  ["NaOH", "36", "40", "1.3768", USUAL, caustic],
  ["KOH", "5", "18", "1.045", USUAL, potash],
  ["KOH", "10", "18", "1.091", USUAL, potash],
  ["KOH", "15", "18", "1.139", USUAL, potash],
  ["KOH", "20", "18", "1.188", USUAL, potash],
  ["KOH", "25", "18", "1.238", USUAL, potash],
  ["KOH", "30", "18", "1.29", USUAL, potash],
  ["KOH", "35", "18", "1.344", USUAL, potash],
  ["KOH", "40", "18", "1.4", 0.13, `${potash}; ${differing}`],
  ["NaCl", "4", "20", "1.0268", USUAL, brine],
  ["NaCl", "8", "20", "1.0559", USUAL, brine],
  ["NaCl", "14", "20", "1.1009", USUAL, brine],
  ["NaCl", "20", "20", "1.1478", USUAL, brine],
  ["NaCl", "26", "20", "1.1972", USUAL, brine],
  ["K2CO3", "20", "25", "1.18529", 0.001, fit],
  ["K2CO3", "10", "20", "1.0892", 0.005, fit],
  ["K2CO3", "36", "20", "1.3624", 0.005, fit],
];

test.each(elsewhere)("%s of %s % at %s °C is %s g/mL", (salt, percent, at, published, tolerance, source) => {
  expect(offBy(salt, percent, at, published), source).toBeLessThanOrEqual(tolerance);
});

/** Tables that lie further off than the others, and what was published at other temperatures. */
const disputed: readonly (readonly [SpeciesName, percent: string, at: string, published: string, source: string])[] = [
  ["KOH", "4", "20", "1.0330", handbook],
  ["KOH", "10", "20", "1.0873", handbook],
  ["KOH", "15", "20", "1.1341", handbook],
  ["KOH", "24", "20", "1.2210", handbook],
  ["KOH", "30", "20", "1.2813", handbook],
  ["KOH", "40", "20", "1.3881", handbook],
  ["KHCO3", "20", "20", "1.1372", handbook],
  ["KHCO3", "22", "20", "1.1527", handbook],
  ["Na2CO3", "7.7477", "30", "1.073901", points],
  // Specific weights of 1.0994, 1.1200 and 1.1368, taken as against water at 15 °C, 0.99910 g/mL.
  ["Na2CO3", "9.264", "15", "1.0984", "Schiff's table of the 19th century, from a copy"],
  ["Na2CO3", "11.118", "15", "1.1190", "Schiff's table of the 19th century, from a copy"],
  ["Na2CO3", "12.6", "15", "1.1358", "Schiff's table of the 19th century, from a copy"],
];

test("every published density lies within the doubt that is told of it", () => {
  const all = [
    ...tables.flatMap(({ salt, rows }) =>
      rows.map(([percent, published]) => [salt, percent, "20", published] as const),
    ),
    ...elsewhere,
    ...disputed,
  ];
  const outside = all.filter(([salt, percent, at, published]) => {
    const outcome = solutionDensity(solution(salt, percent), at);
    if (!outcome.ok || outcome.value.range === undefined) return true;
    // Half the last digit of the handbook.
    const { low, high } = outcome.value.range;
    return dec(low).gt(dec(published).plus("0.00005")) || dec(high).lt(dec(published).minus("0.00005"));
  });
  expect(outside).toEqual([]);
});

test("beyond the last row of a table potassium bicarbonate has no density", () => {
  expect(solutionDensity(solution("KHCO3", "22"), "20").ok).toBe(true);
  expect(solutionDensity(solution("KHCO3", "23"), "20").ok).toBe(false);
});

test("a strength read off a hydrometer carries the doubt of the fit: 1.4142 g/mL is 40 % potash (CRC Handbook 2021)", () => {
  const read = readHydrometer(pure("K2CO3"), { measure: "density", value: "1.4142" }, "0.0005");
  const range = read.ok ? read.value.massPercent.range : undefined;
  expect(Number(range?.low)).toBeLessThanOrEqual(40);
  expect(Number(range?.high)).toBeGreaterThanOrEqual(40);
});

/** kg/m³, printed to 0.0001; Kell's equation differs from newer ones by up to 0.0034. */
const water = [
  ["0", 999.8395, "table in a textbook of analytical chemistry"],
  ["4", 999.972, "table in a textbook of analytical chemistry"],
  ["10", 999.7026, "table in a textbook of analytical chemistry"],
  ["15", 999.1026, "table in a textbook of analytical chemistry"],
  ["20", 998.2071, "table in a textbook of analytical chemistry"],
  ["25", 997.0479, "table in a textbook of analytical chemistry"],
  ["30", 995.6502, "table in a textbook of analytical chemistry"],
  ["5", 999.96678, "M. Tanaka and others, Metrologia 38 (2001) 301"],
  ["20", 998.20675, "M. Tanaka and others, Metrologia 38 (2001) 301"],
  ["40", 992.21521, "M. Tanaka and others, Metrologia 38 (2001) 301"],
] as const;

test.each(water)("water at %s °C is %d kg/m³ (%s)", (temperature, published) => {
  expect(Math.abs(waterDensity(temperature).times(1000).toNumber() - published)).toBeLessThanOrEqual(0.004);
});

test("reproduces worked values of another implementation of the same equations (thermo library, test of electrolytes)", () => {
  expect(waterDensity("25").times(1000).toNumber()).toBeCloseTo(997.0448954179155, 9);
  expect(waterDensity("50").times(1000).toNumber()).toBeCloseTo(988.0362916114763, 9);
  expect(density("NaCl", "0.37838838", "0") * 1000).toBeCloseTo(1002.6250120185854, 9);
});
