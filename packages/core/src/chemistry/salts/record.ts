import type { Source } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";
import type { VolumeModel } from "../apparent-volume.ts";
import type { StatementCode } from "../hazard-statements.ts";
import type { Anion } from "../pitzer.ts";

/** What is known of something, or that it is not: a record has no silent gaps. */
export type Known<T> = T | "not known";

/** The value where it is known. @example known("not known") // => undefined */
export function known<T>(value: Known<T>): T | undefined {
  return value === "not known" ? undefined : value;
}

/**
 * All that is known here of one salt or base without water. Every field has to be stated, if only as not known, so that a
 * salt that was added with something forgotten does not compile.
 */
export interface Salt {
  readonly name: string;
  readonly kind: "carbonate" | "bicarbonate" | "hydroxide" | "phosphate" | "chloride";
  /** Equivalents of acid per mol down to about pH 4.3: carbonate ends as carbonic acid, phosphate as H2PO4−. */
  readonly equivalentsM: number;
  /** Equivalents of acid per mol down to about pH 8.3: carbonate ends as bicarbonate, phosphate as HPO4 2−. Below zero: it uses up that much. */
  readonly equivalentsP: number;
  /** Number in the International Numbering System of food additives; the European Union writes it after an E. */
  readonly additive: string;
  /** Names of the solids that bind water or a second salt in fixed proportion, by formula. */
  readonly hydrates: Readonly<Record<string, string>>;
  /** Pure products of it that people buy; the salt and its hydrates are products under their own names in any case. */
  readonly products: readonly Product[];
  /** The volume that it takes up in water, which tells the density of solutions. */
  readonly volume: Known<VolumeModel>;
  readonly solubility: Known<SolubilityTable>;
  /** Its anion, where the activities of its ions are known, and whether they tell when its crystals grow. */
  readonly ions: Known<{ readonly anion: Anion; readonly grows: boolean }>;
  /** Enthalpy of formation of the solid, kJ/mol, which tells the heat of solution. */
  readonly enthalpy: Known<DecimalText>;
  readonly hazard: Known<HazardEntry>;
  /** Limits on it as an additive, and on foods that it goes into. */
  readonly additiveLimits: Known<readonly FoodLimit[]>;
  readonly foodLimits: Known<readonly FoodLimit[]>;
  /** Whether the Japanese manufacturing standard of kansui names it. */
  readonly kansui: "named" | "not named";
  /** Sources of the equivalents. */
  readonly sources: readonly Source[];
}

export type Salts = Readonly<Record<string, Salt>>;

/** A pure product, under the key of the catalogue. */
export interface Product {
  readonly key: string;
  /** Where it is not that of the salt or hydrate. */
  readonly name?: string;
  /** Formula of the salt or hydrate that it is. */
  readonly of: string;
  /** Bicarbonate that the oven has turned to carbonate. */
  readonly baked?: true;
  readonly aliases: readonly string[];
  /** Everyday, regional and trade names that stand for this one thing. */
  readonly names: readonly ProductNames[];
}

/** Everyday names of a product. */
export interface ProductNames {
  readonly names: readonly string[];
  /** Says so; a name from memory is safe to recognise, and the answer shows what it was taken for. */
  readonly source: Source;
  /** The names do not say how much crystal water there is. */
  readonly waterNotSaid?: true;
}

/** Names that are written one after the other. @example namesIn("trona, sesqui") // => ["trona", "sesqui"] */
export function namesIn(list: string): readonly string[] {
  return list.split(", ");
}

/** How much of a salt water can hold, by temperature. */
export interface SolubilityTable {
  /** °C and g of the anhydrous salt in 100 g of water */
  readonly rows: readonly (readonly [DecimalText, DecimalText])[];
  /** What crystallises, by the temperature up to which it does. */
  readonly solids: readonly (readonly [DecimalText, string])[];
  readonly sources: readonly Source[];
}

/** The class of one salt. */
export interface HazardEntry {
  /** % by mass of the salt alone from which a statement holds; none where it is not classified. */
  readonly limits: Readonly<Partial<Record<StatementCode, number>>>;
  readonly source: Source;
}

/** A limit that a food law or standard sets, with the text it comes from. Whether it binds where one works, the local code tells. */
export interface FoodLimit {
  readonly item: string;
  /** It is on an element of several salts together, and not on each salt by itself. */
  readonly counted?: "as phosphorus";
  readonly least?: DecimalText;
  readonly most?: DecimalText;
  readonly unit: string;
  readonly source: Source;
}
