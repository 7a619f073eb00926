import { describe, expect, test } from "vitest";
import { baumeScales, degreesBaume, densityFromBaume, specificGravity } from "#core/chemistry/baume.ts";
import { baumeFigure } from "#core/chemistry/strength.ts";

/**
 * Degrees and specific gravity by modulus 145, 144.3, 144.32, 144 and 146.78.
 * Source: the definitions degrees = modulus (1 − 1/SG) as printed in CRC Handbook, 51st ed., and the Measurement Unit
 * Rules of Japan (copies), worked out apart from this project; printed to 0.00001.
 */
const scales = ["145", "144.3", "144.32", "144", "146.78"] as const;
const pairs = [
  ["0", 1.0, 1.0, 1.0, 1.0, 1.0],
  ["2", 1.01399, 1.01405, 1.01405, 1.01408, 1.01381],
  ["3", 1.02113, 1.02123, 1.02123, 1.02128, 1.02087],
  ["5", 1.03571, 1.03589, 1.03589, 1.03597, 1.03527],
  ["6", 1.04317, 1.04338, 1.04338, 1.04348, 1.04262],
  ["8", 1.05839, 1.05869, 1.05869, 1.05882, 1.05765],
  ["9", 1.06618, 1.06652, 1.06651, 1.06667, 1.06532],
  ["12", 1.09023, 1.0907, 1.09069, 1.09091, 1.08903],
  ["14", 1.10687, 1.10744, 1.10743, 1.10769, 1.10544],
  ["16", 1.12403, 1.12471, 1.12469, 1.125, 1.12234],
  ["18", 1.14173, 1.14252, 1.1425, 1.14286, 1.13977],
  ["22", 1.17886, 1.17989, 1.17986, 1.18033, 1.17631],
  ["24", 1.19835, 1.1995, 1.19947, 1.2, 1.19547],
  ["26", 1.21849, 1.21978, 1.21974, 1.22034, 1.21527],
  ["28", 1.23932, 1.24076, 1.24072, 1.24138, 1.23573],
  ["35", 1.31818, 1.32022, 1.32016, 1.3211, 1.31312],
  ["40", 1.38095, 1.38351, 1.38344, 1.38462, 1.3746],
  ["50", 1.52632, 1.53022, 1.53011, 1.53191, 1.51664],
  ["55", 1.61111, 1.6159, 1.61576, 1.61798, 1.59926],
  ["66", 1.83544, 1.84291, 1.8427, 1.84615, 1.81703],
  ["70", 1.93333, 1.94213, 1.94187, 1.94595, 1.9117],
] as const;

describe.each(scales.map((scale, index) => ({ scale, column: index + 1 })))("modulus $scale", ({ scale, column }) => {
  test.each(pairs)("%s degrees", (...pair) => {
    const published = Number(pair[column]);
    expect(Math.abs(specificGravity(pair[0], scale).toNumber() - published)).toBeLessThanOrEqual(0.0000051);
    // 0.00001 of specific gravity is worth at most 0.0015 degrees.
    expect(Math.abs(degreesBaume(published, scale).toNumber() - Number(pair[0]))).toBeLessThanOrEqual(0.0015);
  });
});

/**
 * Fixed pairs printed elsewhere, to 0.1 degree or 0.001 of specific gravity.
 * Source: Perry's Chemical Engineers' Handbook, table of degrees Baumé (modulus 145), from memory; concentrated sulfuric acid is 66 degrees.
 */
test.each([
  ["10", 1.0741],
  ["20", 1.16],
  ["30", 1.2609],
  ["40", 1.381],
  ["66", 1.8354],
] as const)("%s degrees of modulus 145 is %d", (degrees, published) => {
  expect(Math.abs(specificGravity(degrees, "145").toNumber() - published)).toBeLessThanOrEqual(0.0001);
});

/** Source: worked out apart from this project with the Laliberté fit and water of 60 °F; degrees to 0.1. */
test.each([
  ["10 % Na2CO3", { Na2CO3: "10" }, "90", 13.92, 0.1],
  ["25 % K2CO3 (the fit used here lies 0.4 % above that one)", { K2CO3: "25" }, "75", 28.02, 0.6],
] as const)("%s shows its degrees", (_, salts, water, published, tolerance) => {
  const outcome = baumeFigure({ species: salts, water, inert: "0" }, "145");
  expect(outcome.ok && Math.abs(Number(outcome.value.value) - published)).toBeLessThanOrEqual(tolerance);
});

test("water reads zero at the temperature of the scale (by definition)", () => {
  expect(densityFromBaume(0, "145", baumeScales["145"].sample).times(1000).toNumber()).toBeCloseTo(999.014, 3);
});
