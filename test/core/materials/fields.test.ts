import { toldIn } from "@noodlewright/core/figure";
import { basisText } from "@noodlewright/core/spec";
import { describe, expect, it } from "vitest";
import * as z from "zod/mini";
import {
  amountField,
  amountOrRestField,
  basisField,
  massField,
  numberField,
  parseBasis,
  parsePrice,
  priceField,
  quantityField,
  section,
  shareField,
} from "#core/materials/fields.ts";

/** The value that a field reads, or the code of its refusal. */
function read(field: z.ZodMiniType, input: unknown): unknown {
  const outcome = field.safeParse(input);
  if (outcome.success) {
    const data = outcome.data;
    return typeof data === "object" && data !== null && "value" in data ? data.value : data;
  }
  const [issue] = outcome.error.issues;
  return issue?.code === "custom" ? issue.params?.["problem"].code : issue?.code;
}

const share = shareField("a share", []);
const mass = massField("a mass", []);
const amount = amountField("an amount", [], "20");
const dose = quantityField(["share", "mass", "alkalinity"], "a dose", [], {
  least: "0",
  most: "50",
  mostOther: { alkalinity: "1000" },
});

describe("fields", () => {
  it.each([
    ["share", share, "0 %", "0"],
    ["share", share, "100 %", "100"],
    ["share", share, "100.01 %", "quantity.out-of-range"],
    ["share", share, "12", "quantity.unreadable"],
    ["share", share, "12 g", "quantity.unreadable"],
    ["share", share, null, "invalid_type"],
    ["mass", mass, "1 tonne", "1000000"],
    ["mass", mass, "0.001 mg", "0.000001"],
    ["mass", mass, "1000 tonne", "1000000000"],
    ["mass", mass, "0 g", "quantity.out-of-range"],
    ["mass", mass, "0.0009 mg", "quantity.out-of-range"],
    ["mass", mass, "1001 tonne", "quantity.out-of-range"],
    ["amount", amount, "20 %", "20"],
    ["amount", amount, "0 g", "0"],
    ["amount", amount, "60 g", "60"],
    ["amount", amount, "20.1 %", "quantity.out-of-range"],
    ["amount", amount, "1001 tonne", "quantity.out-of-range"],
    ["dose", dose, "17 meq", "17"],
    ["dose", dose, "1001 meq", "quantity.out-of-range"],
    ["dose", dose, "51 %", "quantity.out-of-range"],
    ["amount or rest", amountOrRestField("a share", []), " Rest ", "rest"],
    ["amount or rest", amountOrRestField("a share", []), "70 %", "70"],
    ["amount or rest", amountOrRestField("a share", []), "1001 tonne", "quantity.out-of-range"],
    ["amount or rest", amountOrRestField("a share", []), "remainder", "quantity.unreadable"],
    ["number", numberField("a number", [], { above: 0.5, most: 5 }), 1.85, "1.85"],
    ["number", numberField("a number", [], { above: 0.5, most: 5 }), 0.5, "too_small"],
    ["number", numberField("a number", [], { above: 0.5, most: 5 }), 5.1, "too_big"],
    ["number", numberField("a number", [], { above: 0.5, most: 5 }), Number.NaN, "invalid_type"],
    ["number", numberField("a number", [], { above: 0.5, most: 5 }), "1.8", "invalid_type"],
    ["basis", basisField("a basis"), "as bought", "basis.unreadable"],
    ["price", priceField("a price"), "cheap", "price.unreadable"],
  ] as const)("%s of %j", (_, field, input, expected) => {
    expect(read(field, input)).toBe(expected);
  });
});

describe("the limits of a quantity", () => {
  // 60 °C is 140 °F, 0 °C 32 °F; 100 mm is 3.93700… in, told so that it is not passed
  it.each([
    ["temperature", { least: "0", most: "60" }, "200 °C", "from 0 °C to 60 °C", "from 32 °F to 140 °F"],
    ["length", { above: "0", most: "100" }, "1 m", "above 0 and at most 100 mm", "above 0 and at most 3.937 in"],
    ["time", { least: "0", most: "604800" }, "8 d", "from 0 to 7 d", "from 0 to 7 d"],
    ["time", { above: "60", most: "2000" }, "1 h", "above 1 min and at most 2000 s", "above 1 min and at most 2000 s"],
    [
      "share",
      { least: "1", most: "90", after: " of flour" },
      "95 %",
      "from 1 % to 90 % of flour",
      "from 1 % to 90 % of flour",
    ],
  ] as const)("of %s %j are told for %s in the units asked for", (dimension, limits, input, metric, us) => {
    const outcome = quantityField([dimension], "one", [], limits).safeParse(input);
    const [issue] = outcome.error?.issues ?? [];
    const refusal = issue?.code === "custom" ? issue.params?.["problem"] : undefined;
    expect((["metric", "us"] as const).map((units) => toldIn(units)(refusal).expected)).toEqual([
      `a ${dimension} ${metric}`,
      `a ${dimension} ${us}`,
    ]);
  });
});

describe("moisture bases", () => {
  it.each([
    ["as is", "as is"],
    ["As-Is", "as is"],
    ["dry", "dry"],
    ["dry basis", "dry"],
    ["DM", "dry"],
    ["0 %", "dry"],
    ["14 % mb", "14 % mb"],
    ["14%", "14 % mb"],
    ["13.50 % moisture basis", "13.5 % mb"],
  ])("%s reads as %s", (written, text) => {
    const basis = parseBasis(written);
    expect(basis && basisText(basis)).toBe(text);
  });

  it.each(["", "wet", "100 % mb", "-3 %", "14 g"])("%j is no basis", (written) => {
    expect(parseBasis(written)).toBeUndefined();
  });
});

describe("prices", () => {
  it.each([
    ["0.92 EUR/kg", "0.92", "1000", "EUR"],
    ["23.50 eur per 25 kg", "0.94", "25000", "EUR"],
    ["4.5359237 USD for 5 lb", "2", "2267.96185", "USD"],
    ["1.20 GBP / 500 g", "2.4", "500", "GBP"],
    ["0 EUR/kg", "0", "1000", "EUR"],
  ])("%s is %s a kilogram", (written, perKilogram, pack, currency) => {
    expect(parsePrice(written)).toMatchObject({ text: written, perKilogram, pack, currency });
  });

  it.each(["", "0.92/kg", "EUR 0.92/kg", "0.92 EUR", "0.92 EUR/litre", "1 EUR per 0 kg", "0,92 EUR/kg", "-1 EUR/kg"])(
    "%j is no price",
    (written) => {
      expect(parsePrice(written)).toBeUndefined();
    },
  );
});

it("makes the schema of a section when one is read, and not to see whether it may be missing", () => {
  let made = 0;
  const mixer = section({}, () => {
    made += 1;
    return { largest: massField("Largest load", ["10 kg"]) };
  });
  const kitchen = z.strictObject({ mixer: z.optional(mixer) });
  expect([read(kitchen, {}), made]).toEqual([{}, 0]);
  expect([kitchen.parse({ mixer: { largest: "10 kg" } }).mixer?.largest.value, made]).toEqual(["10000", 1]);
});
