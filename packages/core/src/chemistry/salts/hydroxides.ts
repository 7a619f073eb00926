import type { Source } from "../../figure/source.ts";
import { rowsOf } from "../../number/table.ts";
import { apparent, doubt, handbook, laliberte } from "../apparent-volume.ts";
import { sodiumHydroxideVolume } from "../sodium-hydroxide-volume.ts";
import { namesIn, type Salts } from "./record.ts";
import { additiveNumbers, endPoints, harmonised, monograph, solubilityHandbooks, usage } from "./sources.ts";

const causticTables: Source = {
  cite: "CRC Handbook of Chemistry and Physics, 102nd ed. (2021), Concentrative Properties of Aqueous Solutions, at 20 °C; two published tables of NaOH density for its change with temperature",
  standing: "copy",
};
const sodiumHydroxide = harmonised("011-002-00-6, sodium hydroxide: limits 5, 2 and 0.5 %; H290 by suppliers");
const potassiumHydroxide = harmonised(
  "019-002-00-8, potassium hydroxide: limits 5, 2 and 0.5 %; H290 by suppliers",
  "H302 by 333 mg/kg against 2000 mg/kg, from memory",
);
const sodiumHydroxideMonograph = monograph("sodium hydroxide", "19th session 1975, revised 59th 2002");
const potassiumHydroxideMonograph = monograph("potassium hydroxide", "19th session 1975, revised 59th 2002");
const kansuiPage: Source = { cite: "encyclopaedia, Japanese, article on kansui, 2022", standing: "copy" };

const burning = { H314: 2, H290: 2, H315: 0.5, H319: 0.5 } as const;

/** The hydroxides, with what is known of each. */
export const hydroxides = {
  NaOH: {
    name: "sodium hydroxide",
    kind: "hydroxide",
    equivalentsM: 1,
    equivalentsP: 1,
    additive: "524",
    hydrates: {},
    products: [
      {
        key: "sodium-hydroxide",
        of: "NaOH",
        aliases: [],
        names: [
          { source: kansuiPage, names: ["苛性ソーダ"] },
          { source: additiveNumbers, names: ["E 524", "INS 524"] },
          { source: usage, names: namesIn("caustic soda, soude caustique, Ätznatron, Laugenperlen") },
          { source: usage, names: namesIn("烧碱, 火碱, 苛性钠, 가성소다, 양잿물") },
        ],
      },
    ],
    volume: {
      temperature: ["10", "40"],
      strongest: "40",
      doubt: doubt(
        { 0: "0.1" },
        `${handbook} (to 40 %)`,
        "a table at 10 to 40 °C (to 19 %) and one at 20 to 40 °C (24 to 40 %)",
      ),
      thin: {
        below: "20",
        text: "the density of sodium hydroxide solutions above 19 % was tabulated from 20 to 40 °C; below that the change with temperature is carried on",
      },
      source: causticTables,
      volume: sodiumHydroxideVolume,
    },
    solubility: {
      rows: rowsOf({ 10: "98", 20: "109", 30: "119", 40: "129" }),
      solids: [["40", "sodium hydroxide monohydrate"]],
      sources: [solubilityHandbooks],
    },
    ions: { anion: "OH", grows: false },
    enthalpy: "not known",
    hazard: { limits: burning, source: sodiumHydroxide },
    additiveLimits: [
      { item: "total alkali as NaOH", least: "95.0", unit: "%", source: sodiumHydroxideMonograph },
      { item: "carbonate as Na2CO3", most: "3", unit: "%", source: sodiumHydroxideMonograph },
    ],
    foodLimits: "not known",
    kansui: "not named",
    sources: [endPoints],
  },
  KOH: {
    name: "potassium hydroxide",
    kind: "hydroxide",
    equivalentsM: 1,
    equivalentsP: 1,
    additive: "525",
    hydrates: {},
    products: [
      {
        key: "potassium-hydroxide",
        of: "KOH",
        aliases: [],
        names: [
          { source: additiveNumbers, names: ["E 525", "INS 525"] },
          { source: usage, names: namesIn("caustic potash, potasse caustique, Ätzkali, 苛性カリ, 苛性钾, 가성칼리") },
        ],
      },
    ],
    volume: {
      temperature: ["4", "95"],
      strongest: "40",
      doubt: doubt(
        { 0: "0.05", 4: "0.17", 10: "0.3", 15: "0.38", 24: "0.53", 30: "0.63", 34: "0.66" },
        `two tables that disagree: ${handbook}, up to 0.66 % below it, and one of a university at 18 °C, within 0.13 %`,
      ),
      source: laliberte,
      volume: apparent(
        "821.119043254761",
        "1043.20173374381",
        "0.112873330222752",
        "0.00124023636407386",
        "539.630388368877",
      ),
    },
    solubility: {
      rows: rowsOf({ 0: "95.7", 10: "103", 20: "112", 30: "126", 40: "134" }),
      solids: [["40", "potassium hydroxide dihydrate"]],
      sources: [solubilityHandbooks],
    },
    ions: { anion: "OH", grows: false },
    enthalpy: "not known",
    hazard: { limits: { ...burning, H302: 16.65 }, source: potassiumHydroxide },
    additiveLimits: [
      { item: "total alkali as KOH", least: "85.0", unit: "%", source: potassiumHydroxideMonograph },
      { item: "carbonate as K2CO3", most: "3.5", unit: "%", source: potassiumHydroxideMonograph },
    ],
    foodLimits: "not known",
    kansui: "not named",
    sources: [endPoints],
  },
} as const satisfies Salts;
