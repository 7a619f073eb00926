import { type DecimalInput, type DecimalText, dec, decimalText, fixedText } from "../number/decimal.ts";
import { fromBase, toBase } from "../number/quantity.ts";
import { findUnit } from "../number/units.ts";
import type { Figure } from "./figure.ts";

/** Units of measure that answers speak in. */
export type UnitSystem = "metric" | "us";

/** A number with its unit within a sentence, told in the units that are asked for; a limit so that it is not passed. */
export type Measure = Pick<Figure, "value" | "unit" | "places"> & { readonly toward?: "up" | "down" };

/** What may stand beside it: a name, and how far it may be off. */
export type Shown = Measure & Partial<Pick<Figure, "label" | "range" | "bounds">>;

/** A US unit for those of a metric one from so many on: how many of them make one, as a fraction, and its places. */
type UsUnit = readonly [from: DecimalText, unit: string, many: string, of: string, places: (metric: number) => number];

const lb = "453.59237";
const oz = "28.349523125";
const ft = "0.3048";
const gal = "3.785411784";
const alike = (places: number): number => places;
const more = (places: number): number => places + 1;

/**
 * The US unit of each metric one; the largest stands first. Of what is not here, as parts, percent, mg/kg, meq and moles,
 * laboratories and labels speak alike everywhere. A difference of temperature has no zero to start from: 1 K is 9/5 °F.
 * Source: NIST Special Publication 811 (2008), Appendix B, and NIST Handbook 44, Appendix C, where they are exact: the foot,
 * the pound, the gallon of 231 cubic inches, its 128 fluid ounces, the British thermal unit of the International Table
 * (1 Btu/lb = 2.326 kJ/kg) and the horsepower of 550 foot pounds-force a second. From memory.
 */
const usUnits: Readonly<Record<string, readonly UsUnit[]>> = {
  g: [
    [lb, "lb", lb, "1", () => 3],
    ["0", "oz", oz, "1", (places) => Math.min(Math.max(2, places + 1), 3)],
  ],
  kg: [["0", "lb", lb, "1000", more]],
  mm: [
    ["1000", "ft", ft, "0.001", () => 2],
    ["0", "in", "25.4", "1", () => 3],
  ],
  m: [["0", "ft", ft, "1", alike]],
  mL: [
    ["3785.411784", "gal", gal, "0.001", () => 3],
    ["0", "fl oz", "29.5735295625", "1", (places) => Math.max(2, places)],
  ],
  L: [["0", "gal", gal, "1", more]],
  "g/m": [["0", "oz/ft", oz, ft, (places) => places + 2]],
  "g/mL": [["0", "lb/gal", lb, "3785.411784", alike]],
  "g/L": [["0", "lb/gal", lb, gal, (places) => places + 2]],
  "m/min": [["0", "ft/min", ft, "1", () => 1]],
  K: [["0", "°F", "5", "9", alike]],
  kJ: [["0", "Btu", "1.05505585262", "1", alike]],
  kW: [["0", "hp", "0.74569987158227022", "1", alike]],
  "kJ/kg": [["0", "Btu/lb", "2.326", "1", more]],
  "kJ/(kg K)": [["0", "Btu/(lb °F)", "4.1868", "1", alike]],
};

/**
 * A figure in the units of a system: long lengths in m; or in US units, as far as they differ, masses in lb or oz, lengths in
 * ft or in, volumes in gal or fl oz, temperatures in °F, heat in Btu. A label that names a temperature names it in them too.
 *
 * @param beside - the figure whose size tells the unit, where several are to have one
 * @example shown(inSystem(askWater(example("school-noodle")).value.plan.temperature, "us")) // => "59 °F"
 */
export function inSystem<Any extends Shown>(figure: Any, system: UnitSystem, beside: Measure = figure): Any {
  const size = dec(beside.value).abs();
  if (system === "metric") return figure.unit === "mm" && size.gte(1000) ? inUnit(figure, "m", 2) : figure;
  const named = figure.label?.includes("°C")
    ? { ...figure, label: figure.label.replace(/(-?[\d.]+) °C/gu, (_, value: string) => fahrenheit(value)) }
    : figure;
  if (figure.unit === "°C") return inUnit(named, "°F", 0);
  const currency = /^([A-Z]{3})\/kg$/u.exec(figure.unit)?.[1];
  if (currency !== undefined)
    return turned(named, `${currency}/lb`, figure.places, (value) => dec(value).times(lb).div(1000));
  const found = usUnits[figure.unit]?.find(([from]) => size.gte(from));
  if (found === undefined) return named;
  const [, unit, many, of, places] = found;
  return turned(named, unit, places(figure.places), (value) => dec(value).times(of).div(many));
}

function fahrenheit(value: DecimalText): string {
  return measureText({ value, unit: "°C", places: 0 }, "us");
}

/** The same figure in another unit of the same dimension; its working stays in the unit it was worked out in. */
export function inUnit<Any extends Shown>(figure: Any, symbol: string, places: number = figure.places): Any {
  if (figure.unit === symbol) return figure;
  const from = findUnit(figure.unit);
  const to = findUnit(symbol, from && [from.dimension]);
  if (from === undefined || to === undefined || from.dimension !== to.dimension) return figure;
  return turned(figure, to.symbol, places, (value) => fromBase(toBase(dec(value), from), to));
}

/** A figure with all of its numbers in another unit. */
function turned<Any extends Shown>(
  figure: Any,
  unit: string,
  places: number,
  turn: (value: DecimalText) => ReturnType<typeof dec>,
): Any {
  const { range, bounds } = figure;
  const turnedText = (value: DecimalText): DecimalText => decimalText(turn(value));
  return {
    ...figure,
    value: turnedText(figure.value),
    unit,
    places,
    ...(range && { range: { ...range, low: turnedText(range.low), high: turnedText(range.high) } }),
    ...(bounds && {
      bounds: Object.fromEntries(Object.entries(bounds).map(([end, value]) => [end, value && turnedText(value)])),
    }),
  };
}

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
export function shownGrouped({ value, places, toward }: Omit<Measure, "unit">): string {
  return groupDigits(fixedText(value, places, toward));
}

/** A number for a sentence, its places those that it is written in unless told. */
export function measure(value: DecimalInput, unit: string, places = dec(value).decimalPlaces()): Measure {
  return { value: decimalText(dec(value)), unit, places };
}

/**
 * A number with its unit, in the units of a system.
 *
 * @example measureText({ value: "267", unit: "mm", places: 0 }, "us") // => "10.512 in"
 */
export function measureText(measure: Measure, system: UnitSystem): string {
  const shown = inSystem(measure, system);
  return shown.unit === "" ? shownGrouped(shown) : `${shownGrouped(shown)} ${shown.unit}`;
}
