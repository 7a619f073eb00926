import { describe, expect, it } from "vitest";
import { minorPlaces } from "#core/materials/currencies.ts";

/** ISO 4217, list one, as published on 25 June 2024: code and digits of the minor unit. */
const rows: readonly (readonly [code: string, places: number])[] = [
  ["EUR", 2],
  ["USD", 2],
  ["GBP", 2],
  ["CNY", 2],
  ["SEK", 2],
  ["CHF", 2],
  ["MGA", 2],
  ["MRU", 2],
  ["JPY", 0],
  ["KRW", 0],
  ["ISK", 0],
  ["VND", 0],
  ["CLP", 0],
  ["XOF", 0],
  ["BHD", 3],
  ["IQD", 3],
  ["KWD", 3],
  ["TND", 3],
  ["CLF", 4],
  ["UYW", 4],
];

/** Where the common locale data of the runtime follows custom and not the standard, such as whole Hungarian forints. */
const byCustom = "AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR SLE SOS SYP YER";
/** In use by the runtime's data, and no longer or not yet in the list of June 2024. */
const otherDate = (code: string): boolean => minorPlaces(code) === undefined;

describe("minor units of currencies", () => {
  it.each(rows)("%s has %i decimal places", (code, places) => {
    expect(minorPlaces(code)).toBe(places);
  });

  it.each(["XAU", "XTS", "XXX", "EUE", "eur", "", "toString"])("%s is no currency to pay with", (code) => {
    expect(minorPlaces(code)).toBeUndefined();
  });

  it("are those of the runtime's locale data, but where that follows custom", () => {
    const known = Intl.supportedValuesOf("currency").filter((code) => !otherDate(code) && !byCustom.includes(code));
    const off = known.filter((currency) => {
      const options = new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions();
      return options.maximumFractionDigits !== minorPlaces(currency);
    });
    expect(known.length).toBeGreaterThan(120);
    expect(off).toEqual([]);
  });
});
