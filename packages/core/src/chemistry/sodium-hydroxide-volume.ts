import { type Decimal, dec, ONE } from "../number/decimal.ts";
import { rowsOf } from "../number/table.ts";
import { waterDensity } from "./water-density.ts";

/**
 * % by mass and g/mL at 20 °C.
 * Source: CRC Handbook of Chemistry and Physics, 102nd ed. (2021), Concentrative Properties of Aqueous Solutions
 * (read in a copy). Every second row is kept; the rows between are checked by the tests.
 */
const at20 = {
  0.5: "1.0039",
  1: "1.0095",
  3: "1.0318",
  6: "1.0648",
  9: "1.0979",
  12: "1.1309",
  15: "1.1640",
  18: "1.1971",
  22: "1.2412",
  28: "1.3064",
  34: "1.3697",
  40: "1.4299",
};

/**
 * How the density changes with temperature: °C, and % by mass with g/mL at each.
 * Source: up to 19.4 %, advancedthermo.com, density of NaOH solutions; from 24 %, soapworld.biz, caustic soda table.
 */
const withTemperature = [
  {
    temperatures: ["10", "25", "40"],
    rows: [
      ["0.3984", "1.00437", "1.00149", "0.99654"],
      ["1.9606", "1.02222", "1.01860", "1.01322"],
      ["5.3027", "1.05968", "1.05495", "1.04871"],
      ["10.7136", "1.12001", "1.11402", "1.10659"],
      ["16.6656", "1.18652", "1.17925", "1.17093"],
      ["19.3537", "1.21677", "1.20866", "1.20013"],
    ],
  },
  {
    temperatures: ["20", "30", "40"],
    rows: [
      ["24", "1.2629", "1.2570", "1.2512"],
      ["32", "1.3490", "1.3426", "1.3362"],
      ["40", "1.4300", "1.4232", "1.4164"],
    ],
  },
] as const;

type Point = readonly [Decimal, Decimal];

function volumeOf(percent: string, temperature: string, density: string): Decimal {
  const w = dec(percent).div(100);
  return ONE.div(density)
    .minus(ONE.minus(w).div(waterDensity(temperature)))
    .div(w);
}

interface Volumes {
  readonly at20: readonly Point[];
  readonly withTemperature: readonly { readonly fraction: Decimal; readonly points: readonly Point[] }[];
}

let built: Volumes | undefined;

/** The tables as volumes. They are built at the first call. */
function volumes(): Volumes {
  built ??= {
    at20: rowsOf(at20).map(([percent, density]) => [dec(percent).div(100), volumeOf(percent, "20", density)]),
    withTemperature: withTemperature.flatMap(({ temperatures, rows }) =>
      rows.map(([percent, ...densities]) => ({
        fraction: dec(percent).div(100),
        points: temperatures.map((t, at): Point => [dec(t), volumeOf(percent, t, densities[at] ?? "0")]),
      })),
    ),
  };
  return built;
}

/**
 * Apparent specific volume of sodium hydroxide in water, mL/g.
 *
 * The volume at 20 °C is interpolated between table rows; its change from 20 °C is a parabola through three
 * temperatures, interpolated between strengths. The volume is smoother than the density, so little is lost between rows.
 *
 * @param saltFraction - mass fraction of all salts, above 0, to 0.4
 * @param temperature - °C, 10 to 40
 * @example sodiumHydroxideVolume(dec("0.28"), dec(20)).toFixed(4) // => "0.1577"
 */
export function sodiumHydroxideVolume(saltFraction: Decimal, temperature: Decimal): Decimal {
  const changes = volumes().withTemperature.map(
    ({ fraction, points }): Point => [fraction, parabola(points, temperature).minus(parabola(points, dec(20)))],
  );
  return interpolate(volumes().at20, saltFraction).plus(interpolate(changes, saltFraction));
}

/** The value on straight lines between points; beyond the ends, the end value. @example interpolate([[dec(0), dec(1)], [dec(2), dec(3)]], dec(1)).toString() // => "2" */
export function interpolate(points: readonly Point[], x: Decimal): Decimal {
  const above = points.findIndex(([at]) => at.gte(x));
  const right = points[above === -1 ? points.length - 1 : above];
  const left = points[above - 1];
  if (right === undefined) throw new RangeError("no points to interpolate between");
  if (left === undefined) return right[1];
  const way = x.minus(left[0]).div(right[0].minus(left[0]));
  return left[1].plus(right[1].minus(left[1]).times(way));
}

/** Lagrange's polynomial through the points. */
function parabola(points: readonly Point[], x: Decimal): Decimal {
  return points.reduce((total, [at, value], index) => {
    const weight = points.reduce(
      (product, [other], place) => (place === index ? product : product.times(x.minus(other)).div(at.minus(other))),
      ONE,
    );
    return total.plus(value.times(weight));
  }, dec(0));
}
