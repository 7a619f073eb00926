import type { Source } from "../figure/source.ts";
import type { DecimalText } from "../number/decimal.ts";

/** Least and greatest value, either of which may be open. */
export interface Span {
  readonly low?: DecimalText;
  readonly high?: DecimalText;
}

/** A limit of a class. Where sources disagree, `core` is what all of them hold and `wide` what any of them holds. */
export interface Limit {
  readonly core: Span;
  readonly wide?: Span;
}

export type Grain = "wheat" | "durum" | "spelt" | "rye" | "gluten";

/** A named class of flour with its limits. */
export interface FlourClass {
  readonly system: "DE" | "FR" | "IT" | "US" | "Codex" | "AT" | "JP";
  readonly type: string;
  readonly grain: Grain;
  /** Only for meal of the whole grain. */
  readonly wholegrain?: true;
  /** Moisture on which ash and protein are stated, for limits in % dry or % as is. */
  readonly basis: "dry" | "as is";
  readonly ash?: Limit;
  /** Ash at most this plus a part of the protein, both dry: US flour. */
  readonly ashByProtein?: { readonly base: DecimalText; readonly perProtein: DecimalText };
  /** Decimals that ash is rounded to before it is compared, where the limits leave gaps between them. */
  readonly ashPlaces?: number;
  readonly protein?: Limit;
  /** Nitrogen factor of the protein limit. */
  readonly nitrogenFactor?: DecimalText;
  /** % as is, at most. */
  readonly moistureMost?: DecimalText;
  readonly source: Source;
}

const german: Source = { cite: "DIN 10355 (1992), as printed by the German mills' association", standing: "copy" };
const germanRye: Source = { cite: "DIN 10355: type numbers read, ash limits not", standing: "memory" };
const french: Source = { cite: "France, decree 63-720 of 13 July 1963", standing: "memory" };
const italian: Source = { cite: "Italy, DPR 9 February 2001 n. 187", at: "art. 1", standing: "copy" };
const japanese: Source = { cite: "three trade pages that disagree; there is no legal grading", standing: "copy" };

type Ash = readonly [type: string, low: DecimalText | undefined, high: DecimalText | undefined];

function byAsh(
  shared: Pick<FlourClass, "system" | "grain" | "source" | "ashPlaces" | "wholegrain">,
  rows: readonly Ash[],
): readonly FlourClass[] {
  return rows.map(([type, low, high]): FlourClass => {
    const core = { ...(low !== undefined && { low }), ...(high !== undefined && { high }) };
    return { ...shared, type, basis: "dry", ash: { core } };
  });
}

const roundedGerman = { system: "DE", ashPlaces: 2 } as const;

function italy(type: string, ash: Span, protein: DecimalText): FlourClass {
  const shared = { system: "IT", grain: "wheat", basis: "dry", nitrogenFactor: "5.7", moistureMost: "14.5" } as const;
  return { ...shared, type, ash: { core: ash }, protein: { core: { low: protein } }, source: italian };
}

function japan(type: string, protein: Limit): FlourClass {
  return { system: "JP", grain: "wheat", type, basis: "as is", protein, source: japanese };
}

