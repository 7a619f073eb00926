import type { Figure } from "../figure/figure.ts";
import type { Graph } from "../figure/graph.ts";
import type { Note, Problem } from "../figure/problem.ts";
import type { MixedFlour } from "../formula/mix.ts";
import type { MoistureBasis } from "../materials/fields.ts";
import type { DecimalText } from "../number/decimal.ts";

/** A flour that may go into the blend. Percentages are of the flour as it is, protein at one nitrogen factor for all. */
export interface Candidate {
  readonly name: string;
  readonly protein: DecimalText;
  /** Least and greatest protein it may have: from a label that was rounded, or a certificate's uncertainty. */
  readonly proteinRange?: { readonly low: DecimalText; readonly high: DecimalText };
  /** Whether that range is of the protein as is, so that at a basis the moisture counts as well. */
  readonly proteinAsIs?: boolean;
  readonly moisture: DecimalText;
  /** Least and greatest moisture it may have, where nobody is sure of it. */
  readonly moistureRange?: { readonly low: DecimalText; readonly high: DecimalText };
  readonly ash?: DecimalText;
  /** Protein that forms gluten, % of the flour. */
  readonly glutenProtein?: DecimalText;
  readonly wholegrain?: boolean;
  /** Price of a kilogram. */
  readonly price?: DecimalText;
  /** Smallest, greatest or only share, % of the blend. */
  readonly least?: DecimalText;
  readonly most?: DecimalText;
  readonly fixed?: DecimalText;
  /** Whether it is not to be had, so that nothing moves it into the blend. */
  readonly missing?: boolean;
  /** Its shares come in whole multiples of this, %; the step of the question unless given. */
  readonly step?: DecimalText;
  /** A bag of it, g: only whole bags go into the batch. */
  readonly bag?: DecimalText;
  /** Whether it is dry gluten, of which a little does much. */
  readonly dryGluten?: boolean;
  /** So many times the share of another flour. */
  readonly ratioTo?: { readonly name: string; readonly times: DecimalText };
  /** What is left in the store, g. */
  readonly store?: DecimalText;
  /**
   * How much of what the batch is a mass of a blend of it alone makes, the blend as it is being 1: of dough, the more the
   * more water it takes; of one flour, all or nothing. The more it makes, the less flour goes into the batch. 1 unless given.
   */
  readonly dough?: DecimalText;
  /** The figures that tell all this in a graph; made of the above unless given. */
  readonly figures?: CandidateFigures;
}

/** The figures of a flour, and its share in the blend as it is, under the id of its line. */
export interface CandidateFigures extends MixedFlour {
  readonly id: string;
  /** Added water that a dough of it alone takes, % of it, where the kitchen knows. */
  readonly absorption?: Figure | undefined;
}

/** Either a value, met when the blend comes within `within` of it, or a range. */
export type ProteinTarget =
  | {
      readonly value: DecimalText;
      readonly within: DecimalText;
      /** Whether the blend nearest to the value is wanted, to two places, and what is preferred tells only those as near apart. */
      readonly nearest?: boolean;
      readonly basis: MoistureBasis;
    }
  | {
      readonly value?: never;
      readonly least?: DecimalText;
      readonly most?: DecimalText;
      readonly basis: MoistureBasis;
    };

/** What the blend has to reach. */
export interface BlendTargets {
  readonly protein?: ProteinTarget;
  readonly glutenProtein?: { readonly least?: DecimalText; readonly most?: DecimalText; readonly basis: MoistureBasis };
  readonly ash?: { readonly least?: DecimalText; readonly most?: DecimalText; readonly basis: MoistureBasis };
  /** Share of wholegrain flours, % of the blend. */
  readonly wholegrain?: { readonly least?: DecimalText; readonly most?: DecimalText };
  /** Price of a kilogram of the blend, and how it was said, such as `0.40 USD/lb`. */
  readonly price?: { readonly most: DecimalText; readonly said?: string };
  /** Price of all that is in a bowl: kg of the blend in it, and what all else in it costs. */
  readonly bowlPrice?: { readonly most: DecimalText; readonly flour: DecimalText; readonly others: DecimalText };
  /** Price of all the flour of the batch, which has to be known. */
  readonly batchPrice?: { readonly most: DecimalText };
  /** Whether protein has to be met over the whole range that the flours' labels and certificates leave open. */
  readonly wholeRange?: boolean;
}

/** Which of the blends that meet everything is wanted. */
export type Preference =
  /** Moves the least flour of a given blend, each part counted by how unlike it is to that blend; then changes the fewest flours. */
  | { readonly kind: "nearest"; readonly to: readonly GivenShare[] }
  | { readonly kind: "cheapest" }
  | { readonly kind: "most"; readonly flour: string }
  /** As much as can be of several flours together. */
  | { readonly kind: "use up"; readonly flours: readonly string[] }
  | { readonly kind: "fewest" };

