import type { QuantityFault } from "../../number/quantity.ts";
import { type Dimension, findUnit, unitsFor } from "../../number/units.ts";
import { input, type Sentences, type Texts } from "./entry.ts";
import { withPoints } from "./words.ts";

/** A quantity that cannot be read, and what is known besides. */
type Unreadable = Texts<"written"> &
  QuantityFault &
  Partial<Texts<"grams" | "because">> & {
    /** The word `rest` would do as well. */
    readonly rest?: true;
  };

export const quantity = {
  "quantity.unreadable": input((facts: Unreadable): Sentences => {
    const { written, why, about, dimensions, rest, grams, because } = facts;
    const fits = unitsFor(dimensions).join(", ");
    const example = examples[dimensions[0] ?? "mass"];
    const below = why === "below zero" ? ", not below zero" : "";
    return {
      found: written,
      expected: `a quantity with its unit (${fits}), such as "${example}"${below}${rest ? ", or the word rest" : ""}`,
      advice:
        grams === undefined
          ? (why === "decimal comma" && righted(written)) || whatToDo(why, about, dimensions, { fits, example })
          : `weigh it, and write "${grams} g": ${because}`,
    };
  }),
  "quantity.out-of-range": input(
    (facts: Texts<"written" | "limits"> | Texts<"name" | "parts" | "most">): Sentences =>
      "limits" in facts
        ? {
            found: facts.written,
            expected: facts.limits,
            advice: "check the number and its unit: what lies beyond is taken for a slip",
          }
        : {
            found: `${facts.name} of ${facts.parts} % of flour`,
            expected: `at most ${facts.most} % of flour, written in % or as a mass`,
            advice: "check the number and its unit, and the weight of the flour",
          },
  ),
};

function righted(written: string): string {
  const points = withPoints(written);
  return points === undefined ? "" : `write a point before decimals and nothing between thousands: ${points}`;
}

function whatToDo(
  why: QuantityFault["why"],
  about: string,
  dimensions: readonly Dimension[],
  { fits, example }: Texts<"fits" | "example">,
): string {
  switch (why) {
    case "below zero":
      return "write a number of zero or more";
    case "decimal comma":
      return "write a point before decimals and nothing between thousands: 1.5 or 1500";
    case "too long":
      return "write one short quantity";
    case "no unit": {
      const usual =
        dimensions.length === 1 ? unitsFor(dimensions).slice(0, 2) : dimensions.map((one) => unitsFor([one])[0]);
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

const examples: Readonly<Record<Dimension, string>> = {
  mass: "350 g",
  length: "1.4 mm",
  volume: "500 mL",
  temperature: "20 °C",
  share: "36 %",
  time: "30 min",
  density: "1.25 g/mL",
  alkalinity: "18 meq",
  speed: "6 m/min",
  power: "9 kW",
  heat: "12 kJ/kg",
  "temperature difference": "8 K",
};
