import { expect, test } from "vitest";
import { readNoted, readTyped } from "#cli/page/numbers.ts";
import { noteLabel } from "#cli/page/page-data.ts";
import { putOf } from "#cli/page/state.ts";

const read = (typed: string, decimals: number): string => {
  const reading = readTyped(typed, decimals);
  return reading.ok ? reading.number : reading.needs;
};

test("a comma before three digits is asked about where it may part thousands", () => {
  for (const typed of ["1,000", "1.000"]) expect(read(typed, 0)).toBe("1000 or 1, whichever is meant");
  expect(read("2,500", 1)).toBe("2500 or 2.5, whichever is meant");
  expect(["1,000", "0,125"].map((typed, index) => read(typed, index === 0 ? 3 : 0))).toEqual(["1.000", "0.125"]);
});

test("wide digits are read as the spec reads them", () => {
  expect(read("１２．５", 1)).toBe("12.5");
  expect(read("－３，５", 1)).toBe("-3.5");
});

test("thousands as the page writes them are read", () => {
  for (const space of [" ", "\u00A0", "\u2009", "\u202F"]) {
    expect(read(`12${space}280,5`, 0)).toBe("12280.5");
    expect(read(`1${space}012${space}280`, 0)).toBe("1012280");
  }
  for (const typed of ["1 00", "12 2805", "1e9", "0x10", "1,000,000", "abc", ""])
    expect(read(typed, 3)).toContain("a number");
});

test.each([
  ["13.6 %", "%", "13.6 %"],
  ["20,5 °C", "°C", "20.5 °C"],
  ["3 kg", "g", "3 kg"],
  ["-3", "number", -3],
  ["1 200", "number", 1200],
  ["1,200", "number", "1,200"],
  ["1,200", "g", "1,200"],
  ["1,200", "kg", "1.200 kg"],
  ["1e9", "g", "1e9"],
])("%s typed beside %s goes into the spec as %s", (text, unit, value) => {
  expect(putOf({ path: ["x"], text, unit }).value).toBe(value);
});

test("a score is a number from 1 to 5", () => {
  const oks = ["4", "4,5", "0", "6", "99 apples"].map((typed) => readNoted("score", typed, "°C").ok);
  expect(oks).toEqual([true, true, false, false, false]);
});

test("a dough is noted within the temperatures that the spec takes, in either unit", () => {
  const ok = (unit: "°C" | "°F") =>
    ["-40", "25", "77", "500", "7700"].map((typed) => readNoted("temperature", typed, unit).ok);
  expect(ok("°C")).toEqual([false, true, false, false, false]);
  expect(ok("°F")).toEqual([false, false, true, false, false]);
});

test("what is noted of a dough is asked for in the units of the page", () => {
  const labels = (units: "metric" | "us") =>
    (["temperature", "thickness", "cooked"] as const).map((key) => noteLabel(key, { units }));
  expect(labels("metric")).toEqual(["dough temperature, °C", "thickness, mm", "cooked weight, g"]);
  expect(labels("us")).toEqual(["dough temperature, °F", "thickness, in", "cooked weight, oz"]);
});
