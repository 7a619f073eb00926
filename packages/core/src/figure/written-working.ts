import { type Decimal, dec } from "../number/decimal.ts";
import { parseExpression, writeExpression } from "./expression.ts";
import { exact, type Fed, type Figure } from "./figure.ts";
import { figureIn, type Graph, type Published } from "./graph.ts";

/** The formula of a figure in names, and the same with the numbers put in. */
export interface WrittenWorking {
  readonly names: string;
  readonly numbers: string;
}

/**
 * Writes the formula of a figure out; nothing for a figure that was given or that a procedure found.
 *
 * @param graph - where the figures stand that it names by id, for one that came through JSON; its own where it is by itself
 * @throws {RangeError} on an id that the graph does not know: a bug of the caller.
 * @example writtenWorking(worked({ id: "a", label: "a", unit: "", places: 0 }, "x * 2", { x: 3 })) // => { names: "3 × 2", numbers: "3 × 2" }
 */
export function writtenWorking(
  figure: Figure & Partial<Published<unknown>>,
  graph: Graph = figure.graph ?? {},
): WrittenWorking | undefined {
  const { working, places, value } = figure;
  if (working.kind !== "formula") return undefined;
  const expression = parseExpression(working.formula);
  const digits: Digits = { places: places + 2, significant: Math.max(7, dec(value).e + places + 3) };
  const figureOf = (id: string): Figure => figure.behind?.find((one) => one.id === id) ?? figureIn(id, graph);
  const nameOf = (name: string): string => {
    const fed = working.from[name];
    if (fed === undefined) return name;
    if ("figure" in fed) return figureOf(fed.figure).label;
    return "figures" in fed ? name.replaceAll("_", " ") : shortText(dec(fed.constant), digits);
  };
  const numberOf = (name: string, index: number | undefined): string => {
    const number = numberAt(working.from[name], index, figureOf);
    if (number === undefined) return "?";
    const text = shortText(number, digits);
    return number.isNegative() ? `(${text})` : text;
  };
  const lengths = Object.fromEntries(
    Object.entries(working.from).flatMap(([name, fed]) => ("figures" in fed ? [[name, fed.figures.length]] : [])),
  );
  return {
    names: writeExpression(expression, nameOf),
    numbers: writeExpression(expression, numberOf, lengths),
  };
}

function numberAt(
  fed: Fed | undefined,
  index: number | undefined,
  figureOf: (id: string) => Figure,
): Decimal | undefined {
  if (fed === undefined) return undefined;
  if ("constant" in fed) return dec(fed.constant);
  const id = "figure" in fed ? fed.figure : fed.figures[index ?? 0];
  return id === undefined ? undefined : exact(figureOf(id));
}

/** How far the numbers of a working are written out: whichever of the two says more. */
interface Digits {
  readonly places: number;
  readonly significant: number;
}

/** Enough digits to check the working by hand: two more than the figure shows, and seven significant ones at least. */
function shortText(value: Decimal, { places, significant }: Digits): string {
  return value
    .toDecimalPlaces(Math.max(places, significant - 1 - value.e, 0))
    .toFixed()
    .replace("-", "−");
}
