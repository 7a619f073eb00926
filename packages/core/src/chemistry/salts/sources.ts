import type { Source } from "../../figure/source.ts";

// Sources that salts of several kinds share.

export const endPoints: Source = {
  cite: "textbook acid-base titration to the phenolphthalein end (about pH 8.3) and the methyl orange end (about pH 4.3)",
  standing: "memory",
};
export const additiveNumbers: Source = {
  cite: "Codex Alimentarius, Class Names and the International Numbering System for Food Additives, CAC/GL 36",
  standing: "memory",
};
export const additiveList: Source = {
  cite: "list of additive names in many languages of a public food database, E 500 to E 501",
  standing: "copy",
};
export const healthPage: Source = { cite: "Chinese health page on 食用碱", standing: "copy" };
export const usage: Source = { cite: "kitchen and trade usage", standing: "memory" };
export const solubilityHandbooks: Source = { cite: "handbook solubility tables", standing: "memory" };
export const notClassified: Source = {
  cite: "bicarbonates and chlorides: no harmonised entry, not classified by their suppliers",
  standing: "memory",
};

/** An entry of the European Union's list of classified substances. */
export function harmonised(entry: string, place?: string): Source {
  const cite = `Regulation (EC) No 1272/2008, Annex VI, entry ${entry}`;
  return { cite, ...(place === undefined ? {} : { at: place }), standing: "copy" };
}

/** General limits of Annex I of that regulation for mixtures: 10 % for irritants, 20 % for irritants of the airways. */
export const irritant = { H315: 10, H319: 10, H335: 20 } as const;

/** A specification of the Joint FAO/WHO Expert Committee on Food Additives. */
export function monograph(substance: string, at: string): Source {
  return {
    cite: `Joint FAO/WHO Expert Committee on Food Additives, specification of ${substance}`,
    at,
    standing: "copy",
  };
}
