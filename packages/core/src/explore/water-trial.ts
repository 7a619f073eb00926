import { type Feed, type Figure, given, worked } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { type Outcome, problem, refuse } from "../figure/problem.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { type DecimalText, dec } from "../number/decimal.ts";

/** A small trial to find the water of a blend. */
export interface TrialRequest {
  /** Flour of each dough, g. */
  readonly flour: DecimalText;
  /** The flours of the blend, % of flour, with the added water each is known to take, % of it; one flour unless given. */
  readonly flours?: readonly TrialFlour[];
  /** Water to pour, to try around, % of flour. */
  readonly water: DecimalText | Figure;
  /** Water that the others bring, % of flour; 0 unless given. */
  readonly carried?: DecimalText | Figure;
  /** Flour of the moisture that the spec is written on, for 1 of the flour at hand. */
  readonly referenceFactor?: Figure;
  /** Between two doughs, % of flour; 1 unless given. */
  readonly step?: DecimalText;
  /** Whatever else goes in, % of flour. */
  readonly others?: readonly TrialFlour[];
}

/** A flour of a trial. */
export interface TrialFlour {
  readonly name: string;
  readonly percent: DecimalText | Figure;
  readonly takes?: DecimalText;
}

/** The doughs, driest first, what to look at, and which flours the trial leaves open. */
export interface Trial {
  /** Flour of each dough, g. */
  readonly flour: DecimalText;
  readonly doughs: readonly TrialDough[];
  readonly look: readonly string[];
  /** Flours of which nobody knows the water they take. */
  readonly unknown: readonly string[];
  /** Half a step on the flour that the trial is to tell about, ± in % of it. */
  readonly plusMinus?: Figure;
}

/** One dough of a trial: its water, % of flour, and the masses to weigh, g. */
export interface TrialDough {
  /** To pour. */
  readonly water: Figure;
  /** With what the others bring. */
  readonly added: Figure;
  /** The same on the flour that the spec is written on, where that is another. */
  readonly written?: Figure;
  /** What the only flour of unknown water takes if this dough is the best one, % of it. */
  readonly absorption?: Figure;
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
];

/**
 * Lays out a trial of three doughs that differ in water only: one step less, the water given, one step more.
 *
 * Each dough comes with what to write down if it is the best one: its added water, and where one flour alone is unknown, what
 * that flour takes, so that the shares of the flours times what they take give the water that was found.
 *
 * Masses g, water % of flour. Problems: `trial.flour`, `trial.water`.
 * Source: common practice.
 *
 * @example waterTrial({ flour: "200", water: "34", carried: "2" }).value.doughs[1].added.value // => "36"
 */
export function waterTrial(request: TrialRequest): Outcome<Published<Trial>> {
  const { flour, flours = [], water, step = "1" } = request;
  if (!dec(flour).gt(0)) return refuse(problem("trial.flour", ["flour"], { flour }));
  const around = typeof water === "object" ? water.value : water;
  if (!dec(step).gt(0) || dec(around).lt(step))
    return refuse(problem("trial.water", ["water"], { water: around, step }));
  const open = flours.filter(({ takes }) => takes === undefined);
  const taken = takenFrom(request, step);
  const only = open.length === 1 ? taken.flours.find(({ takes }) => takes === undefined) : undefined;
  const doughs = (["water - step", "water", "water + step"] as const).map((poured, index) =>
    dough(taken, poured, only, index + 1),
  );
  const plusMinus =
    only &&
    worked(
      { id: "trial.plus-minus", label: "half a step", unit: "% of it", places: 1 },
      "100 * step / 2 / share",
      { step: taken.step, share: only.share },
      massBalance,
    );
  return publish({ flour, doughs, look, unknown: open.map(({ name }) => name), ...(plusMinus && { plusMinus }) });
}

interface TakenPart {
  readonly name: string;
  readonly share: Figure;
  readonly takes: Figure | undefined;
}

/** What all doughs of a trial share, as figures: each is one input. */
function takenFrom(request: TrialRequest, step: DecimalText) {
  const { flour, flours = [], others = [], water, carried = "0", referenceFactor: factor } = request;
  const stated = (what: string, label: string, unit: string, value: DecimalText | Figure): Figure =>
    typeof value === "object"
      ? value
      : given({ id: `trial.${what}`, label, unit, places: 1 }, value, "the trial", fromSpec);
  const parts = (kind: string, list: readonly TrialFlour[]): readonly TakenPart[] =>
    list.map(({ name, percent, takes }, index) => ({
      name,
      share: stated(`${kind}.${index + 1}`, `${name}, % of flour`, "% of flour", percent),
      takes:
        takes === undefined
          ? undefined
          : stated(`${kind}.${index + 1}.takes`, `water ${name} is known to take`, "% of it", takes),
    }));
  return {
    flour: stated("flour", "flour of one dough", "g", flour),
    water: stated("water", "water to try around", "% of flour", water),
    step: stated("step", "step of the water", "% of flour", step),
    carried: stated("carried", "water that the others bring", "% of flour", carried),
    factor,
    flours: parts("flour", flours),
    others: parts("other", others),
  };
}

function dough(
  { flour, water, step, carried, factor, flours, others }: ReturnType<typeof takenFrom>,
  pouring: "water - step" | "water" | "water + step",
  only: TakenPart | undefined,
  number: number,
): TrialDough {
  const id = `trial.${number}`;
  const mass = (kind: string, places: number) => (part: Pick<TakenPart, "name" | "share">, index: number) =>
    worked(
      { id: `${id}.${kind}.${index + 1}.mass`, label: part.name, unit: "g", places },
      "flour * percent / 100",
      { flour, percent: part.share },
      massBalance,
    );
  const share = (what: string, label: string, formula: string, from: Readonly<Record<string, Feed>>, unit?: string) =>
    worked({ id: `${id}.${what}`, label, unit: unit ?? "% of flour", places: 2 }, formula, from, massBalance);
  const of = `of dough ${number}`;
  const poured = {
    ...share("poured", `water to pour in dough ${number}`, pouring, { water, ...(pouring !== "water" && { step }) }),
    places: 1,
  };
  const added = share("added", `added water ${of}`, "poured + carried", { poured, carried });
  const written =
    factor &&
    share("written", `added water ${of} as the spec is written`, "(100 + added) / factor - 100", { added, factor });
  const known = flours.flatMap(({ share, takes }) => (takes === undefined ? [] : [{ share, takes }]));
  const absorption =
    only &&
    share(
      "absorption",
      `water ${only.name} takes`,
      "(100 * added - sum(shares * takes)) / share",
      { added, shares: known.map(({ share }) => share), takes: known.map(({ takes }) => takes), share: only.share },
      "% of it",
    );
  const blend = flours.length === 0 ? [flour] : flours.map(mass("flour", 1));
  return {
    water: poured,
    added,
    ...(written && { written }),
    ...(absorption && dec(absorption.value).gt(0) && { absorption }),
    masses: [...blend, mass("water", 1)({ name: "water", share: poured }, 0), ...others.map(mass("other", 2))],
  };
}
