import { answer, type Note, note, type Outcome, type Path, type Problem, problem, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import { materialNamed, nearestMaterials } from "../materials/catalogue.ts";
import { currencyCodes, minorPlaces } from "../materials/currencies.ts";
import type { Price } from "../materials/fields.ts";
import { plainName } from "../materials/nearest.ts";
import type { Quantity } from "../number/quantity.ts";
import type { Spec } from "../spec/spec.ts";

/** An ingredient, what it costs and what there is of it, as far as that is stated. */
interface PricedLine {
  readonly line: FormulaLine;
  readonly price?: Price;
  readonly stock?: Quantity;
}

/** The ingredients of a batch with their prices, all in one currency. */
export interface Prices {
  readonly lines: readonly PricedLine[];
  readonly currency: string;
  /** Decimal places of the currency. */
  readonly places: number;
}

/**
 * The prices and stocks of the ingredients of a formula, those for dusting too: by name in the spec, else of the material.
 *
 * Problems: `cost.no-prices`, `cost.mixed-currencies`, `cost.unknown-currency`, `cost.two-prices`.
 */
export function pricesOf(spec: Pick<Spec, "prices" | "stock">, formula: Formula): Outcome<Prices> {
  const all = [...formula.lines, ...(formula.dusting ? [formula.dusting] : [])];
  const priceFor = finder(spec.prices);
  const stockFor = finder(spec.stock);
  /** What is stated of a line, or of another line of the same material. */
  const same = <T>(line: FormulaLine, stated: (one: FormulaLine) => T | undefined): T | undefined =>
    [line, ...all.filter(({ name }) => materialName(name) === materialName(line.name))]
      .map(stated)
      .find((one) => one !== undefined);
  const lines = all.map((line): PricedLine => {
    const price = priceFor(line.name) ?? same(line, ({ material }) => material.price);
    const stock = stockFor(line.name) ?? same(line, ({ material }) => material.stock);
    return { line, ...(price && { price }), ...(stock && { stock }) };
  });
  const twice = lines.flatMap(({ line, price }) => {
    const first = lines.find((one) => materialName(one.line.name) === materialName(line.name))?.price;
    return price === undefined || first === undefined || first.text === price.text
      ? []
      : [twoPrices(line, first, price)];
  });
  if (twice.length > 0) return refuse(...twice);
  const currency = oneCurrency(lines);
  if (!currency.ok) return currency;
  const code = currency.value;
  const places = minorPlaces(code);
  if (places === undefined) {
    return refuse(
      problem("cost.unknown-currency", pathOfPrice(spec, lines), { currency: code, nearest: nearestCurrencies(code) }),
    );
  }
  const names = all.map(({ name }) => name);
  return answer({ lines, currency: code, places }, [
    ...unusedNotes("prices", spec.prices, names),
    ...unusedNotes("stock", spec.stock, names),
  ]);
}

/** The same for every name of one material: `bread flour` and `white bread flour` are one. */
export function materialName(name: string): string {
  return materialNamed(name)?.key ?? plainName(name);
}

/** Whether a line is the water poured in, which costs nothing unless stated. */
export function isTap(line: FormulaLine): boolean {
  return line.role === "water";
}

function finder<T>(stated: Readonly<Record<string, T>> = {}): (name: string) => T | undefined {
  const byName = new Map(Object.entries(stated).map(([name, value]) => [materialName(name), value]));
  return (name) => byName.get(materialName(name));
}

function twoPrices({ name, path }: FormulaLine, first: Price, second: Price): Problem {
  return problem("cost.two-prices", [...path, "figures", "price"], { name, first: first.text, second: second.text });
}

function oneCurrency(lines: readonly PricedLine[]): Outcome<string> {
  const priced = lines.flatMap(({ line, price }) => (price ? [{ name: line.name, currency: price.currency }] : []));
  const [first] = priced;
  if (first === undefined) return refuse(problem("cost.no-prices", ["prices"], { meant: samplePrice(lines) }));
  const currencies = [...new Set(priced.map(({ currency }) => currency))];
  if (currencies.length === 1) return answer(first.currency);
  const used = currencies.map(
    (code) => `${code} for ${priced.flatMap(({ name, currency }) => (currency === code ? [name] : [])).join(", ")}`,
  );
  return refuse(problem("cost.mixed-currencies", ["prices"], { used }));
}

/** A price of the first ingredient that costs something, to show how one is written. */
function samplePrice(lines: readonly PricedLine[]): Readonly<Record<string, string>> {
  const first = lines.find(({ line }) => !isTap(line))?.line.name;
  return first === undefined ? {} : { [first]: "0.92 EUR/kg" };
}

function pathOfPrice(spec: Pick<Spec, "prices">, lines: readonly PricedLine[]): Path {
  const name = Object.keys(spec.prices ?? {})[0];
  if (name !== undefined) return ["prices", name];
  return lines.find(({ price }) => price !== undefined)?.line.path ?? [];
}

function nearestCurrencies(code: string): readonly string[] {
  return currencyCodes()
    .filter((known) => [...known].filter((letter, index) => letter === code[index]).length === 2)
    .slice(0, 3);
}

function unusedNotes(
  key: "prices" | "stock",
  stated: Readonly<Record<string, unknown>> = {},
  names: readonly string[],
): readonly Note[] {
  const used = new Set(names.map(materialName));
  return Object.keys(stated)
    .filter((name) => !used.has(materialName(name)))
    .map((name) => {
      const [near] = nearestMaterials(name, names, 1);
      return note(`${key}.not-used`, [key, name], { name, ...(near !== undefined && { near }) });
    });
}
