import type { WeighedLine } from "../batch/weighing.ts";
import type { Figure } from "../figure/figure.ts";
import { groupDigits, inUnit, shownGrouped } from "../figure/in-system.ts";
import { type Decimal, type DecimalText, dec, decimalText, fixedText } from "../number/decimal.ts";
import { type ScaleUnit, scaleUnits } from "../number/units.ts";
import type { Moment } from "../sheet/day/clock.ts";
import type { Cell } from "./schema.ts";

/** A text that begins with a capital letter. @example capital("no aluminium") // => "No aluminium" */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A cell of plain words. */
export function words(text: string): Cell {
  return { text };
}

/** A cell with a number that is no figure. */
export function numberCell(number: string | Decimal, unit: string, places: number): Cell {
  return { text: fixedText(number, places), value: typeof number === "string" ? number : decimalText(number), unit };
}

/** A cell with the value of a figure; the unit stands in the heading of its column. */
export function figureCell(figure: Figure): Cell {
  return { text: shownGrouped(figure), value: figure.value, unit: figure.unit, figure: figure.id };
}

/** The same, or what stands in its place where there is no figure. */
export function cellOr(figure: Figure | null | undefined, missing = "–"): Cell {
  return figure ? figureCell(figure) : words(missing);
}

/** A cell with a time of day, also in minutes from midnight of the day of service and as ISO 8601 writes it. */
export function timeCell({ minute, text }: Moment): Cell {
  return { text, time: { minute, iso: text.slice(0, 5) } };
}

/** A cell with the value of a figure and its unit. */
export function measureCell(figure: Figure): Cell {
  const cell = figureCell(figure);
  return figure.unit === "" ? cell : { ...cell, text: `${cell.text} ${figure.unit}` };
}

/**
 * A cell with a mass in the unit that a scale shows, to its division. The value stays exact.
 *
 * @param division - in g
 * @throws {RangeError} on what is no unit of a scale
 * @example weightCell({ id: "salt", label: "salt", value: "20.004", unit: "g", places: 2, working: { kind: "given", by: "the list" }, sources: [] }, "g", "0.1").text // => "20.0"
 */
export function weightCell(figure: Figure, unit: ScaleUnit, division: DecimalText): Cell {
  if (!scaleUnits.includes(unit)) throw new RangeError(`unit: "${unit}" is none of ${scaleUnits.join(", ")}`);
  const shown = inUnit(figure, unit);
  const step = dec(inUnit({ ...figure, value: division }, unit).value);
  return {
    text: groupDigits(fixedText(shown.value, placesOf(step))),
    value: shown.value,
    unit,
    figure: figure.id,
  };
}

/** Said where alkalinity M and P first show. */
export const alkalinityEnds = "M: to the end of bicarbonate; P: to the end of carbonate.";

/** Lines that tell the ranges of figures that are not exact. */
export function rangeLines(figures: readonly Figure[]): readonly string[] {
  return figures.flatMap(({ label, range, places, unit }) =>
    range === undefined
      ? []
      : [`${label}: from ${fixedText(range.low, places)} to ${fixedText(range.high, places)} ${unit} (${range.why}).`],
  );
}

/** A mass as a scale shows it, with the unit. */
export function massText(mass: Figure, { unit, division }: WeighedLine): string {
  return `${weightCell(mass, unit, division).text} ${unit}`;
}

/** A mass in the unit that a scale shows, with the places of its division. */
export function asScaleShows(mass: Figure, { unit, division }: Pick<WeighedLine, "unit" | "division">): Figure {
  const step = dec(inUnit({ ...mass, value: division }, unit).value);
  return { ...inUnit(mass, unit), places: placesOf(step) };
}

/** Places that tell whole divisions; of one in another unit, which has no end, those of its first two digits. */
function placesOf(step: Decimal): number {
  return (step.precision() > mostDigits ? step.toSignificantDigits(2) : step).decimalPlaces();
}

/** More digits no scale has in its division. */
const mostDigits = 10;
