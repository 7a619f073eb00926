import type { Source } from "../../figure/source.ts";
import { rowsOf } from "../../number/table.ts";
import type { FoodLimit, Salts } from "./record.ts";
import { endPoints, irritant, solubilityHandbooks } from "./sources.ts";

const condensed: Source = {
  cite: "condensed phosphates: M ends at two added protons, which is sharp; P at one, which is not sharp near pH 8.3 and is nominal",
  standing: "memory",
};
const neutralPhosphates: Source = {
  cite: "safety data sheets of suppliers of trisodium phosphate and of the diphosphates; not harmonised, so suppliers differ: some print H335",
  standing: "copy",
};
const tripotassium: Source = {
  cite: "safety data sheets of suppliers of tripotassium phosphate; not harmonised: some print H318",
  standing: "memory",
};

/** The one limit on all phosphates of a food together. */
const phosphorusInNoodles: FoodLimit = {
  item: "phosphates in pre-cooked noodles (as phosphorus: from memory)",
  counted: "as phosphorus",
  most: "2500",
  unit: "mg/kg",
  source: { cite: "Codex GSFA, category 06.4.3, pre-cooked pastas and noodles", standing: "copy" },
};

/** What holds of all of them. */
const phosphate = {
  kind: "phosphate",
  products: [],
  volume: "not known",
  ions: "not known",
  enthalpy: "not known",
  additiveLimits: "not known",
  foodLimits: [phosphorusInNoodles],
  kansui: "named",
} as const;

/** The phosphates, with what is known of each. */
export const phosphates = {
  Na3PO4: {
    ...phosphate,
    name: "trisodium phosphate",
    equivalentsM: 2,
    equivalentsP: 1,
    additive: "339(iii)",
    hydrates: { "Na3PO4.12H2O": "trisodium phosphate dodecahydrate" },
    solubility: {
      rows: rowsOf({ 0: "4.5", 10: "8.2", 20: "12.1", 30: "16.3", 40: "20.2", 60: "29.9" }),
      solids: [["60", "trisodium phosphate dodecahydrate"]],
      sources: [solubilityHandbooks],
    },
    hazard: { limits: irritant, source: neutralPhosphates },
    sources: [endPoints],
  },
  Na2HPO4: {
    ...phosphate,
    name: "disodium hydrogen phosphate",
    equivalentsM: 1,
    equivalentsP: 0,
    additive: "339(ii)",
    hydrates: {
      "Na2HPO4.2H2O": "disodium hydrogen phosphate dihydrate",
      "Na2HPO4.12H2O": "disodium hydrogen phosphate dodecahydrate",
    },
    solubility: {
      rows: rowsOf({ 0: "1.68", 10: "3.53", 20: "7.83", 30: "22.0", 40: "55.3" }),
      solids: [
        ["35", "disodium hydrogen phosphate dodecahydrate"],
        ["40", "disodium hydrogen phosphate heptahydrate"],
      ],
      sources: [solubilityHandbooks],
    },
    hazard: "not known",
    sources: [endPoints],
  },
  NaH2PO4: {
    ...phosphate,
    name: "sodium dihydrogen phosphate",
    equivalentsM: 0,
    equivalentsP: -1,
    additive: "339(i)",
    hydrates: {
      "NaH2PO4.H2O": "sodium dihydrogen phosphate monohydrate",
      "NaH2PO4.2H2O": "sodium dihydrogen phosphate dihydrate",
    },
    solubility: {
      rows: rowsOf({ 0: "56.5", 10: "69.8", 20: "86.9", 30: "107", 40: "133" }),
      solids: [["40", "sodium dihydrogen phosphate dihydrate"]],
      sources: [solubilityHandbooks],
    },
    hazard: "not known",
    sources: [endPoints],
  },
  K3PO4: {
    ...phosphate,
    name: "tripotassium phosphate",
    equivalentsM: 2,
    equivalentsP: 1,
    additive: "340(iii)",
    hydrates: {},
    solubility: "not known",
    hazard: { limits: irritant, source: tripotassium },
    sources: [endPoints],
  },
  K2HPO4: {
    ...phosphate,
    name: "dipotassium hydrogen phosphate",
    equivalentsM: 1,
    equivalentsP: 0,
    additive: "340(ii)",
    hydrates: { "K2HPO4.3H2O": "dipotassium hydrogen phosphate trihydrate" },
    solubility: "not known",
    hazard: "not known",
    sources: [endPoints],
  },
  KH2PO4: {
    ...phosphate,
    name: "potassium dihydrogen phosphate",
    equivalentsM: 0,
    equivalentsP: -1,
    additive: "340(i)",
    hydrates: {},
    solubility: {
      rows: rowsOf({ 0: "14.8", 10: "18.3", 20: "22.6", 30: "28.0", 40: "35.5" }),
      solids: [["40", "potassium dihydrogen phosphate"]],
      sources: [solubilityHandbooks],
    },
    hazard: "not known",
    sources: [endPoints],
  },
  Na4P2O7: {
    ...phosphate,
    name: "tetrasodium diphosphate",
    equivalentsM: 2,
    equivalentsP: 1,
    additive: "450(iii)",
    hydrates: { "Na4P2O7.10H2O": "tetrasodium diphosphate decahydrate" },
    solubility: "not known",
    hazard: { limits: irritant, source: neutralPhosphates },
    sources: [endPoints, condensed],
  },
  K4P2O7: {
    ...phosphate,
    name: "tetrapotassium diphosphate",
    equivalentsM: 2,
    equivalentsP: 1,
    additive: "450(v)",
    hydrates: {},
    solubility: "not known",
    hazard: { limits: { H315: 10, H319: 10 }, source: neutralPhosphates },
    sources: [endPoints, condensed],
  },
  Na5P3O10: {
    ...phosphate,
    name: "pentasodium triphosphate",
    equivalentsM: 2,
    equivalentsP: 1,
    additive: "451(i)",
    hydrates: {},
    solubility: "not known",
    hazard: "not known",
    sources: [endPoints, condensed],
  },
} as const satisfies Salts;
