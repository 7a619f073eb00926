import { answer, type Note, note, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { everyLine, type FormulaLine, inUse } from "../formula/line.ts";
import { sameMaterial } from "../formula/prices.ts";
import { materialName, nearestMaterials } from "../materials/catalogue.ts";
import { currencyCodes, minorPlaces } from "../materials/currencies.ts";
import type { Spec } from "../spec/spec.ts";

/** The ingredients of a batch with their prices, all in one currency. */
export interface Prices {
  readonly lines: readonly FormulaLine[];
  readonly currency: string;
  /** Decimal places of the currency. */
  readonly places: number;
}

/**
 * The prices of the ingredients of a formula, those for dusting too.
 *
 * Problems: `cost.no-prices`, `cost.mixed-currencies`, `cost.unknown-currency`, `cost.two-prices`.
 */
export function pricesOf(spec: Pick<Spec, "prices" | "stock">, formula: Formula): Outcome<Prices> {
  const lines = inUse(everyLine(formula));
  const twice = lines.flatMap((line) => {
    const { name, path, material } = line;
    const { price } = material;
    const first = sameMaterial(line, lines)[0]?.material.price;
    return price === undefined || first === undefined || first.text === price.text
      ? []
      : [problem("cost.two-prices", [...path, "figures", "price"], { name, first: first.text, second: price.text })];
  });
  if (twice.length > 0) return refuse(...twice);
  const currency = oneCurrency(lines);
  if (!currency.ok) return currency;
  const code = currency.value;
  const places = minorPlaces(code);
  if (places === undefined) {
    const facts = { currency: code, nearest: nearestCurrencies(code) };
    return refuse(problem("cost.unknown-currency", pathOfPrice(spec, lines), facts));
  }
  const names = everyLine(formula).map(({ name }) => name);
  return answer({ lines, currency: code, places }, [
    ...unusedNotes("prices", spec.prices, names),
    ...unusedNotes("stock", spec.stock, names),
  ]);
}

/** Whether a line is the water poured in, which costs nothing unless stated. */
export function isTap(line: FormulaLine): boolean {
  return line.role === "water";
}

function oneCurrency(lines: readonly FormulaLine[]): Outcome<string> {
  const priced = lines.flatMap(({ name, material: { price } }) => (price ? [{ name, currency: price.currency }] : []));
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
function samplePrice(lines: readonly FormulaLine[]): Readonly<Record<string, string>> {
  const first = lines.find((line) => !isTap(line))?.name;
  return first === undefined ? {} : { [first]: "0.92 EUR/kg" };
}

function pathOfPrice(spec: Pick<Spec, "prices">, lines: readonly FormulaLine[]): Path {
  const name = Object.keys(spec.prices ?? {})[0];
  if (name !== undefined) return ["prices", name];
  return lines.find(({ material }) => material.price !== undefined)?.path ?? [];
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
