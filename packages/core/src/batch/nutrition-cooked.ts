import { type Figure, given, worked } from "../figure/figure.ts";
import { massBalance, type Source } from "../figure/source.ts";
import { materialNamed } from "../materials/catalogue.ts";
import type { Material } from "../materials/material.ts";
import { type Decimal, dec, decimalText } from "../number/decimal.ts";

/** Raw and boiled noodles of one table; the first pair is the alkaline noodle that stands for the others. */
const pairs = [
  ["mext 01047", "mext 01048"],
  ["mext 01052", "mext 01053"],
  ["mext 01038", "mext 01039"],
] as const;

type Element = "sodium" | "potassium";

/** How much of its sodium and potassium a noodle keeps in boiling water, %. */
export interface KeptInBoiling {
  readonly sodium: Figure;
  readonly potassium: Figure;
}

/**
 * What boiling leaves of sodium and potassium, an estimate from raw and boiled noodles of one table.
 *
 * The table states both per 100 g; boiled noodles are brought to 100 g of raw ones on their protein, which is taken to stay.
 * The range is that of three kinds of wheat noodle. Source: Standard Tables of Food Composition in Japan 2020.
 */
export function keptInBoiling(): KeptInBoiling {
  return { sodium: kept("sodium"), potassium: kept("potassium") };
}

function kept(element: Element): Figure {
  const [rawKey, boiledKey] = pairs[0];
  const raw = row(rawKey);
  const boiled = row(boiledKey);
  const leaf = (of: Material, state: string, what: "protein" | Element, value: string): Figure => {
    const shown = what === "protein" ? { unit: "g/100 g", places: 1 } : { unit: "mg/100 g", places: 0 };
    const naming = { id: `kept.${element}.${state}-${what}`, label: `${what} of ${of.name}`, ...shown };
    return given(naming, value, "table value", of.source);
  };
  const from = {
    boiled: leaf(boiled, "boiled", element, boiled[element] ?? "0"),
    before: leaf(raw, "raw", "protein", protein(raw)),
    raw: leaf(raw, "raw", element, raw[element] ?? "0"),
    after: leaf(boiled, "boiled", "protein", protein(boiled)),
  };
  const naming = { id: `kept.${element}`, label: `${element} that boiling leaves`, unit: "%", places: 0 };
  const figure = worked(naming, "100 * boiled * before / (raw * after)", from, massBalance, raw.source);
  const shares = pairs.map(([one, other]) => share(row(one), row(other), element));
  const low = shares.reduce((a, b) => (a.lt(b) ? a : b));
  const high = shares.reduce((a, b) => (a.gt(b) ? a : b));
  const why = "three raw and boiled wheat noodles of the table; more water and longer boiling leave less";
  return { ...figure, range: { low: decimalText(low), high: decimalText(high), why } };
}

function share(raw: Material, boiled: Material, element: Element): Decimal {
  const gain = dec(protein(raw)).div(protein(boiled));
  return dec(boiled[element] ?? 0)
    .times(gain)
    .times(100)
    .div(raw[element] ?? 1);
}

function protein(material: Material): string {
  return material.protein?.value ?? "1";
}

function row(key: string): Material {
  const found = materialNamed(key);
  if (found === undefined) throw new RangeError(`the catalogue has no ${key}`);
  return found;
}

/** What the pot takes of the solids besides, % of them; not taken off here. */
export const solidsLostInBoiling = {
  least: "5.6",
  most: "8.2",
  source: {
    cite: "Liu, Zheng and Liu 2021, Science and Technology of Food Industry 42(17):64-69: cooking loss at 30 to 38 % water",
    at: "abstract",
    standing: "read",
  } satisfies Source,
} as const;
