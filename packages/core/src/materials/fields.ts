import * as z from "zod/mini";
import { type Path, type Problem, problem } from "../figure/problem.ts";
import { said } from "../figure/said.ts";
import { type Decimal, type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { parseQuantity, type Quantity } from "../number/quantity.ts";
import type { Dimension } from "../number/units.ts";

/** What a schema means: it goes into the JSON Schema and into the messages. */
export interface Meaning {
  /** Name of a section. */
  readonly id?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  /** What a quantity with its unit measures there, and whether the word `rest` would do as well. */
  readonly quantity?: { readonly dimensions: readonly Dimension[]; readonly rest?: true };
  readonly maxProperties?: number;
  /** Keys of a section that say the same, of which one is stated; `orNone` where none need be. */
  readonly ways?: readonly { readonly keys: readonly string[]; readonly orNone?: true }[];
}

/** What every schema of the house means. */
export const meanings = z.registry<Meaning>();

/** A schema with its meaning; of one that means something already, a copy. */
export function described<Schema extends z.ZodMiniType>(schema: Schema, meaning: Meaning): Schema {
  const own = meanings.has(schema) ? z.clone(schema) : schema;
  meanings.add(own, meaning);
  return own;
}

/** A key that may be left out, with what it means. */
export function optional<Schema extends z.ZodMiniType>(
  schema: Schema,
  description: string,
  examples?: readonly unknown[],
) {
  return described(z.optional(schema), { description, ...(examples && { examples }) });
}

/** A section with keys of its own. Its schema is made when one is read: making all of them takes time at every start. */
export function section<Shape extends z.core.$ZodLooseShape>(meaning: Meaning, shape: () => Shape) {
  const schema = z.lazy(() => z.strictObject(shape()));
  // None may be missing by itself; if this were not said, it would be made as soon as somebody asks.
  Object.assign(schema._zod, { optin: undefined, optout: undefined });
  return described(schema, meaning);
}

/** A schema whose values are read into something else, with its meaning. */
export function readAs<From extends z.ZodMiniType, Value>(
  from: From,
  read: (input: z.output<From>, context: z.core.ParsePayload) => Value,
  meaning: Meaning,
) {
  return described(z.pipe(from, z.transform(read)), meaning);
}

/** The same of what may not be readable: it is refused then, as it was said. */
export function readOrRefused<From extends z.ZodMiniType, Value>(
  from: From,
  read: (input: z.output<From>) => Value | undefined,
  refused: (written: string) => Problem,
  meaning: Meaning,
) {
  return readAs(from, (input, context): Value => read(input) ?? refuseValue(context, refused(said(input))), meaning);
}

/** What people write. One schema serves every field: making one takes time at every start. */
export const written = z.string();

/** A text in a line, without the spaces around it. */
export function word(most: number) {
  return written.check(z.trim(), z.minLength(1), z.maxLength(most));
}

/** A whole number. */
export function count(least: number, most: number) {
  return z.int().check(z.minimum(least), z.maximum(most));
}

/** Refuses a value from within a schema. */
export function refuseValue(context: z.core.ParsePayload, problem: Problem, path: Path = []): typeof z.NEVER {
  context.issues.push({
    code: "custom",
    input: context.value,
    message: problem.code,
    params: { problem },
    ...(path.length > 0 && { path: [...path] }),
  });
  return z.NEVER;
}

/** The same of what is a limit by itself, before which "at most" says nothing more. */
export const atMost = written.check(z.overwrite((text) => text.replace(/^\s*at most\s+/iu, "")));

/** A text, or a number as its text. */
export function textOrNumber(most: number, description: string, examples: readonly string[]) {
  const from = z.union([word(most), z.number().check(z.nonnegative())]);
  return readAs(from, String, { description, examples: [...examples] });
}

interface QuantityLimits {
  /** Least value in base units. */
  readonly least?: string;
  /** Value in base units that it must exceed. */
  readonly above?: string;
  /** Greatest value in base units of the first dimension. */
  readonly most?: string;
  /** Greatest value in base units of the other dimensions; a mass has one anyway. */
  readonly mostOther?: Readonly<Partial<Record<Dimension, string>>>;
  /** What the message says after the limits, as of what a share is. */
  readonly after?: string;
  /** The limits in words, where their numbers do not say them. */
  readonly words?: string;
}

/** Greatest mass that is believed, g: a thousand tonnes. Weights to a microgram still add up exactly within 40 digits. */
const greatestMass = "1000000000";
/** Least mass above zero that is believed, g. */
const leastMass = "0.000001";
const massWords = "a mass above zero, from 0.001 mg to 1000 tonnes";

/** A field that takes a quantity with its unit; the first dimension is the usual one. */
export function quantityField(
  dimensions: readonly Dimension[],
  description: string,
  examples: readonly string[],
  limits: QuantityLimits = {},
  form = written,
) {
  return readAs(
    form,
    (input, context): Quantity => {
      const reading = parseQuantity(input, dimensions);
      if (!reading.ok) {
        return refuseValue(context, problem("quantity.unreadable", [], { written: said(input), ...reading.fault }));
      }
      const { dimension } = reading.quantity;
      const value = dec(reading.quantity.value);
      const { least, above, words, after } = limits;
      const most = dimension === dimensions[0] ? limits.most : (limits.mostOther?.[dimension] ?? mostOf(dimension));
      const wrong =
        (least !== undefined && value.lt(least)) ||
        (above !== undefined && value.lte(above)) ||
        (most !== undefined && value.gt(most));
      if (!wrong) return reading.quantity;
      const kept = words === undefined ? { dimension, least, above, most, after } : { limits: words };
      return refuseValue(context, problem("quantity.out-of-range", [], { written: said(input), ...kept }));
    },
    { description, examples: [...examples], quantity: { dimensions } },
  );
}

function mostOf(dimension: Dimension): string | undefined {
  return dimension === "mass" ? greatestMass : undefined;
}

/** A percentage from 0 to 100. */
export function shareField(description: string, examples: readonly string[], most = "100") {
  return quantityField(["share"], description, examples, { least: "0", most });
}

/** A temperature between two, °C. */
export function celsius(description: string, example: string, least: string, most: string) {
  return quantityField(["temperature"], description, [example], { least, most });
}

/** A mass above zero. */
export function massField(description: string, examples: readonly string[], form = written) {
  const limits = { least: leastMass, most: greatestMass, words: massWords };
  return quantityField(["mass"], description, examples, limits, form);
}

/** A mass on hand, which may be none. */
export function stockField(description: string, examples: readonly string[]) {
  const words = "a mass from 0 to 1000 tonnes";
  return quantityField(["mass"], description, examples, { least: "0", most: greatestMass, words });
}

/** An amount: % of flour, or a mass in a formula written in masses. */
export function amountField(description: string, examples: readonly string[], most = "200") {
  return quantityField(["share", "mass"], description, examples, {
    least: "0",
    most,
    words: `at most ${most} % of flour, or a mass of at most 1000 tonnes`,
  });
}

/** The remainder to 100 %. */
export type Rest = "rest";

/** An amount, or the word `rest` for what is left to 100 %. */
export function amountOrRestField(description: string, examples: readonly string[]) {
  return readAs(
    written,
    (input, context): Quantity | Rest => {
      if (input.trim().toLowerCase() === "rest") return "rest";
      const reading = parseQuantity(input, ["share", "mass"]);
      if (!reading.ok) {
        const facts = { written: said(input), ...reading.fault, rest: true } as const;
        return refuseValue(context, problem("quantity.unreadable", [], facts));
      }
      const most = mostOf(reading.quantity.dimension);
      if (most !== undefined && dec(reading.quantity.value).gt(most))
        return refuseValue(context, problem("quantity.out-of-range", [], { written: said(input), limits: massWords }));
      return reading.quantity;
    },
    { description, examples: [...examples], quantity: { dimensions: ["share", "mass"], rest: true } },
  );
}

/** A moisture basis: as is, or at a stated moisture (dry is 0 %). */
export type MoistureBasis = { readonly kind: "as is" } | { readonly kind: "at"; readonly moisture: DecimalText };

/**
 * Reads a moisture basis: `as is`, `dry`, `14 % mb`.
 *
 * @example parseBasis("14 % mb") // => { kind: "at", moisture: "14" }
 */
export function parseBasis(text: string): MoistureBasis | undefined {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/gu, " ");
  if (plain === "as is") return { kind: "as is" };
  if (["dry", "dry basis", "dry matter", "db", "dm"].includes(plain)) return { kind: "at", moisture: "0" };
  const match = /^(\d+(?:\.\d+)?) ?%? ?(?:mb|moisture|moisture basis|basis)?$/u.exec(plain);
  if (match?.[1] === undefined || dec(match[1]).gte(100)) return undefined;
  return { kind: "at", moisture: decimalText(dec(match[1])) };
}

