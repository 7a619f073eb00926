import { dec } from "../../number/decimal.ts";
import type { QuantityFault } from "../../number/quantity.ts";
import { type Dimension, findUnit, units, unitsFor } from "../../number/units.ts";
import { type Measure, measure } from "../in-system.ts";
import { input, type Sentences, type Texts } from "./entry.ts";
import { withPoints } from "./words.ts";

/** A quantity that cannot be read, and what is known besides. */
type Unreadable = Texts<"written"> &
  QuantityFault &
  Partial<Texts<"grams" | "because">> & {
    /** The word `rest` would do as well. */
    readonly rest?: true;
  };

/** What a quantity is held to, in the base unit of its dimension. */
export interface Limits {
  readonly dimension: Dimension;
  readonly least?: string | undefined;
  readonly above?: string | undefined;
  readonly most?: string | undefined;
  readonly after?: string | undefined;
}

export const quantity = {
  "quantity.unreadable": input((facts: Unreadable, _, tell): Sentences => {
    const { written, why, about, dimensions, rest, grams, because } = facts;
    const fits = unitsFor(dimensions).join(", ");
    const example = tell(examples[dimensions[0] ?? "mass"]);
    const below = why === "below zero" ? ", not below zero" : "";
    return {
      found: written,
      expected: `a quantity with its unit (${fits}), such as "${example}"${below}${rest ? ", or the word rest" : ""}`,
      advice:
        grams === undefined
          ? (why === "decimal comma" && righted(written)) || whatToDo(why, about, dimensions, { fits, example, tell })
          : `weigh it, and write "${grams} g": ${because}`,
    };
  }),
  "quantity.out-of-range": input(
    (facts: (Texts<"written"> & (Limits | Texts<"limits">)) | Texts<"name" | "parts" | "most">, _, tell): Sentences =>
      "written" in facts
        ? {
            found: facts.written,
            expected: "limits" in facts ? facts.limits : limitsOf(facts, tell),
            advice: "check the number and its unit: what lies beyond is taken for a slip",
          }
        : {
            found: `${facts.name} of ${facts.parts} % of flour`,
            expected: `at most ${facts.most} % of flour, written in % or as a mass`,
            advice: "check the number and its unit, and the weight of the flour",
          },
  ),
};

function limitsOf({ dimension, least, above, most, after = "" }: Limits, tell: (measure: Measure) => string): string {
  const end = (value: string, toward: "up" | "down"): string =>
    value === "0" && dimension !== "temperature" ? value : tell({ ...inLargest(value, dimension), toward });
  const ends = [
    above === undefined ? [] : `above ${end(above, "up")}`,
    least === undefined ? [] : `from ${end(least, "up")}`,
    most === undefined ? [] : `${least === undefined ? "at most" : "to"} ${end(most, "down")}`,
  ].flat();
  return `a ${dimension} ${ends.join(least === undefined ? " and " : " ")}${after}`;
}

/** A value in base units, in the largest unit that has it in whole numbers where that is one of time. */
function inLargest(value: string, dimension: Dimension): Measure {
  const own = units.filter((unit) => unit.dimension === dimension);
  const unit = dimension === "time" ? own.findLast(({ factor }) => dec(value).mod(factor).isZero()) : own[0];
  return measure(dec(value).div(unit?.factor ?? 1), unit?.symbol ?? "");
}

function righted(written: string): string {
  const points = withPoints(written);
  return points === undefined ? "" : `write a point before decimals and nothing between thousands: ${points}`;
}

function whatToDo(
  why: QuantityFault["why"],
  about: string,
  dimensions: readonly Dimension[],
  { fits, example, tell }: Texts<"fits" | "example"> & { readonly tell: (measure: Measure) => string },
): string {
  switch (why) {
    case "below zero":
      return "write a number of zero or more";
    case "decimal comma":
      return "write a point before decimals and nothing between thousands: 1.5 or 1500";
    case "too long":
      return "write one short quantity";
    case "no unit": {
      const asked = dimensions.map((one) => unitTold(one, tell));
      const metric = asked.every((unit, index) => unit === unitsFor(dimensions.slice(index, index + 1))[0]);
      const usual = dimensions.length === 1 && metric ? unitsFor(dimensions).slice(0, 2) : asked;
      return `add the unit: ${usual.map((symbol) => `"${about} ${symbol}"`).join(" or ")}`;
    }
    case "no quantity":
      return `write it like "${example}"`;
    case "kitchen measure":
      return byVolume(about, fits);
    case "unknown unit":
      return `"${about}" is not a unit known here; use one of: ${fits}`;
    case "wrong unit":
      return findUnit(about)?.dimension === "volume" && dimensions.includes("mass")
        ? byVolume(about, fits)
        : `"${about}" measures ${findUnit(about)?.dimension}; use one of: ${fits}`;
    case "order of parts":
      return 'several parts may follow each other only from large to small, as in "1 lb 4 oz"';
  }
}

function byVolume(unit: string, fits: string): string {
  return `"${unit}" measures volume: weigh it, since what fills a spoon of a powder weighs more or less by how it lies; use one of: ${fits}`;
}

/** The unit that a measure is told in, in the units asked for. */
function unitTold(dimension: Dimension, tell: (measure: Measure) => string): string {
  return tell(examples[dimension]).replace(/^\S+ /u, "");
}

const examples: Readonly<Record<Dimension, Measure>> = {
  mass: measure("350", "g"),
  length: measure("1.4", "mm"),
  volume: measure("500", "mL"),
  temperature: measure("20", "°C"),
  share: measure("36", "%"),
  time: measure("30", "min"),
  density: measure("1.25", "g/mL"),
  alkalinity: measure("18", "meq"),
  speed: measure("6", "m/min"),
  power: measure("9", "kW"),
  heat: measure("12", "kJ/kg"),
  "temperature difference": measure("8", "K"),
};