/** Classes of flour by law, standard and trade. */
export const flourClassList: readonly FlourClass[] = [
  ...byAsh({ ...roundedGerman, grain: "wheat", source: german }, [
    ["405", undefined, "0.50"],
    ["550", "0.51", "0.63"],
    ["812", "0.64", "0.90"],
    ["1050", "0.91", "1.20"],
    ["1600", "1.21", "1.80"],
  ]),
  ...byAsh({ ...roundedGerman, grain: "wheat", wholegrain: true, source: german }, [
    ["1700 Backschrot", undefined, "2.10"],
  ]),
  ...byAsh({ ...roundedGerman, grain: "rye", source: germanRye }, [
    ["815", undefined, "0.90"],
    ["997", "0.91", "1.10"],
    ["1150", "1.11", "1.30"],
    ["1370", "1.31", "1.60"],
    ["1740", "1.61", "1.80"],
  ]),
  ...byAsh({ ...roundedGerman, grain: "rye", wholegrain: true, source: germanRye }, [
    ["1800 Backschrot", undefined, "2.20"],
  ]),
  ...byAsh({ ...roundedGerman, grain: "spelt", source: germanRye }, [
    ["630", undefined, "0.70"],
    ["812", "0.71", "0.90"],
    ["1050", "0.91", "1.20"],
  ]),
  ...byAsh({ system: "FR", grain: "wheat", source: { ...french, standing: "copy" } }, [["T45", undefined, "0.50"]]),
  ...byAsh({ system: "FR", grain: "wheat", source: french }, [
    ["T55", "0.50", "0.60"],
    ["T65", "0.62", "0.75"],
    ["T80", "0.75", "0.90"],
    ["T110", "1.00", "1.20"],
    ["T150", "1.40", undefined],
  ]),
  italy("00", { high: "0.55" }, "9.00"),
  italy("0", { high: "0.65" }, "11.00"),
  italy("1", { high: "0.80" }, "12.00"),
  italy("2", { high: "0.95" }, "12.00"),
  italy("integrale", { low: "1.30", high: "1.70" }, "12.00"),
  {
    system: "US",
    type: "flour",
    grain: "wheat",
    basis: "dry",
    ashByProtein: { base: "0.35", perProtein: "0.05" },
    source: { cite: "21 CFR 137.105(a)", standing: "copy" },
  },
  {
    system: "US",
    type: "durum flour",
    grain: "durum",
    basis: "dry",
    ash: { core: { high: "1.5" } },
    moistureMost: "15",
    source: { cite: "21 CFR 137.220", standing: "copy" },
  },
  {
    system: "US",
    type: "semolina",
    grain: "durum",
    basis: "dry",
    ash: { core: { high: "0.92" } },
    moistureMost: "15",
    source: { cite: "21 CFR 137.320", standing: "memory" },
  },
  {
    system: "Codex",
    type: "wheat flour",
    grain: "wheat",
    basis: "dry",
    protein: { core: { low: "7.0" } },
    nitrogenFactor: "5.7",
    moistureMost: "15.5",
    source: { cite: "CODEX STAN 152-1985: moisture read, protein not", standing: "memory" },
  },
  {
    system: "Codex",
    type: "vital wheat gluten",
    grain: "gluten",
    basis: "dry",
    ash: { core: { high: "2.0" } },
    protein: { core: { low: "80" } },
    nitrogenFactor: "6.25",
    moistureMost: "10",
    source: { cite: "CODEX STAN 163-1987, rev. 2001", at: "section 3.2", standing: "read" },
  },
  {
    system: "AT",
    type: "flour",
    grain: "wheat",
    basis: "as is",
    moistureMost: "15.5",
    source: { cite: "Austrian Food Code, chapter B 20", standing: "read" },
  },
  japan("weak", { core: { low: "6.5", high: "8.0" }, wide: { low: "6.5", high: "8.5" } }),
  japan("medium", { core: { low: "8.0", high: "9.0" }, wide: { low: "8.0", high: "10.5" } }),
  japan("semi-strong", { core: { low: "10.5", high: "11.5" }, wide: { low: "9.0", high: "12.0" } }),
  japan("strong", { core: { low: "11.5", high: "12.5" }, wide: { low: "11.5", high: "14.5" } }),
  {
    system: "JP",
    type: "school-meal flour, Shiga prefecture",
    grain: "wheat",
    basis: "as is",
    ash: { core: { low: "0.35", high: "0.45" } },
    protein: { core: { low: "11.0", high: "13.0" } },
    moistureMost: "14.5",
    source: { cite: "Shiga prefecture, specification of flour for school meals", standing: "read" },
  },
];
