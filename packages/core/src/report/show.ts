import type { WeighedLine } from "../batch/weighing.ts";
import { type Figure, shownValue } from "../figure/figure.ts";
import { type DecimalText, dec, decimalText, fixedText } from "../number/decimal.ts";
import { fromBase } from "../number/quantity.ts";
import { findUnit } from "../number/units.ts";
import type { Moment } from "../sheet/day/clock.ts";
import type { Cell } from "./schema.ts";

/** Units of measure that a report speaks in. */
export type UnitSystem = "metric" | "us";

/**
 * Groups the digits before the point by three, from five digits on.
 *
 * @example groupDigits("12480.5") // => "12 480.5"
 */
export function groupDigits(text: DecimalText): string {
  const [whole = "", part] = text.split(".");
  const digits = whole.replace("-", "");
  const grouped = digits.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/gu, " ");
  const signed = grouped.replace("-", "−");
  return part === undefined ? signed : `${signed}.${part}`;
}

/**
 * The value of a figure as shown, its digits grouped.
 *
 * @example shownGrouped({ value: "12345.6", places: 1 }) // => "12 345.6"
 */
export function shownGrouped(figure: Pick<Figure, "value" | "places">): string {
  return groupDigits(shownValue(figure));
}

/** A text that begins with a capital letter. @example capital("no aluminium") // => "No aluminium" */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A cell of plain words. */
export function words(text: string): Cell {
  return { text };
}

/** A cell with the value of a figure; the unit stands in the heading of its column. */
export function figureCell(figure: Figure): Cell {
  return { text: shownGrouped(figure), value: figure.value, unit: figure.unit, figure: figure.id };
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
 * @example weightCell({ id: "salt", label: "salt", value: "20.004", unit: "g", places: 2, working: { kind: "given", by: "the list" }, sources: [] }, "g", "0.1").text // => "20.0"
 */
export function weightCell(figure: Figure, unit: string, division: DecimalText): Cell {
  const shown = inUnit(figure, unit);
  const step = dec(inUnit({ ...figure, value: division }, unit).value);
  return {
    text: groupDigits(fixedText(shown.value, step.decimalPlaces())),
    value: shown.value,
    unit,
    figure: figure.id,
  };
}

/** The same figure in another unit of the same dimension; its working stays in the unit it was worked out in. */
export function inUnit(figure: Figure, symbol: string, places: number = figure.places): Figure {
  if (figure.unit === symbol) return figure;
  const from = findUnit(figure.unit);
  const to = findUnit(symbol);
  if (from === undefined || to === undefined || from.dimension !== to.dimension) return figure;
  const base = from.dimension === "temperature" ? dec(figure.value) : dec(figure.value).times(from.factor);
  return { ...figure, value: decimalText(fromBase(base, to)), unit: to.symbol, places };
}

/**
 * A figure in the units of a system: masses in lb or oz, lengths in in, temperatures in °F for US units.
 *
 * @example shown(inSystem(askWater(example("school-noodle")).value.plan.temperature, "us")) // => "59 °F"
 */
export function inSystem(figure: Figure, system: UnitSystem): Figure {
  if (system === "metric") return figure;
  if (figure.unit === "g")
    return dec(figure.value).abs().gte("453.59237") ? inUnit(figure, "lb", 3) : inUnit(figure, "oz", 2);
  if (figure.unit === "mm") return inUnit(figure, "in", 3);
  if (figure.unit === "°C") return inUnit(figure, "°F", 0);
  return figure;
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
  return { ...inUnit(mass, unit), places: step.decimalPlaces() };
}
