import type { Source } from "../figure/source.ts";
import type { DecimalText } from "../number/decimal.ts";

/** Least and greatest value, either of which may be open. */
export interface Span {
  readonly low?: DecimalText;
  readonly high?: DecimalText;
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
  readonly ash?: Span;
  /** Ash at most this plus a part of the protein, both dry: US flour. */
  readonly ashByProtein?: { readonly base: DecimalText; readonly perProtein: DecimalText };
  /** Decimals that ash is rounded to before it is compared, where the limits leave gaps between them. */
  readonly ashPlaces?: number;
  /** Where sources disagree, what all of them hold. */
  readonly protein?: Span;
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
  return rows.map(([type, low, high]) => {
    const ash = { ...(low !== undefined && { low }), ...(high !== undefined && { high }) };
    return { ...shared, type, basis: "dry", ash };
  });
}

/** A class by its limits, on dry matter unless they say otherwise. */
function standard(
  system: FlourClass["system"],
  type: string,
  grain: Grain,
  limits: Partial<FlourClass>,
  source: Source,
): FlourClass {
  return { system, type, grain, basis: "dry", ...limits, source };
}

const cfr = (section: string, standing: Source["standing"]): Source => ({ cite: `21 CFR ${section}`, standing });
const roundedGerman = { system: "DE", ashPlaces: 2 } as const;

function italy(type: string, ash: Span, protein: DecimalText): FlourClass {
  const limits = { ash, protein: { low: protein }, nitrogenFactor: "5.7", moistureMost: "14.5" };
  return standard("IT", type, "wheat", limits, italian);
}

function japan(type: string, protein: Span): FlourClass {
  return standard("JP", type, "wheat", { basis: "as is", protein }, japanese);
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
  standard("US", "flour", "wheat", { ashByProtein: { base: "0.35", perProtein: "0.05" } }, cfr("137.105(a)", "copy")),
  standard("US", "durum flour", "durum", { ash: { high: "1.5" }, moistureMost: "15" }, cfr("137.220", "copy")),
  standard("US", "semolina", "durum", { ash: { high: "0.92" }, moistureMost: "15" }, cfr("137.320", "memory")),
  standard(
    "Codex",
    "wheat flour",
    "wheat",
    { protein: { low: "7.0" }, nitrogenFactor: "5.7", moistureMost: "15.5" },
    {
      cite: "CODEX STAN 152-1985: moisture read, protein not",
      standing: "memory",
    },
  ),
  standard(
    "Codex",
    "vital wheat gluten",
    "gluten",
    { ash: { high: "2.0" }, protein: { low: "80" }, nitrogenFactor: "6.25", moistureMost: "10" },
    { cite: "CODEX STAN 163-1987, rev. 2001", at: "section 3.2", standing: "read" },
  ),
  standard(
    "AT",
    "flour",
    "wheat",
    { basis: "as is", moistureMost: "15.5" },
    {
      cite: "Austrian Food Code, chapter B 20",
      standing: "read",
    },
  ),
  japan("weak", { low: "6.5", high: "8.0" }),
  japan("medium", { low: "8.0", high: "9.0" }),
  japan("semi-strong", { low: "10.5", high: "11.5" }),
  japan("strong", { low: "11.5", high: "12.5" }),
  standard(
    "JP",
    "school-meal flour, Shiga prefecture",
    "wheat",
    {
      basis: "as is",
      ash: { low: "0.35", high: "0.45" },
      protein: { low: "11.0", high: "13.0" },
      moistureMost: "14.5",
    },
    { cite: "Shiga prefecture, specification of flour for school meals", standing: "read" },
  ),
];
