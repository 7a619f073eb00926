import type { Source } from "../figure/source.ts";
import type { DecimalText } from "../number/decimal.ts";
import type { SpeciesName } from "./species.ts";

/** How much of a salt water can hold, by temperature. */
export interface SolubilityTable {
  /** °C and g of the anhydrous salt in 100 g of water */
  readonly rows: readonly (readonly [DecimalText, DecimalText])[];
  /** What crystallises, by the temperature up to which it does. */
  readonly solids: readonly (readonly [DecimalText, string])[];
  readonly sources: readonly Source[];
}

const dictionary: Source = {
  cite: "A. M. Comey and D. A. Hahn, A Dictionary of Chemical Solubilities, 1921, and A. Seidell, Solubilities of Inorganic Compounds, 3rd ed.",
  standing: "copy",
};
const saltInstitute: Source = { cite: "Salt Institute, chemical properties of salt", standing: "copy" };
const remembered: Source = { cite: "handbook solubility tables", standing: "memory" };
const hydratesOfSoda: Source = {
  cite: "transition of the hydrates of sodium carbonate at 32.0 and 35.4 °C",
  standing: "copy",
};

/** The salts whose solubility is known here; the diphosphates and the triphosphate have no table. */
export const solubilityTables: Readonly<Partial<Record<SpeciesName, SolubilityTable>>> = {
  Na2CO3: {
    rows: [
      ["0", "7.0"],
      ["10", "12.2"],
      ["20", "21.8"],
      ["25", "29.4"],
      ["30", "39.7"],
      ["35.4", "49.7"],
      ["40", "48.8"],
      ["60", "46.4"],
      ["80", "45.1"],
      ["100", "44.7"],
    ],
    solids: [
      ["32", "sodium carbonate decahydrate"],
      ["35.4", "sodium carbonate heptahydrate"],
      ["100", "sodium carbonate monohydrate"],
    ],
    sources: [dictionary, hydratesOfSoda],
  },
  K2CO3: {
    rows: [
      ["0", "105.5"],
      ["10", "108.0"],
      ["20", "110.5"],
      ["30", "113.7"],
      ["40", "116.9"],
      ["60", "125.7"],
      ["80", "139.2"],
      ["100", "155.7"],
    ],
    solids: [["100", "potassium carbonate sesquihydrate"]],
    sources: [
      dictionary,
      { cite: "Hazardous Substances Data Bank, potassium carbonate, the lower of two figures taken", standing: "copy" },
    ],
  },
  NaHCO3: {
    rows: [
      ["0", "6.9"],
      ["10", "8.2"],
      ["20", "9.6"],
      ["25", "10.4"],
      ["30", "11.1"],
      ["40", "12.7"],
      ["60", "16.4"],
    ],
    solids: [["60", "sodium bicarbonate"]],
    sources: [dictionary],
  },
  KHCO3: {
    rows: [
      ["0", "22.5"],
      ["10", "27.4"],
      ["20", "33.7"],
      ["30", "39.9"],
      ["40", "47.5"],
      ["60", "65.6"],
    ],
    solids: [["60", "potassium bicarbonate"]],
    sources: [remembered],
  },
  NaOH: {
    rows: [
      ["10", "98"],
      ["20", "109"],
      ["30", "119"],
      ["40", "129"],
    ],
    solids: [["40", "sodium hydroxide monohydrate"]],
    sources: [remembered],
  },
  KOH: {
    rows: [
      ["0", "95.7"],
      ["10", "103"],
      ["20", "112"],
      ["30", "126"],
      ["40", "134"],
    ],
    solids: [["40", "potassium hydroxide dihydrate"]],
    sources: [remembered],
  },
  Na3PO4: {
    rows: [
      ["0", "4.5"],
      ["10", "8.2"],
      ["20", "12.1"],
      ["30", "16.3"],
      ["40", "20.2"],
      ["60", "29.9"],
    ],
    solids: [["60", "trisodium phosphate dodecahydrate"]],
    sources: [remembered],
  },
  Na2HPO4: {
    rows: [
      ["0", "1.68"],
      ["10", "3.53"],
      ["20", "7.83"],
      ["30", "22.0"],
      ["40", "55.3"],
    ],
    solids: [
      ["35", "disodium hydrogen phosphate dodecahydrate"],
      ["40", "disodium hydrogen phosphate heptahydrate"],
    ],
    sources: [remembered],
  },
  NaH2PO4: {
    rows: [
      ["0", "56.5"],
      ["10", "69.8"],
      ["20", "86.9"],
      ["30", "107"],
      ["40", "133"],
    ],
    solids: [["40", "sodium dihydrogen phosphate dihydrate"]],
    sources: [remembered],
  },
  KH2PO4: {
    rows: [
      ["0", "14.8"],
      ["10", "18.3"],
      ["20", "22.6"],
      ["30", "28.0"],
      ["40", "35.5"],
    ],
    solids: [["40", "potassium dihydrogen phosphate"]],
    sources: [remembered],
  },
  NaCl: {
    rows: [
      ["0", "35.67"],
      ["10", "35.80"],
      ["15.56", "35.86"],
      ["26.67", "36.09"],
      ["37.78", "36.39"],
      ["65.56", "37.38"],
      ["79.44", "38.16"],
      ["100", "39.12"],
    ],
    solids: [["100", "sodium chloride"]],
    sources: [saltInstitute],
  },
  KCl: {
    rows: [
      ["0", "28.0"],
      ["10", "31.2"],
      ["20", "34.2"],
      ["30", "37.2"],
      ["40", "40.1"],
      ["60", "45.8"],
    ],
    solids: [["60", "potassium chloride"]],
    sources: [remembered],
  },
};
