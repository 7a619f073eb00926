import type { Note } from "../figure/problem.ts";
import type { Source } from "../figure/source.ts";
import { type Decimal, dec, fixedText, sum, ZERO } from "../number/decimal.ts";
import { type Composition, sharesOf, speciesOf } from "./composition.ts";
import type { Additive, SpeciesName } from "./species.ts";

/** How a product is classed for its label, as far as its species and strength tell. */
export interface Hazard {
  readonly signal: "Danger" | "Warning" | "none";
  readonly pictograms: readonly string[];
  readonly statements: readonly Statement[];
  readonly sources: readonly Source[];
}

export interface Statement {
  /** Code of the Globally Harmonised System, such as `H319`. */
  readonly code: string;
  readonly text: string;
  /** Which species and strength call for it. */
  readonly because: string;
}

const statements = {
  H290: "may be corrosive to metals",
  H302: "harmful if swallowed",
  H314: "causes severe skin burns and eye damage",
  H315: "causes skin irritation",
  H319: "causes serious eye irritation",
  H335: "may cause respiratory irritation",
} as const;

type Code = keyof typeof statements;

interface Rule {
  readonly code: Code;
  readonly species: readonly SpeciesName[];
  /** % by mass of these species together, from which and below which it holds */
  readonly from: number;
  readonly below?: number;
  readonly source: Source;
}

const annex: Source = {
  cite: "Regulation (EC) No 1272/2008, Annex VI, harmonised entry of sodium carbonate",
  standing: "copy",
};
const suppliers: Source = {
  cite: "safety data sheets of suppliers of potassium carbonate; not harmonised, so suppliers differ",
  standing: "copy",
};
const caustic: Source = {
  cite: "Regulation (EC) No 1272/2008, Annex VI, sodium and potassium hydroxide: 5, 2 and 0.5 %",
  standing: "memory",
};
const swallowed: Source = {
  cite: "acute toxicity estimate of potassium hydroxide by mouth, 333 mg/kg, against the limit of 2000 mg/kg",
  standing: "memory",
};
const mixtures: Source = {
  cite: "Regulation (EC) No 1272/2008, Annex I, general limits for mixtures: 10 % for irritants, 20 % for H335",
  standing: "memory",
};
const phosphates: Source = {
  cite: "safety data sheets of suppliers of trisodium and tripotassium phosphate",
  standing: "memory",
};

/** Species that burn, and species that irritate, whatever their strength. */
export const hydroxides = ["NaOH", "KOH"] as const;
export const irritants = ["Na2CO3", "K2CO3", "Na3PO4", "K3PO4"] as const;

const rules: readonly Rule[] = [
  { code: "H314", species: hydroxides, from: 2, source: caustic },
  { code: "H290", species: hydroxides, from: 2, source: caustic },
  { code: "H302", species: ["KOH"], from: 16.6, source: swallowed },
  { code: "H315", species: hydroxides, from: 0.5, below: 2, source: caustic },
  { code: "H319", species: hydroxides, from: 0.5, below: 2, source: caustic },
  { code: "H319", species: irritants, from: 10, source: annex },
  { code: "H315", species: ["K2CO3", "Na3PO4", "K3PO4"], from: 10, source: suppliers },
  { code: "H335", species: ["K2CO3", "Na3PO4", "K3PO4"], from: 20, source: suppliers },
];

/**
 * The hazard class of a product by its species and strength; the safety data sheet of the product at hand goes first.
 *
 * Source: as named in the result. Bicarbonates and chlorides are not classified (from memory).
 * @example hazardOf({ species: { NaOH: "5" }, water: "95", inert: "0" }).signal // => "Danger"
 */
