import { type Figure, given, worked } from "../figure/figure.ts";
import { answer, inputProblem, type Outcome, refuse } from "../figure/problem.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";

/** A small trial to find the water of a blend. */
export interface TrialRequest {
  /** Flour of each dough, g. */
  readonly flour: DecimalText;
  /** The flours of the blend, % of flour; one flour unless given. */
  readonly flours?: readonly { readonly name: string; readonly percent: DecimalText }[];
  /** Water to pour, to try around, % of flour. */
  readonly water: DecimalText;
  /** Between two doughs, % of flour; 1 unless given. */
  readonly step?: DecimalText;
  /** Whatever else goes in, % of flour. */
  readonly others?: readonly { readonly name: string; readonly percent: DecimalText }[];
}

/** The doughs, driest first, and what to look at. */
export interface Trial {
  readonly doughs: readonly TrialDough[];
  readonly look: readonly string[];
}

/** One dough of a trial: its water, % of flour, and the masses to weigh, g. */
export interface TrialDough {
  readonly water: Figure;
  readonly masses: readonly Figure[];
}

/** What to judge in each dough: common practice, no source. */
const look: readonly string[] = [
  "mix all three for the same time at the same temperature, and rest them alike",
  "crumb after mixing: even crumbs that hold together when pressed; dry flour left over means too little water, lumps and sticking mean too much",
  "first sheet: streaks and ragged edges mean too little water, sticking to the rolls means too much",
  "sheet after resting: even colour, no tearing at the thickness wanted",
  "cut strands: they part cleanly and do not stick when piled",
  "boil the same mass for the same time: weigh after draining, judge the bite, and write all of it down",
  "take the water of the best dough as the kitchen's own figure for this blend, half a step either way",
];

/**
 * Lays out a trial of three doughs that differ in water only: one step less, the water given, one step more.
 *
 * Masses g, water % of flour. Problems: `trial.flour`, `trial.water`.
 * Source: common practice.
 *
 * @example waterTrial({ flour: "200", water: "34" }).ok // => true
 */
export function waterTrial({ flour, flours = [], water, step = "1", others = [] }: TrialRequest): Outcome<Trial> {
  if (!dec(flour).gt(0)) {
    return refuse(
      inputProblem(
        "trial.flour",
        ["flour"],
        `${flour} g`,
        "a mass above zero",
        "200 g makes a dough that can be sheeted",
      ),
    );
  }
  if (!dec(step).gt(0) || dec(water).lt(step)) {
    return refuse(
      inputProblem(
        "trial.water",
        ["water"],
        `${water} % in steps of ${step} %`,
        "water of at least one step, and a step above zero",
        "start at the water used so far",
      ),
    );
  }
  const doughs = [-1, 0, 1].map(
    (times): TrialDough =>
      dough(flour, flours, decimalText(dec(water).plus(dec(step).times(times))), others, times + 2),
  );
  return answer({ doughs, look });
}

type Shares = NonNullable<TrialRequest["others"]>;

function dough(flour: DecimalText, flours: Shares, water: DecimalText, others: Shares, number: number): TrialDough {
  const id = `trial.${number}`;
  const stated = (what: string, label: string, unit: string, value: DecimalText): Figure =>
    given({ id: `${id}.${what}`, label, unit, places: 1, value, by: "the trial", sources: [fromSpec] });
  const flourMass = stated("flour", "flour", "g", flour);
  const mass =
    (kind: string, places: number) =>
    ({ name, percent }: Shares[number], index: number): Figure =>
      worked({
        id: `${id}.${kind}.${index + 1}.mass`,
        label: name,
        unit: "g",
        places,
        formula: "flour * percent / 100",
        from: {
          flour: flourMass,
          percent: stated(`${kind}.${index + 1}`, `${name}, % of flour`, "% of flour", percent),
        },
        sources: [massBalance],
      });
  const blend = flours.length === 0 ? [flourMass] : flours.map(mass("flour", 1));
  return {
    water: stated("poured", `water of dough ${number}`, "% of flour", water),
    masses: [...blend, mass("water", 1)({ name: "water", percent: water }, 0), ...others.map(mass("other", 2))],
  };
}
