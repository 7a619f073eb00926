/** A unit of measure: what it measures and how it turns into the base unit of its dimension, exactly. */
export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  /** Base units in one of this unit, as exact decimal text. Degrees Fahrenheit have their own rules in quantity.ts. */
  readonly factor: string;
  /** Other ways people write it, in lower case. */
  readonly aliases: readonly string[];
}

/** What scales show their weights in. */
export type ScaleUnit = "g" | "kg" | "oz" | "lb";
export const scaleUnits: readonly ScaleUnit[] = ["g", "kg", "oz", "lb"];

/** What a quantity measures. Base units: g, mm, mL, °C, %, s, g/mL, meq, m/min, kW, kJ/kg, K. */
export type Dimension =
  | "mass"
  | "length"
  | "volume"
  | "temperature"
  | "share"
  | "time"
  | "density"
  | "alkalinity"
  | "speed"
  | "power"
  | "heat"
  | "temperature difference";

/** 453.59237 g over 3785.411784 mL, to 30 digits. */
export const poundsPerGallon = "0.119826427316896628543913255806";

/**
 * Factors are exact by definition, but those of lb/gal and Btu/h, which do not end.
 * Source: international yard and pound agreement of 1959 (1 lb = 453.59237 g, 1 in = 25.4 mm),
 * NIST Special Publication 811 (2008), Appendix B; US gallon of 231 cubic inches with 128 fluid ounces, 1 Btu/lb = 2.326 kJ/kg,
 * 1 Btu = 1.05505585262 kJ, 1 hp = 550 ft lbf/s, same place. From memory.
 */