export function hazardOf(composition: Composition): Hazard {
  const holding = rules.flatMap((rule) => {
    const share = shareOf(composition, rule.species);
    const fits = share.gte(rule.from) && (rule.below === undefined || share.lt(rule.below));
    return fits ? [{ rule, share }] : [];
  });
  const burns = holding.some(({ rule }) => rule.code === "H314");
  const told = holding.filter(({ rule }) => !(burns && (rule.code === "H315" || rule.code === "H319")));
  const codes = [...new Set(told.map(({ rule }) => rule.code))].sort();
  const harms = codes.some((code) => code !== "H314" && code !== "H290");
  return {
    signal: burns ? "Danger" : codes.length > 0 ? "Warning" : "none",
    pictograms: [...(burns ? ["GHS05"] : []), ...(harms ? ["GHS07"] : [])],
    statements: codes.map((code) => {
      const why = told
        .filter(({ rule }) => rule.code === code)
        .map(({ rule, share }) => becauseOf(composition, rule, share));
      return { code, text: statements[code], because: why.join("; ") };
    }),
    sources:
      codes.length === 0
        ? [mixtures]
        : [...new Set([...told.map(({ rule }) => rule.source), ...othersFor(composition)])],
  };
}

function othersFor(composition: Composition): readonly Source[] {
  const phosphate = shareOf(composition, ["Na3PO4", "K3PO4"]).isZero() ? [] : [phosphates];
  return [mixtures, ...phosphate];
}

function shareOf(composition: Composition, names: readonly SpeciesName[]): Decimal {
  return sum(names.map((name) => dec(composition.species[name] ?? ZERO)));
}

function becauseOf(composition: Composition, rule: Rule, share: Decimal): string {
  const present = rule.species
    .filter((name) => composition.species[name] !== undefined)
    .map((name) => speciesOf(name).name);
  const below = rule.below === undefined ? "" : ` and below ${rule.below} %`;
  return `${fixedText(share, 1)} % of ${present.join(" and ")}, from ${rule.from} %${below}`;
}

/**
 * The usual cautions for a product, by what is in it. They defer to the label, the safety data sheet and local rules.
 *
 * @example cautionsFor({ species: { Na2CO3: "100" }, water: "0", inert: "0" }).length > 0 // => true
 */
export function cautionsFor(composition: Composition): readonly Note[] {
  const has = (names: readonly SpeciesName[]): boolean => names.some((name) => composition.species[name] !== undefined);
  const caution = (code: string, text: string): Note => ({ code: `caution.${code}`, path: [], text });
  const dry = dec(composition.water).lt(50);
  return [
    ...(has(hydroxides)
      ? [
          caution(
            "burns",
            "hydroxides burn skin and eyes, even diluted: wear goggles, gloves and sleeves, and keep running water at hand",
          ),
          caution(
            "into-water",
            "give hydroxide to cold water a little at a time and stir, never water to hydroxide: it heats up and can boil and spit",
          ),
        ]
      : []),
    ...(has(irritants)
      ? [
          caution(
            "eyes",
            "carbonates irritate the eyes: wear goggles and gloves with powder and strong solutions, and rinse with plenty of water",
          ),
          ...(dry
            ? [
                caution(
                  "heat",
                  "dry carbonates warm the water they dissolve in: strew them into the water while stirring, never water onto the powder",
                ),
              ]
            : []),
          ...(dry ? [caution("dust", "do not stir up or breathe the dust")] : []),
        ]
      : []),
    ...(has([...hydroxides, ...irritants])
      ? [
          caution(
            "aluminium",
            "no aluminium: alkaline solutions eat it and set hydrogen free; take stainless steel, glass or food-safe plastic",
          ),
        ]
      : []),
    caution("food-grade", "only food grade belongs in food: read the label"),
    caution(
      "keep",
      "keep it closed, dry where it is a powder, labelled with name, strength and date, away from children and from drinks",
    ),
    caution("sheet", "the label, the safety data sheet of the product at hand and local rules go before these lines"),
  ];
}

/** The additive names and numbers of what is in a product. @example additivesIn({ species: { K2CO3: "100" }, water: "0", inert: "0" })[0]?.eu // => "E 501(i)" */
export function additivesIn(composition: Composition): readonly (Additive & { readonly name: string })[] {
  return sharesOf(composition).flatMap(([species]) => {
    const { name, additive } = speciesOf(species);
    return additive === undefined ? [] : [{ name, ...additive }];
  });
}
