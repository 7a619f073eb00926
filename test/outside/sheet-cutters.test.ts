import { strandWidth } from "@noodlewright/core/sheet";
import { describe, expect, it } from "vitest";
import { answered } from "../core/told-of.ts";

/** Groove widths in mm as a cutter maker prints them (quoted on a noodle maker's page, read). Tolerance: half the last digit. */
const printed = [
  { number: 4, width: 7.5, tolerance: 0.05 },
  { number: 5, width: 6, tolerance: 0.05 },
  { number: 6, width: 5, tolerance: 0.05 },
  { number: 8, width: 3.75, tolerance: 0.005 },
  { number: 10, width: 3, tolerance: 0.05 },
  { number: 12, width: 2.5, tolerance: 0.05 },
  { number: 14, width: 2.2, tolerance: 0.06, why: "the maker rounds 2.143 up to 2.2" },
  { number: 16, width: 1.875, tolerance: 0.0005 },
  { number: 18, width: 1.7, tolerance: 0.05 },
  { number: 20, width: 1.5, tolerance: 0.05 },
  { number: 22, width: 1.4, tolerance: 0.05 },
  { number: 24, width: 1.25, tolerance: 0.005 },
  { number: 26, width: 1.15, tolerance: 0.005 },
  { number: 28, width: 1.1, tolerance: 0.05 },
  { number: 30, width: 1, tolerance: 0.05 },
] as const;

/** Widths that go with numbers in rules and trade descriptions, mm, to two places. */
const described = [
  { what: "Okinawa soba, wide end (federation of noodle makers)", number: 10, width: 3 },
  { what: "Okinawa soba, narrow end (federation of noodle makers)", number: 12, width: 2.5 },
  { what: "kishimen, wide end (Japanese fair-competition rule)", number: 4, width: 7.5 },
  { what: "kishimen, narrow end (Japanese fair-competition rule)", number: 6, width: 5 },
  { what: "instant noodle, wide end (Japan Convenience Foods Industry Association)", number: 18, width: 1.67 },
  { what: "instant noodle, narrow end (Japan Convenience Foods Industry Association)", number: 22, width: 1.36 },
  { what: "dip noodle, wide end (maker's page)", number: 9, width: 3.33 },
  { what: "thin noodle (maker's page)", number: 28, width: 1.07 },
  { what: "udon in Japanese patent 6571559, examples 1 to 9", number: 10, width: 3 },
] as const;

describe("cutter numbers", () => {
  it.each([
    ...printed.map((row) => ({ what: "as printed", ...row })),
    ...described.map((row) => ({ tolerance: 0.005, ...row })),
  ])("$what: no. $number cuts $width mm", ({ number, width, tolerance }) => {
    const found = Number(answered(strandWidth({ kind: "number", number })).value);
    expect(Math.abs(found - width)).toBeLessThanOrEqual(tolerance);
  });
});
