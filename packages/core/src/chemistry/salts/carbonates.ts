import type { Source } from "../../figure/source.ts";
import { rowsOf } from "../../number/table.ts";
import { apparent, doubt, handbook, laliberte } from "../apparent-volume.ts";
import { goncalvesKestin, potassiumCarbonateVolume } from "../potassium-carbonate-volume.ts";
import { namesIn, type Salts } from "./record.ts";
import {
  additiveList,
  additiveNumbers,
  endPoints,
  harmonised,
  healthPage,
  irritant,
  monograph,
  notClassified,
  solubilityHandbooks,
  usage,
} from "./sources.ts";

const dictionary: Source = {
  cite: "A. M. Comey and D. A. Hahn, A Dictionary of Chemical Solubilities, 1921, and A. Seidell, Solubilities of Inorganic Compounds, 3rd ed.",
  standing: "copy",
};
const hydratesOfSoda: Source = {
  cite: "transition of the hydrates of sodium carbonate at 32.0 and 35.4 °C",
  standing: "copy",
};
const soda = harmonised(
  "011-005-00-2, sodium carbonate: eye irritant",
  "class read in safety data sheets; number from memory",
);
const potash: Source = {
  cite: "safety data sheets of suppliers of potassium carbonate; not harmonised, so suppliers differ",
  standing: "copy",
};
const sodaMonograph = monograph("sodium carbonate", "19th session 1975, revised 59th 2002");
const bicarbonateMonograph = monograph("sodium hydrogen carbonate", "19th session 1975, revised 59th 2002");
const potashMonograph: Source = {
  cite: "Regulation (EU) No 231/2012 and JECFA specification of potassium carbonate",
  standing: "memory",
};
const pharmacopoeia: Source = { cite: "United States Pharmacopeia 32", standing: "copy" };
const noodleCaps: Source = {
  cite: "India, Food Safety and Standards, Food Additives, Appendix A, pastas and noodles",
  standing: "copy",
};
const namesOfHydrates: Source = {
  cite: "chemistry textbook, names of the hydrates of sodium carbonate",
  standing: "copy",
};
const federal: Source = {
  cite: "21 CFR 184.1742 and 184.1792, sodium carbonate and sesquicarbonate",
  standing: "copy",
};

