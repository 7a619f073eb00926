import { describe, expect, it } from "vitest";
import { readLabels } from "#core/materials/label.ts";
import { dec } from "#core/number/decimal.ts";
import { answered } from "../core/told-of.ts";

/**
 * Protein in % that a label leaves open: book, serving in g, printed protein in g, least, greatest, and the same two
 * where the label is N × 6.25 and N × 5.7 is wanted. Worked out by hand from the rule: nearest 1 g per serving
 * (21 CFR 101.9(c)(7), read in a copy); nearest 0.1 g below 10 g and nearest 1 g above per 100 g (European Commission,
 * guidance document of December 2012, read in a summary); 5.7 by USDA A-A-20126F and 6.25 by Regulation (EU)
 * No 1169/2011, Annex I. Printed to four places.
 */
type Row = readonly [
  rules: "US" | "EU",
  serving: string,
  printed: string,
  low: string,
  high: string,
  lowConverted: string,
  highConverted: string,
];

// biome-ignore format: one label a line
const rows: readonly Row[] = [
  ["US", "30", "1", "1.6667", "5.0000", "1.5200", "4.5600"],
  ["US", "30", "3", "8.3333", "11.6667", "7.6000", "10.6400"],
  ["US", "30", "4", "11.6667", "15.0000", "10.6400", "13.6800"],
  ["US", "30", "6", "18.3333", "21.6667", "16.7200", "19.7600"],
  ["US", "30", "7", "21.6667", "25.0000", "19.7600", "22.8000"],
  ["US", "31", "2", "4.8387", "8.0645", "4.4129", "7.3548"],
  ["US", "31", "3", "8.0645", "11.2903", "7.3548", "10.2968"],
  ["US", "31", "5", "14.5161", "17.7419", "13.2387", "16.1806"],
  ["US", "31", "6", "17.7419", "20.9677", "16.1806", "19.1226"],
  ["US", "32", "1", "1.5625", "4.6875", "1.4250", "4.2750"],
  ["US", "32", "2", "4.6875", "7.8125", "4.2750", "7.1250"],
  ["US", "32", "4", "10.9375", "14.0625", "9.9750", "12.8250"],
  ["US", "32", "5", "14.0625", "17.1875", "12.8250", "15.6750"],
  ["US", "32", "7", "20.3125", "23.4375", "18.5250", "21.3750"],
  ["US", "33", "1", "1.5152", "4.5455", "1.3818", "4.1455"],
  ["US", "33", "3", "7.5758", "10.6061", "6.9091", "9.6727"],
  ["US", "33", "4", "10.6061", "13.6364", "9.6727", "12.4364"],
  ["US", "33", "6", "16.6667", "19.6970", "15.2000", "17.9636"],
  ["US", "33", "7", "19.6970", "22.7273", "17.9636", "20.7273"],
  ["US", "34", "2", "4.4118", "7.3529", "4.0235", "6.7059"],
  ["US", "34", "3", "7.3529", "10.2941", "6.7059", "9.3882"],
  ["US", "34", "5", "13.2353", "16.1765", "12.0706", "14.7529"],
  ["US", "34", "6", "16.1765", "19.1176", "14.7529", "17.4353"],
  ["US", "35", "1", "1.4286", "4.2857", "1.3029", "3.9086"],
  ["US", "35", "2", "4.2857", "7.1429", "3.9086", "6.5143"],
  ["US", "35", "4", "10.0000", "12.8571", "9.1200", "11.7257"],
  ["US", "35", "5", "12.8571", "15.7143", "11.7257", "14.3314"],
  ["US", "35", "7", "18.5714", "21.4286", "16.9371", "19.5429"],
  ["US", "40", "1", "1.2500", "3.7500", "1.1400", "3.4200"],
  ["US", "40", "3", "6.2500", "8.7500", "5.7000", "7.9800"],
  ["US", "40", "4", "8.7500", "11.2500", "7.9800", "10.2600"],
  ["US", "40", "6", "13.7500", "16.2500", "12.5400", "14.8200"],
  ["US", "40", "7", "16.2500", "18.7500", "14.8200", "17.1000"],
  ["EU", "100", "9.9", "9.8500", "9.9500", "8.9832", "9.0744"],
  ["EU", "100", "10", "9.9500", "10.5000", "9.0744", "9.5760"],
  ["EU", "100", "12", "11.5000", "12.5000", "10.4880", "11.4000"],
  ["EU", "100", "13", "12.5000", "13.5000", "11.4000", "12.3120"],
];

describe("protein that a nutrition label leaves open", () => {
  it.each(rows)("%s: per %s g, %s g protein", (book, serving, printed, low, high, lowConverted, highConverted) => {
    const label = { rules: book, serving, protein: printed, nitrogenFactor: "6.25" } as const;
    const asIs = answered(readLabels([label], "6.25"));
    expect(dec(asIs.low).toFixed(4)).toBe(low);
    expect(dec(asIs.high).toFixed(4)).toBe(high);
    expect([asIs.lowIncluded, asIs.highIncluded]).toEqual([true, false]);
    const converted = answered(readLabels([label], "5.7"));
    expect(dec(converted.low).toFixed(4)).toBe(lowConverted);
    expect(dec(converted.high).toFixed(4)).toBe(highConverted);
  });

  it("is what two labels of one flour have in common", () => {
    const labels = [
      { rules: "US", protein: "4", serving: "30", nitrogenFactor: "5.7" },
      { rules: "US", protein: "4", serving: "34", nitrogenFactor: "5.7" },
    ] as const;
    // From 21 CFR 101.9(c)(7) by arithmetic: 3.5/30 and 4.5/34.
    const asIs = answered(readLabels(labels));
    expect([dec(asIs.low).toFixed(4), dec(asIs.high).toFixed(4)]).toEqual(["11.6667", "13.2353"]);
  });

  it("spans the factors 5.7 and 6.25 where the label does not say", () => {
    // 3.5 × 5.7 / 6.25 / 30 and 4.5 / 30, in %.
    const asIs = answered(readLabels([{ rules: "US", protein: "4", serving: "30" }]));
    expect([dec(asIs.low).toFixed(4), dec(asIs.high).toFixed(4)]).toEqual(["10.6400", "15.0000"]);
  });

  it("takes an EU label to be N × 6.25", () => {
    // 12 g is 11.5 to below 12.5 g; Regulation (EU) No 1169/2011, Annex I point 10.
    const asIs = answered(readLabels([{ rules: "EU", protein: "12" }]));
    expect([dec(asIs.low).toFixed(3), dec(asIs.high).toFixed(3)]).toEqual(["10.488", "11.400"]);
  });

  it.each([
    // Japan, Food Labelling Standards (2015), Appended Table 9: ±20 %, ±0.5 g where less than 2.5 g per 100 g.
    ["11.5", "100", "9.2000", "13.8000"],
    ["2.4", "100", "1.9000", "2.9000"],
    ["2.5", "100", "2.0000", "3.0000"],
    ["0.3", "100", "0.0000", "0.8000"],
    ["1.0", "20", "4.0000", "6.0000"],
    ["0.4", "20", "1.5000", "2.5000"],
  ])("follows Japan's tolerance: %s g per %s g", (printed, serving, low, high) => {
    const asIs = answered(readLabels([{ rules: "JP", protein: printed, serving, nitrogenFactor: "5.7" }]));
    expect([dec(asIs.low).toFixed(4), dec(asIs.high).toFixed(4)]).toEqual([low, high]);
    expect([asIs.lowIncluded, asIs.highIncluded]).toEqual([true, true]);
  });
});
