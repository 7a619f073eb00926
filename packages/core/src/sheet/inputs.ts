import { type Figure, given, type Naming } from "../figure/figure.ts";
import { type Outcome, type Path, type Problem, problem, refuse } from "../figure/problem.ts";
import { fromSpec, type Source } from "../figure/source.ts";
import { type DecimalText, dec, decOf } from "../number/decimal.ts";

/** What a given number has to keep to, in its own unit. A number that was left out keeps to everything. */
export interface Limits {
  readonly path: Path;
  readonly value: Given | number | undefined;
  readonly unit: string;
  readonly above?: string;
  readonly least?: string;
  readonly below?: string;
  readonly most?: string;
  readonly whole?: true;
}

/**
 * Puts problems at the places of the spec that the names of a request stand for: of its first two names, or of the first.
 *
 * @param otherwise - where the others go
 */
export function placing(places: Readonly<Record<string, Path>>, otherwise: Path) {
  const placeOf = (path: Path): Path => places[path.slice(0, 2).join(".")] ?? places[String(path[0])] ?? otherwise;
  return (problems: readonly Problem[]): Outcome<never> =>
    refuse(...problems.map((one) => ({ ...one, path: placeOf(one.path) })));
}

/** Finds the numbers that do not keep to their limits. */
export function outsideLimits(limits: readonly Limits[]): readonly Problem[] {
  return limits.flatMap((limit) => {
    if (limit.value === undefined) return [];
    const given = numberOf(limit.value);
    const value = decOf(limit.path.join("."), given);
    const kept =
      (limit.above === undefined || value.gt(dec(limit.above))) &&
      (limit.least === undefined || value.gte(dec(limit.least))) &&
      (limit.below === undefined || value.lt(dec(limit.below))) &&
      (limit.most === undefined || value.lte(dec(limit.most))) &&
      (limit.whole === undefined || value.isInteger());
    const { path, ...facts } = limit;
    return kept ? [] : [problem("sheet.out-of-range", path, { ...facts, value: String(given) })];
  });
}

/** The figure of a number that was asked for. */
export function asked(naming: Naming, value: DecimalText | number): Figure {
  return given(naming, value, "the spec", fromSpec);
}

/** A number that was given, or the figure that it was found as. */
export type Given = DecimalText | Figure;

/** The number itself. */
export function numberOf<Number extends DecimalText | number>(given: Number | Figure): Number | DecimalText {
  return typeof given === "object" ? given.value : given;
}

/** The figure that was given, or the figure of the number that was asked for. */
export function askedFigure(naming: Naming, value: Given): Figure {
  return typeof value === "object" ? value : asked(naming, value);
}

/** What is taken where nothing was asked for. */
export interface Usual {
  readonly value: DecimalText;
  readonly source: Source;
}

/** How a temperature is named and shown. */
export function celsius(of: string, label: string): Naming {
  return { id: `${of}.temperature`, label, unit: "°C", places: 1 };
}

/** The figure of a number that was asked for or, where it was left out, of the usual one. */
export function askedOr(naming: Naming, value: Given | undefined, usual: Usual): Figure {
  if (value !== undefined) return askedFigure(naming, value);
  return given(naming, usual.value, "the usual value", usual.source);
}