/** The carbonates and bicarbonates, with what is known of each. */
export const carbonates = {
  Na2CO3: {
    name: "sodium carbonate",
    kind: "carbonate",
    equivalentsM: 2,
    equivalentsP: 1,
    additive: "500(i)",
    hydrates: {
      "Na2CO3.H2O": "sodium carbonate monohydrate",
      "Na2CO3.7H2O": "sodium carbonate heptahydrate",
      "Na2CO3.10H2O": "sodium carbonate decahydrate",
    },
    products: [
      {
        key: "sodium-carbonate",
        of: "Na2CO3",
        aliases: [],
        names: [
          { source: namesOfHydrates, names: ["soda ash"] },
          { source: additiveList, names: ["Calcinierte Soda", "Kalzinierte Soda"] },
          { source: usage, names: namesIn("calcined soda, light soda ash, dense soda ash, 纯碱, ソーダ灰, 소다회") },
          {
            source: additiveList,
            waterNotSaid: true,
            names: ["Natriumcarbonat", "carbonate de sodium", "carbonate de soude"],
          },
          { source: additiveList, waterNotSaid: true, names: namesIn("炭酸ナトリウム, 碳酸钠, 鹼粉, 탄산나트륨") },
          { source: healthPage, waterNotSaid: true, names: ["面碱"] },
          { source: additiveNumbers, waterNotSaid: true, names: ["E 500(i)", "INS 500(i)"] },
          {
            source: usage,
            waterNotSaid: true,
            names: namesIn(
              "carbonate of soda, Natriumkarbonat, carbonato di sodio, carbonato sódico, carbonato de sodio, 炭酸ソーダ, 苏打",
            ),
          },
        ],
      },
      {
        key: "sodium-carbonate-monohydrate",
        of: "Na2CO3.H2O",
        aliases: [],
        names: [
          { source: additiveList, names: ["crystal carbonate"] },
          { source: usage, names: ["soda monohydrate", "thermonatrite"] },
        ],
      },
      { key: "sodium-carbonate-decahydrate", of: "Na2CO3.10H2O", aliases: [], names: [] },
    ],
    volume: {
      temperature: ["0", "100"],
      strongest: "20.9",
      doubt: doubt(
        { 0: "0.03", 5: "0.1", 7.5: "0.2", 12.5: "0.22" },
        `${handbook} (to 15 %)`,
        "measured points that scatter (to 17.5 %)",
        "an old table at 15 °C (to 12.6 %)",
      ),
      source: laliberte,
      volume: apparent(
        "0.000000545486543455015",
        "0.000000172154929405038",
        "-0.0825850207323492",
        "0.00168822949783412",
        "4705.39822185746",
      ),
    },
    solubility: {
      rows: rowsOf({
        0: "7.0",
        10: "12.2",
        20: "21.8",
        25: "29.4",
        30: "39.7",
        35.4: "49.7",
        40: "48.8",
        60: "46.4",
        80: "45.1",
        100: "44.7",
      }),
      solids: [
        ["32", "sodium carbonate decahydrate"],
        ["35.4", "sodium carbonate heptahydrate"],
        ["100", "sodium carbonate monohydrate"],
      ],
      sources: [dictionary, hydratesOfSoda],
    },
    ions: { anion: "CO3", grows: true },
    enthalpy: "-1130.7",
    hazard: { limits: { H319: 10 }, source: soda },
    additiveLimits: [
      { item: "sodium carbonate after drying", least: "99.0", unit: "%", source: sodaMonograph },
      { item: "loss on drying, anhydrous", most: "2", unit: "%", source: sodaMonograph },
      { item: "loss on drying, monohydrate", most: "15", unit: "%", source: sodaMonograph },
      { item: "loss on drying, decahydrate", least: "55", most: "65", unit: "%", source: sodaMonograph },
      { item: "lead", most: "2", unit: "mg/kg", source: sodaMonograph },
    ],
    foodLimits: [{ item: "sodium carbonate in pastas and noodles", most: "10000", unit: "mg/kg", source: noodleCaps }],
    kansui: "named",
    sources: [endPoints],
  },
  K2CO3: {
    name: "potassium carbonate",
    kind: "carbonate",
    equivalentsM: 2,
    equivalentsP: 1,
    additive: "501(i)",
    hydrates: { "K2CO3.1.5H2O": "potassium carbonate sesquihydrate" },
    products: [
      {
        key: "potassium-carbonate",
        of: "K2CO3",
        aliases: [],
        names: [
          {
            source: additiveList,
            waterNotSaid: true,
            names: namesIn("Kaliumcarbonat, 炭酸カリウム, 碳酸钾, 钾碱, 탄산칼륨"),
          },
          { source: additiveNumbers, waterNotSaid: true, names: ["E 501(i)", "INS 501(i)"] },
          {
            source: usage,
            waterNotSaid: true,
            names: namesIn(
              "salt of tartar, carbonate of potash, Kaliumkarbonat, carbonato di potassio, carbonato potásico, carbonato de potasio, carbonate de potassium, carbonate de potasse, 炭酸カリ",
            ),
          },
        ],
      },
      {
        key: "potassium-carbonate-sesquihydrate",
        of: "K2CO3.1.5H2O",
        aliases: [],
        names: [{ source: usage, names: ["potassium carbonate hydrate"] }],
      },
    ],
    volume: {
      temperature: ["5", "60"],
      strongest: "50",
      doubt: doubt(
        { 0: "0.03", 2: "0.05", 5: "0.1", 12: "0.13", 18: "0.18", 28: "0.28", 40: "0.34", 44: "0.36", 50: "0.45" },
        `${handbook} (to 50 %), which lies above it`,
        "measured points (to 11 %)",
      ),
      thin: {
        below: "20",
        text: "the density of potassium carbonate solutions was fitted from 20 to 60 °C; below that the fit is carried on, and at 5, 10 and 15 °C it lies within 0.07 % of measured points up to 6.5 % by mass",
      },
      source: goncalvesKestin,
      volume: potassiumCarbonateVolume,
    },
    solubility: {
      rows: rowsOf({
        0: "105.5",
        10: "108.0",
        20: "110.5",
        30: "113.7",
        40: "116.9",
        60: "125.7",
        80: "139.2",
        100: "155.7",
      }),
      solids: [["100", "potassium carbonate sesquihydrate"]],
      sources: [
        dictionary,
        {
          cite: "Hazardous Substances Data Bank, potassium carbonate, the lower of two figures taken",
          standing: "copy",
        },
      ],
    },
    ions: { anion: "CO3", grows: false },
    enthalpy: "-1151.0",
    hazard: { limits: irritant, source: potash },
    additiveLimits: [
      { item: "potassium carbonate after drying", least: "99.0", unit: "%", source: potashMonograph },
      { item: "loss on drying, hydrated", most: "18", unit: "%", source: potashMonograph },
    ],
    foodLimits: [
      { item: "potassium carbonate in pastas and noodles", most: "11000", unit: "mg/kg", source: noodleCaps },
    ],
    kansui: "named",
    sources: [endPoints],
  },
  NaHCO3: {
    name: "sodium bicarbonate",
    kind: "bicarbonate",
    equivalentsM: 1,
    equivalentsP: 0,
    additive: "500(ii)",
    hydrates: { "Na2CO3.NaHCO3.2H2O": "sodium sesquicarbonate" },
    products: [
      {
        key: "sodium-bicarbonate",
        of: "NaHCO3",
        aliases: ["baking soda", "bicarbonate of soda"],
        names: [
          {
            source: additiveList,
            names: ["sodium hydrogen carbonate", "sodium acid carbonate", "bicarbonate de soude"],
          },
          {
            source: additiveList,
            names: namesIn("doppeltkohlensaures Natron, bicarbonate alimentaire, 炭酸水素ナトリウム, 重曹"),
          },
          { source: additiveList, names: namesIn("小苏打, 碳酸氢钠, 梳打粉, 탄산수소나트륨") },
          { source: additiveNumbers, names: ["E 500(ii)", "INS 500(ii)"] },
          {
            source: usage,
            names: namesIn("bicarb, bread soda, cooking soda, Speisenatron, Speisesoda, Backsoda, sel de Vichy"),
          },
          { source: usage, names: namesIn("重炭酸ソーダ, ベーキングソーダ, 식소다, 식용소다, 베이킹소다, 중조") },
        ],
      },
      {
        key: "sodium-sesquicarbonate",
        of: "Na2CO3.NaHCO3.2H2O",
        aliases: [],
        names: [
          { source: federal, names: ["trona"] },
          { source: additiveList, names: ["セスキ炭酸ナトリウム"] },
          { source: additiveNumbers, names: ["E 500(iii)", "INS 500(iii)"] },
          { source: usage, names: ["セスキ"] },
        ],
      },
      { key: "baked-soda", name: "baked baking soda", of: "Na2CO3", baked: true, aliases: ["baked soda"], names: [] },
    ],
    volume: {
      temperature: ["0", "100"],
      strongest: "12.6",
      doubt: doubt({ 0: "0.03", 4.5: "0.11", 5.8: "0.17" }, `${handbook} (to 5.5 %)`, "measured points (to 8.3 %)"),
      source: laliberte,
      volume: apparent(
        "0.0377378060615898",
        "0.00710029652458366",
        "0.0735733388535116",
        "0.00168369765511221",
        "3291.38382252025",
      ),
    },
    solubility: {
      rows: rowsOf({ 0: "6.9", 10: "8.2", 20: "9.6", 25: "10.4", 30: "11.1", 40: "12.7", 60: "16.4" }),
      solids: [["60", "sodium bicarbonate"]],
      sources: [dictionary],
    },
    ions: { anion: "HCO3", grows: true },
    enthalpy: "-950.8",
    hazard: { limits: {}, source: notClassified },
    additiveLimits: [
      { item: "sodium hydrogen carbonate after drying", least: "99.0", unit: "%", source: bicarbonateMonograph },
      { item: "loss on drying", most: "0.25", unit: "%", source: bicarbonateMonograph },
    ],
    foodLimits: "not known",
    kansui: "named",
    sources: [endPoints],
  },
  KHCO3: {
    name: "potassium bicarbonate",
    kind: "bicarbonate",
    equivalentsM: 1,
    equivalentsP: 0,
    additive: "501(ii)",
    hydrates: {},
    products: [
      {
        key: "potassium-bicarbonate",
        of: "KHCO3",
        aliases: [],
        names: [
          { source: additiveNumbers, names: ["E 501(ii)", "INS 501(ii)"] },
          { source: additiveList, names: ["potassium hydrogen carbonate"] },
        ],
      },
    ],
    volume: {
      temperature: ["5", "95"],
      strongest: "22",
      doubt: doubt(
        { 0: "0.03", 5: "0.07", 16: "0.09", 20: "0.1", 22: "0.19" },
        `${handbook} (to 22 %)`,
        "measured points (to 9.5 %)",
      ),
      source: laliberte,
      volume: apparent(
        "0.0458479253730966",
        "0.0749127808255568",
        "0.505766905030703",
        "0.00643951863958203",
        "3163.65175558093",
      ),
    },
    solubility: {
      rows: rowsOf({ 0: "22.5", 10: "27.4", 20: "33.7", 30: "39.9", 40: "47.5", 60: "65.6" }),
      solids: [["60", "potassium bicarbonate"]],
      sources: [solubilityHandbooks],
    },
    ions: { anion: "HCO3", grows: true },
    enthalpy: "-963.2",
    hazard: { limits: {}, source: notClassified },
    additiveLimits: [
      {
        item: "potassium hydrogen carbonate after drying",
        least: "99.5",
        most: "101.5",
        unit: "%",
        source: pharmacopoeia,
      },
    ],
    foodLimits: "not known",
    kansui: "not named",
    sources: [endPoints],
  },
} as const satisfies Salts;