/** Writes a moisture basis. @example basisText({ kind: "at", moisture: "0" }) // => "dry" */
export function basisText(basis: MoistureBasis): string {
  if (basis.kind === "as is") return "as is";
  return dec(basis.moisture).isZero() ? "dry" : `${basis.moisture} % mb`;
}

/** Figures as a spec writes them: quantities, prices and moisture bases by their texts. */
export function writtenFigures(figures: object): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(figures).map(([key, value]) => [key, writtenValue(key, value)]));
}

function writtenValue(key: string, value: unknown): unknown {
  if (key === "nitrogenFactor") return Number(value);
  if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
  if ("text" in value) return value.text;
  return isBasis(value) ? basisText(value) : writtenFigures(value);
}

function isBasis(value: object): value is MoistureBasis {
  return "kind" in value && (value.kind === "as is" || value.kind === "at");
}

/** A field that takes a moisture basis. */
export function basisField(description: string) {
  const refused = (written: string) => problem("basis.unreadable", [], { written });
  return readOrRefused(z.string(), parseBasis, refused, { description, examples: ["as is", "dry", "14 % mb"] });
}

/** A price for a mass. */
export interface Price {
  readonly text: string;
  /** ISO 4217 code. */
  readonly currency: string;
  readonly perKilogram: DecimalText;
  /** Mass that is sold for the stated amount, g. */
  readonly pack: DecimalText;
  /** What the pack costs. */
  readonly amount: DecimalText;
  /** The pack as written, such as `25 kg`, where it is sold by the pack; `0.92 EUR/kg` and `0.92 EUR per kg` sell by weight. */
  readonly packText?: string;
}

