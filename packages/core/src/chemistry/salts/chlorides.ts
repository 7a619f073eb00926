import type { Source } from "../../figure/source.ts";
import { rowsOf } from "../../number/table.ts";
import { apparent, doubt, handbook, laliberte } from "../apparent-volume.ts";
import type { Salts } from "./record.ts";
import { endPoints, notClassified, solubilityHandbooks } from "./sources.ts";

const saltInstitute: Source = { cite: "Salt Institute, chemical properties of salt", standing: "copy" };

/** The chlorides: no alkali, but they come along in products and in dough. */
export const chlorides = {
  NaCl: {
    name: "sodium chloride",
    kind: "chloride",
    equivalentsM: 0,
    equivalentsP: 0,
    additive: "no number",
    hydrates: {},
    products: [],
    volume: {
      temperature: ["0", "100"],
      strongest: "26.5",
      doubt: doubt({ 0: "0.1" }, `${handbook} (to 25 %)`, "a table at 20 °C (to 26 %) and one at 18 °C (to 25 %)"),
      source: laliberte,
      volume: apparent(
        "-0.00324112223655149",
        "0.0636354335906616",
        "1.01371399467365",
        "0.0145951015210159",
        "3317.34854426537",
      ),
    },
    solubility: {
      rows: rowsOf({
        0: "35.67",
        10: "35.80",
        15.56: "35.86",
        26.67: "36.09",
        37.78: "36.39",
        65.56: "37.38",
        79.44: "38.16",
        100: "39.12",
      }),
      solids: [["100", "sodium chloride"]],
      sources: [saltInstitute],
    },
    ions: { anion: "Cl", grows: true },
    enthalpy: "-411.2",
    hazard: { limits: {}, source: notClassified },
    additiveLimits: "not known",
    foodLimits: "not known",
    kansui: "not named",
    sources: [endPoints],
  },
  KCl: {
    name: "potassium chloride",
    kind: "chloride",
    equivalentsM: 0,
    equivalentsP: 0,
    additive: "508",
    hydrates: {},
    products: [],
    volume: {
      temperature: ["5", "95"],
      strongest: "26.4",
      doubt: doubt({ 0: "0.1" }, `${handbook} (to 22 %)`),
      source: laliberte,
      volume: apparent(
        "-0.855928945959145",
        "6.04073571306402",
        "2.81787416217166",
        "0.0253924645877338",
        "2681.61723465886",
      ),
    },
    solubility: {
      rows: rowsOf({ 0: "28.0", 10: "31.2", 20: "34.2", 30: "37.2", 40: "40.1", 60: "45.8" }),
      solids: [["60", "potassium chloride"]],
      sources: [solubilityHandbooks],
    },
    ions: { anion: "Cl", grows: true },
    enthalpy: "not known",
    hazard: { limits: {}, source: notClassified },
    additiveLimits: "not known",
    foodLimits: "not known",
    kansui: "not named",
    sources: [endPoints],
  },
} as const satisfies Salts;