/** A share of a blend somebody has, % of the blend. */
export interface GivenShare {
  readonly name: string;
  readonly share: DecimalText;
}

/** A question to `searchBlend`. */
export interface BlendQuestion {
  readonly flours: readonly Candidate[];
  readonly targets: BlendTargets;
  readonly prefer: Preference;
  /** Shares come in whole multiples of this, %; 1 unless given, 0.1 to 5, a divisor of 100. */
  readonly step?: DecimalText;
  /** Flour of the batch, g, in the blend as it is: needed where a store is limited. */
  readonly flourMass?: DecimalText;
  /** Flour of the batch that whole bags are counted on, g, where the blend that is sought has another; `flourMass` unless given. */
  readonly bagMass?: DecimalText;
  /** Smallest share of a flour that is in the blend at all, %; dry gluten, and a flour of which there is less now, may stay below. */
  readonly leastShare?: DecimalText;
  /** Most flours that may be in the blend. */
  readonly mostFlours?: number;
  /** How many blends to give; 1 unless given. */
  readonly alternatives?: number;
  /** Of the prices, such as EUR. */
  readonly currency?: string;
  /** What the flour of the batch rests on: who changes an input of that is told that what was found is old. */
  readonly batch?: Graph;
  /** The flours of an old blend whose figures the targets hold, for the same. */
  readonly old?: Graph;
}

/** A blend that was found, with its figures and how each target stands. */
export interface FoundBlend {
  /** What its figures are under: `alternative.1` for the first that was found; nothing for the blend as it is. */
  readonly scope: string;
  readonly shares: readonly { readonly name: string; readonly share: Figure }[];
  readonly figures: readonly Figure[];
  readonly checks: readonly Check[];
}

/** One target beside what the blend reaches. */
export interface Check {
  readonly id: string;
  readonly label: string;
  /** `near` where a value is met by what comes within `within` of it, `whole` by whole multiples of it. */
  readonly side: "least" | "most" | "near" | "whole";
  readonly bound: DecimalText;
  /** The bound as it was said, such as `0.40 USD/lb`, where that is told. */
  readonly said?: string;
  readonly within?: DecimalText;
  readonly reached: DecimalText;
  readonly unit: string;
  readonly holds: boolean;
  /** What is reached with every flour at the least, and at the greatest, that its label or certificate leaves open. */
  readonly range?: { readonly low: DecimalText; readonly high: DecimalText };
}

/** By how much one limit of a conflict would have to move, the others of the conflict staying. */
export interface Move {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly from: DecimalText;
  /** Where it would have to be; absent where no place of it can be named (a ratio to a flour left out). */
  readonly to?: DecimalText;
  /** Whether the question has an answer once this limit alone has moved. */
  readonly settles: boolean;
  /** That it is not known whether it is enough alone: the search was given up before. */
  readonly open?: true;
  readonly text: string;
}

/** What a search gives: blends, or why there is none. */
export type BlendAnswer = BlendsFound | OutOfReach;

/** Blends that meet everything, best first. */
export interface BlendsFound {
  readonly kind: "found";
  readonly blends: readonly FoundBlend[];
  /** The order they come in, in words. */
  readonly order: string;
  /** That the search was given up before the first blend was proven to be the best: a note tells how far it may be from that. */
  readonly notProven?: true;
  /** Whether this is the blend as it was: it meets everything, and no other was asked for. */
  readonly unchanged?: true;
}

/** What protein a flour of the moisture of this one would have to hold, beside what it holds; on the basis of the target. */
export interface FlourNeeded {
  readonly name: string;
  readonly moisture: DecimalText;
  readonly basis: MoistureBasis;
  readonly has: DecimalText;
  readonly protein: Figure;
}

/** Least and most of a quantity that a blend can come to, all other limits kept but those that are out of reach as well. */
export interface Reach {
  readonly label: string;
  readonly unit: string;
  readonly least: DecimalText;
  readonly most: DecimalText;
  /** That bags or a store are left out of account here: they alone keep the flours from reaching as much. */
  readonly without?: string;
}

/** Why there is no blend, and what would make one. */
export interface OutOfReach {
  readonly kind: "out-of-reach";
  readonly problem: Problem;
  /** The blend that misses the targets by least and keeps every flour's own limits; absent when those conflict. */
  readonly nearest?: FoundBlend;
  /** Sets of limits that cannot all be met, though each set could without any one of its limits. */
  readonly conflicts: readonly (readonly Move[])[];
  /** What the flours reach in each quantity that is out of their reach by itself. */
  readonly reach: readonly Reach[];
  /** In place of which flour a stronger one would do, all else as it is; the smallest rise first. */
  readonly flourNeeded: readonly FlourNeeded[];
  /** A finer step at which the question has an answer. */
  readonly finerStep?: DecimalText;
  readonly notes: readonly Note[];
}