export const units: readonly Unit[] = [
  { symbol: "g", dimension: "mass", factor: "1", aliases: ["gram", "grams", "gramme", "grammes"] },
  { symbol: "kg", dimension: "mass", factor: "1000", aliases: ["kilo", "kilos", "kilogram", "kilograms"] },
  { symbol: "mg", dimension: "mass", factor: "0.001", aliases: ["milligram", "milligrams"] },
  { symbol: "tonne", dimension: "mass", factor: "1000000", aliases: ["tonnes"] },
  { symbol: "oz", dimension: "mass", factor: "28.349523125", aliases: ["ounce", "ounces"] },
  { symbol: "lb", dimension: "mass", factor: "453.59237", aliases: ["lbs", "pound", "pounds"] },
  {
    symbol: "mm",
    dimension: "length",
    factor: "1",
    aliases: ["millimetre", "millimetres", "millimeter", "millimeters"],
  },
  {
    symbol: "cm",
    dimension: "length",
    factor: "10",
    aliases: ["centimetre", "centimetres", "centimeter", "centimeters"],
  },
  { symbol: "m", dimension: "length", factor: "1000", aliases: ["metre", "metres", "meter", "meters"] },
  { symbol: "in", dimension: "length", factor: "25.4", aliases: ["inch", "inches", '"', "″"] },
  { symbol: "ft", dimension: "length", factor: "304.8", aliases: ["foot", "feet", "'", "′"] },
  { symbol: "yd", dimension: "length", factor: "914.4", aliases: ["yard", "yards"] },
  {
    symbol: "mL",
    dimension: "volume",
    factor: "1",
    aliases: ["ml", "millilitre", "millilitres", "milliliter", "milliliters"],
  },
  { symbol: "L", dimension: "volume", factor: "1000", aliases: ["l", "litre", "litres", "liter", "liters"] },
  { symbol: "gal", dimension: "volume", factor: "3785.411784", aliases: ["gallon", "gallons", "us gal"] },
  {
    symbol: "fl oz",
    dimension: "volume",
    factor: "29.5735295625",
    aliases: ["fluid ounce", "fluid ounces", "us fl oz", "fl. oz", "fl. oz."],
  },
  { symbol: "°C", dimension: "temperature", factor: "1", aliases: ["c", "deg c", "celsius", "℃"] },
  { symbol: "°F", dimension: "temperature", factor: "1", aliases: ["f", "deg f", "fahrenheit", "℉"] },
  { symbol: "%", dimension: "share", factor: "1", aliases: ["percent", "per cent", "pct"] },
  { symbol: "ppm", dimension: "share", factor: "0.0001", aliases: ["mg/kg"] },
  { symbol: "s", dimension: "time", factor: "1", aliases: ["sec", "second", "seconds"] },
  { symbol: "min", dimension: "time", factor: "60", aliases: ["minute", "minutes"] },
  { symbol: "h", dimension: "time", factor: "3600", aliases: ["hr", "hour", "hours"] },
  { symbol: "d", dimension: "time", factor: "86400", aliases: ["day", "days"] },
  { symbol: "g/mL", dimension: "density", factor: "1", aliases: ["g/ml", "kg/l", "g/cm3", "g/cm³"] },
  { symbol: "kg/m³", dimension: "density", factor: "0.001", aliases: ["kg/m3", "g/l"] },
  { symbol: "lb/gal", dimension: "density", factor: poundsPerGallon, aliases: ["lb/us gal", "lbs/gal"] },
  { symbol: "meq", dimension: "alkalinity", factor: "1", aliases: ["mval", "meq/100 g", "mval/100 g"] },
  { symbol: "meq/kg", dimension: "alkalinity", factor: "0.1", aliases: ["mval/kg"] },
  { symbol: "m/min", dimension: "speed", factor: "1", aliases: [] },
  { symbol: "m/s", dimension: "speed", factor: "60", aliases: [] },
  { symbol: "ft/min", dimension: "speed", factor: "0.3048", aliases: [] },
  { symbol: "kW", dimension: "power", factor: "1", aliases: ["kilowatt", "kilowatts"] },
  { symbol: "W", dimension: "power", factor: "0.001", aliases: ["watt", "watts"] },
  { symbol: "hp", dimension: "power", factor: "0.74569987158227022", aliases: ["horsepower"] },
  { symbol: "Btu/h", dimension: "power", factor: "0.000293071070172222222222222222222", aliases: ["btu/hr", "btuh"] },
  { symbol: "kJ/kg", dimension: "heat", factor: "1", aliases: ["j/g"] },
  { symbol: "Btu/lb", dimension: "heat", factor: "2.326", aliases: [] },
  { symbol: "K", dimension: "temperature difference", factor: "1", aliases: ["kelvin"] },
  { symbol: "°F", dimension: "temperature difference", factor: "1", aliases: ["f", "deg f", "fahrenheit", "℉"] },
];

const byName = new Map<string, readonly Unit[]>();
for (const unit of units)
  for (const name of [unit.symbol.toLowerCase(), ...unit.aliases])
    byName.set(name, [...(byName.get(name) ?? []), unit]);

/**
 * Finds a unit by its symbol or another common spelling, whatever the case; of two of one name the one that measures what is
 * wanted, or else the first.
 *
 * @example findUnit("meq per 100g of flour")?.symbol // => "meq"
 */
export function findUnit(name: string, wanted: readonly Dimension[] = []): Unit | undefined {
  const plain = name.trim().toLowerCase().replace(/\s+/g, " ");
  const ofFlour = /^(meq|mval)(?: ?\/ ?| per )(100 ?g|kg)(?:(?: of)? flour)?$/u.exec(plain);
  const found = byName.get(ofFlour === null ? plain : `${ofFlour[1]}/${ofFlour[2]?.replace(/(?<=\d) ?g/u, " g")}`);
  return found?.find(({ dimension }) => wanted.includes(dimension)) ?? found?.[0];
}

/** The symbols of the units that measure the given dimensions, in the order of these, for messages. */
export function unitsFor(dimensions: readonly Dimension[]): readonly string[] {
  return dimensions.flatMap((dimension) =>
    units.filter((unit) => unit.dimension === dimension).map((unit) => unit.symbol),
  );
}
