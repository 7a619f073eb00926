import type { Report } from "@noodlewright/core";
import type { Path } from "@noodlewright/core/figure";
import type { Listed, State } from "./state.ts";

// What passes between the page and the core that works beside it: plain data, fit to be shown.

/** What the weights follow from. */
export type Changes = Pick<State, "entries" | "keepWet">;

/** Answer in which a figure stands. */
export type Place = "batch" | "water" | "remedies" | "sheet" | "day";

/** A figure as it is shown. Its working is asked for by its place and id. */
export interface Shown {
  readonly from: Place;
  readonly id: string;
  readonly label: string;
  readonly text: string;
  /** Where it is from, when no sum made it. */
  readonly said?: string;
}

/** One figure of a working. */
export interface Worked {
  readonly label: string;
  readonly lines: readonly string[];
}

/** A problem in words, and its place in the spec. */
export interface Told {
  readonly path: Path;
  readonly found: string;
  readonly expected: string;
}

type Table = Extract<Report["sections"][number]["blocks"][number], { readonly kind: "table" }>;

/** A part of a report: tables, figures and lines. */
export interface Section {
  readonly id: string;
  readonly from: Place;
  readonly heading: string;
  readonly blocks: readonly (
    | Table
    | { readonly kind: "figures"; readonly figures: readonly Shown[] }
    | { readonly kind: "text"; readonly lines: readonly string[] }
  )[];
}

/** One thing to weigh for a load. */
export interface Item extends Listed {
  readonly figure: Shown;
  /** Division of a scale that would do, where its own is too coarse for it. */
  readonly finer?: string;
  /** How warm it is to be, where no ice goes in. */
  readonly warm?: string;
  /** So much of it as ice. */
  readonly ice?: string;
  /** In so many lots, where its scale does not hold it at once. */
  readonly lots?: number;
  /** The list of a load that a stock is left out of. */
  readonly plain?: readonly Item[];
}

/** A stage of the day that is timed, in minutes. */
export interface Stage {
  readonly stage: "mix" | "rest" | "mature" | "boil";
  readonly least: number;
  /** Longest, where it has a limit. */
  readonly most?: number;
}

/** Something that is no more as the spec has it. */
export interface Following {
  readonly now: Shown;
  readonly why: string;
}

/** The loads of a batch. */
export interface Loads {
  readonly count: number;
  readonly items: readonly Item[];
  readonly total: Shown;
  readonly remedies: readonly Section[];
}

/** The noodle of today. */
export interface Answers {
  /** The spec with what is different today in it. */
  readonly spec: unknown;
  readonly name: string;
  /** What goes into the dough. */
  readonly names: readonly string[];
  readonly stages: readonly Stage[];
  readonly problems: readonly Told[];
  readonly loud: readonly string[];
  /** The amounts that were found for what is wanted, in words. */
  readonly found: readonly string[];
  /** Nothing where it cannot be worked out. */
  readonly loads?: Loads;
  readonly size: readonly Shown[];
  readonly water: readonly Shown[];
  readonly follows: readonly Following[];
  readonly allergens: readonly string[];
  readonly cautions: readonly string[];
  /** What is to be known about the weights and the water, beside what is loud. */
  readonly notes: readonly string[];
}

/** What of the spec may be another today. */
export interface Kitchen {
  readonly flours: readonly {
    readonly name: string;
    readonly path: Path;
    readonly moisture: string;
    readonly protein: string;
    readonly basis: string;
  }[];
  readonly alkali: readonly {
    readonly name: string;
    /** Where another product is put. */
    readonly place: Path;
    readonly written: string;
    /** Alkaline products to choose from: the kitchen's own, then salts. */
    readonly products: readonly string[];
    /** Where its strength stands, when it is a solution. */
    readonly strength?: Path;
  }[];
}

/** What the page shows before the core has started. */
export interface First {
  readonly kitchen: Kitchen;
  /** Without the spec, which the page holds. */
  readonly answers: Omit<Answers, "spec">;
}

/** Passes, cut and times. */
export interface Rolled {
  readonly sheet: readonly Section[];
  readonly day: readonly Section[];
  readonly sheetProblems: readonly Told[];
  readonly dayProblems: readonly Told[];
  /** What is to be known and minded here, beside what stands with the weights. */
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

/** What mends a load. */
export interface Mending {
  readonly problems: readonly Told[];
  readonly items: readonly Item[];
  readonly becomes: readonly string[];
}

interface Moment {
  readonly state: State;
  /** Milliseconds since 1970. */
  readonly now: number;
}

/** What the page asks of the core, and what it gets. */
export interface Questions {
  readonly answers: { readonly asked: Changes; readonly answer: Answers };
  readonly roll: { readonly asked: Changes; readonly answer: Rolled };
  readonly working: {
    readonly asked: { readonly changes: Changes; readonly from: Place; readonly id: string };
    readonly answer: readonly Worked[];
  };
  readonly mend: {
    readonly asked: {
      readonly changes: Changes;
      /** What is in the bowl, g, by ingredient; what is not in yet is 0. What is in as listed may be left out. */
      readonly bowl: Readonly<Record<string, string>>;
    };
    readonly answer: Mending;
  };
  /** The card as a page, where it can be made. */
  readonly card: { readonly asked: Moment; readonly answer: string };
  /** Every dough as a row, for a spreadsheet. */
  readonly rows: { readonly asked: Moment; readonly answer: string };
  /** What went into each load, when, of which lot, and what became of it, as a page. */
  readonly record: { readonly asked: Moment; readonly answer: string };
  /** The spec as it is today, as a file that the command reads. */
  readonly yaml: { readonly asked: Changes; readonly answer: string };
}

export type Question = keyof Questions;
export type Asked<Q extends Question> = Questions[Q]["asked"];
export type AnswerTo<Q extends Question> = Questions[Q]["answer"];

/** A question on its way to the core. */
export interface Request<Q extends Question = Question> {
  readonly question: Q;
  readonly asked: Asked<Q>;
}

/** What comes back; a fault is a bug. */
export type Reply<Q extends Question> =
  | { readonly ok: true; readonly answer: AnswerTo<Q> }
  | { readonly ok: false; readonly fault: string };
