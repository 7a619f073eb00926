import type { ComparedLine, ComparedRange, Comparison } from "../explore/compare.ts";
import { type Figure, shownValue } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import { inSystem, inUnit, type UnitSystem } from "../figure/in-system.ts";
import { type Decimal, dec, decimalText, fixedText } from "../number/decimal.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import type { Cell, Report, Table, Telling } from "./schema.ts";
import { cellOr, figureCell, words } from "./show.ts";
import { exactLines } from "./tolerance-report.ts";

/** Tells noodles side by side: the first as it is, the others with how they differ from it. */
export function compareReport(
  comparison: Published<Comparison>,
  { notes, units = "metric" }: Telling,
  cautions: readonly string[],
): Report {
  const { names, formula, loads, bowls, sums, ranges, exact } = comparison;
  const same = formula.filter(({ figures: [first = null, ...others] }) =>
    others.every((one) => first !== null && one !== null && apart(first, one).isZero()),
  );
  const unlike = same.length === formula.length ? ["The formulas are the same."] : [];
  const scale = units === "us" ? "oz" : "g";
  const finer = units === "us" ? 1 : 0;
  const onScale = (lines: readonly ComparedLine[], most: number) =>
    lines.map((line) =>
      each(line, (figure) => ({ ...inUnit(figure, scale), places: Math.min(figure.places + finer, most) })),
    );
  const inSums = sums.map((line) => inUnits(line, units));
  const inRanges = ranges.map((line) => inUnits(line, units));
  return report({
    command: "compare",
    title: names.join(" – "),
    main: "formula",
    sections: [
      section("formula", "On 100 of flour", sideBySide("formula", names, formula, false), [
        ...(names.length > 2 ? names.map((name, index) => `${index + 1}: ${name}.`) : []),
        ...unlike,
      ]),
      section("sums", "What they come to", sideBySide("sums", names, inSums, true)),
      section("ranges", "What errors leave open", rangeTable(names, inRanges), rangeLines(ranges, exact)),
      section("loads", `One load, ${scale}`, sideBySide("loads", names, onScale(loads, mostPlaces), false)),
      section("bowls", `For one bowl, ${scale}`, sideBySide("bowls", names, onScale(bowls, mostPlaces + 1), false)),
    ],
    figures: Object.values(comparison.graph),
    from: [comparison],
    units,
    notes,
    cautions,
  });
}

/** How far apart two figures are as they are shown. */
function apart(first: Figure, other: Figure): Decimal {
  return dec(shownValue(other)).minus(shownValue(first));
}

function sideBySide(id: string, names: readonly string[], lines: readonly ComparedLine[], units: boolean): Table {
  const [first = "", ...others] = shortNames(names);
  const columns = [
    wordColumn("what", units ? "figure" : "ingredient"),
    ...(units ? [wordColumn("unit", "unit")] : []),
    numberColumn("1", first),
    ...others.flatMap((name, index) => [
      numberColumn(String(index + 2), name),
      numberColumn(`difference-${index + 2}`, names.length > 2 ? `${name} less 1` : "difference"),
    ]),
  ];
  return table(
    id,
    columns,
    lines.map(({ label, unit, figures: [one, ...rest], differences, partly }) =>
      row([
        partly ? `${label}, what is priced of it` : label,
        ...(units ? [words(unit)] : []),
        cellOr(one, ""),
        ...rest.flatMap((figure, index) => [cellOr(figure, ""), signedCell(one, figure, differences[index])]),
      ]),
    ),
  );
}

/** A line with each of its figures shown another way. */
function each<Line extends ComparedLine | ComparedRange>(line: Line, show: (figure: Figure) => Figure): Line {
  const shown = (figure: Figure | null): Figure | null => figure && show(figure);
  return { ...line, figures: line.figures.map(shown), differences: line.differences.map(shown) };
}

/** A line in the unit of a system that suits its first figure. */
function inUnits<Line extends ComparedLine | ComparedRange>(line: Line, units: UnitSystem): Line {
  const beside = line.figures.find((figure) => figure !== null);
  const shown = each(line, (figure) => inSystem(figure, units, beside));
  return { ...shown, unit: shown.figures.find((figure) => figure !== null)?.unit ?? line.unit };
}

/** Of a mass in a load, however fine the scale of the noodle that it is weighed for. */
const mostPlaces = 2;

/** More than two noodles are numbered, so that their columns fit beside each other. */
function shortNames(names: readonly string[]): readonly string[] {
  return names.length > 2 ? names.map((_, index) => String(index + 1)) : names;
}

/** A difference of the figures as they are shown, so that it can be told from them; its value stays exact. */
function signedCell(first: Figure | null = null, other: Figure | null = null, figure: Figure | null = null): Cell {
  if (first === null || other === null || figure === null) return words("–");
  const value = apart(first, other);
  if (value.isZero()) return { ...figureCell(figure), text: "same" };
  const { text } = figureCell({ ...figure, value: decimalText(value) });
  return { ...figureCell(figure), text: value.isPositive() ? `+${text}` : text };
}

function rangeTable(names: readonly string[], ranges: readonly ComparedRange[]): Table {
  const columns = [
    wordColumn("what", "figure"),
    wordColumn("unit", "unit"),
    ...shortNames(names).map((name, index) => numberColumn(String(index + 1), name)),
    ...names.slice(1).flatMap((_, index) => {
      const which = names.length > 2 ? `${index + 2} ` : "";
      return [
        numberColumn(`difference-${index + 2}`, `${which}difference`),
        wordColumn(`apart-${index + 2}`, which === "" ? "told apart" : `${which}told from 1`),
      ];
    }),
  ];
  return table(
    "ranges",
    columns,
    ranges.map(({ label, unit, figures, differences, apart }) =>
      row([
        label,
        unit,
        ...figures.map((figure) => ({ ...cellOr(figure, ""), text: rangeText(figure) })),
        ...apart.flatMap((one, index) => [
          { ...cellOr(differences[index], ""), text: rangeText(differences[index]) },
          words(one === null ? "" : one ? "yes" : "no"),
        ]),
      ]),
    ),
  );
}

function rangeText(figure: Figure | null = null): string {
  if (figure === null) return "";
  const { range, places } = figure;
  return range === undefined
    ? shownValue(figure)
    : `${fixedText(range.low, places)} to ${fixedText(range.high, places)}`.replaceAll("-", "−");
}

function rangeLines(ranges: readonly ComparedRange[], exact: readonly string[]): readonly string[] {
  if (ranges.length === 0) return [];
  return [
    "Least and greatest with every error of scales, flours, strengths and losses at its worst. In the difference, what both share is off by the same in both, such as a flour of the same name and figures, which is taken for one lot; each weighing errs by itself. Told apart: the difference is there whatever these errors.",
    ...exactLines(exact),
  ];
}