const priceForm = /^(\d+(?:\.\d+)?)\s*([A-Za-z]{3})\s*(?:\/|per|for)\s*(.+)$/u;

/**
 * Reads a price: `0.92 EUR/kg`, `23.50 EUR per 25 kg`.
 *
 * @example parsePrice("23 EUR per 25 kg").perKilogram // => "0.92"
 */
export function parsePrice(text: string): Price | undefined {
  const match = priceForm.exec(text.trim());
  if (match?.[1] === undefined || match[2] === undefined || match[3] === undefined) return undefined;
  const byPack = /^\d/u.test(match[3]);
  const mass = byPack ? match[3] : `1 ${match[3]}`;
  const reading = parseQuantity(mass, ["mass"]);
  if (!reading.ok || dec(reading.quantity.value).isZero()) return undefined;
  const pack: Decimal = dec(reading.quantity.value);
  return {
    text: text.trim(),
    currency: match[2].toUpperCase(),
    perKilogram: decimalText(dec(match[1]).div(pack).times(1000)),
    pack: decimalText(pack),
    amount: decimalText(dec(match[1])),
    ...(byPack && { packText: match[3] }),
  };
}

/** An amount of money. */
export interface Money {
  /** ISO 4217 code. */
  readonly currency: string;
  readonly amount: DecimalText;
}

/** A field that takes the most that something may cost in all. */
export function moneyField(description: string) {
  const read = (input: string): Money | undefined => {
    const [, amount, currency] = /^(\d+(?:\.\d+)?)\s*([A-Za-z]{3})$/u.exec(input.trim()) ?? [];
    return amount && currency ? { amount: decimalText(dec(amount)), currency: currency.toUpperCase() } : undefined;
  };
  const refused = (written: string) => problem("price.unreadable", [], { written, of: "all" });
  return readOrRefused(atMost, read, refused, { description, examples: ["12 EUR", "at most 12 EUR"] });
}

/** A field that takes a price. */
export function priceField(description: string, form = written) {
  const refused = (written: string) => problem("price.unreadable", [], { written, of: "a pack" });
  return readOrRefused(form, parsePrice, refused, { description, examples: ["0.92 EUR/kg", "23 EUR per 25 kg"] });
}

/** A plain number above zero, kept as decimal text. */
export function numberField(
  description: string,
  examples: readonly number[],
  limits: { readonly above: number; readonly most: number },
) {
  return readAs(
    z.number().check(z.gt(limits.above), z.maximum(limits.most)),
    (value): DecimalText => decimalText(dec(value)),
    { description, examples: [...examples] },
  );
}
