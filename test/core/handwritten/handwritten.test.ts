import { amendedText, answeredLine, type Handwritten, readHandwritten } from "@noodlewright/core/spec";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { formulaOf } from "#core/formula/formula.ts";

/** A formula in one style, and what has to come of it: `part name amount` for every line, in the order of the text. */
interface Sample {
  readonly text: string;
  readonly read: readonly string[];
  /** Number of the line (0 for none) and words of the question. */
  readonly asks?: readonly string[];
  readonly leftOut?: readonly string[];
  readonly remarks?: readonly string[];
  readonly prices?: Readonly<Record<string, string>>;
}

const anyWheat = "may be any wheat flour";
const plain = ["flours bread flour 1000 g", "water water 380 g", "salt salt 10 g"];

/** The plain formula, written in several ways. */
function each(style: string, texts: readonly string[]) {
  return Object.fromEntries(texts.map((text) => [`${style}${text}`, { text, read: plain }]));
}

/** Ways to write the plain formula, of which nothing is told. */
const plainly: Readonly<Record<string, string>> = {
  dashes: "bread flour - 1000g\nwater – 380g\nsalt — 10g",
  "leading dots": "bread flour ........ 1000 g\nwater……380g\nsalt = 10g",
  "boxes to tick": "[x] bread flour 1000 g\n[ ] water 380 grams\n✓ salt 10 gr.",
  "a numbered list": "1. 1000 g bread flour\n2. 380 g water\n3) salt 10 g",
  "a name on one line, its amount on the next": "bread flour\n1000 g\nwater\n380 g\nsalt\n10 g",
  "comma-separated values with a unit in its own column":
    "Ingredient,Amount,Unit\nbread flour,1000,g\nwater,380,g\nsalt,10,g",
  "a table with upright lines, grams and per cent":
    "| Ingredient | Grams | % |\n|---|---|---|\n| bread flour | 1000 | 100 |\n| water | 380 | 38 |\n| salt | 10 | 1 |",
  "full-width letters and digits": "ｂｒｅａｄ　ｆｌｏｕｒ　１０００ｇ\nｗａｔｅｒ　３８０ｇ\nｓａｌｔ　１０ｇ",
  "fixed and narrow spaces": "bread flour\u00A01\u202F000\u00A0g\nwater\u00A0380\u2009g\nsalt\u00A010\u00A0g",
  "shares of one, and not of a hundred, beside the grams":
    "Ingredient\tg\t%\nbread flour\t1000\t1\nwater\t380\t0.38\nsalt\t10\t0.01",
  "protein beside moisture, as a certificate tells them, whose basis is not told":
    "Ingredient\tg\tProtein %\tMoisture %\nbread flour\t1000\t12.3\t13.6\nwater\t380\t\t\nsalt\t10\t\t",
  "words behind the amounts, without a head": "bread flour\t1000 g\tsifted twice\nwater\t380 g\tcold\nsalt\t10 g\t",
};

const samples: Readonly<Record<string, Sample>> = {
  ...Object.fromEntries(Object.entries(plainly).map(([what, text]) => [what, { text, read: plain }])),
  "a flour without an amount beside one in %, which is the rest": {
    text: "semolina 30 %\nbread flour\nwater 36 %",
    read: ["flours semolina 30 %", "flours bread flour rest", "water water 36 %"],
  },
  "gluten in % beside a flour without an amount, which may be 98 or 100": {
    text: "gluten 2 %\nbread flour\nwater 36 %",
    read: ["flours gluten 2 %", "water water 36 %"],
    asks: ["2 no amount"],
  },
  "a whole number or a decimal one, with both told": {
    text: "bread flour 2,250 g\nwater 380 g\nsalt 10 g",
    read: plain.slice(1),
    asks: ["1 write 2250 or 2.25,"],
  },
  "a comma between thousands of grams beside a decimal comma, and a point beside a decimal point": {
    text: "bread flour 1,000 g\nwater 38,5 %\nsalt 1 %",
    read: ["water water 38.5 %", "salt salt 1 %"],
    asks: ["1 write 1000 or 1,"],
  },
  "a point between thousands of grams beside a decimal point, and in numbers without a unit": {
    text: "bread flour 1.000 g\ncake flour 1.250\nsalt 10.5 g",
    read: ["salt salt 10.5 g"],
    asks: ["1 write 1000 or 1,", "2 write 1250 or 1.25,", "0 how much water"],
  },
  "kilograms with a decimal comma of three places": {
    text: "bread flour 1,000 kg\nwater 0,38 kg",
    read: ["flours bread flour 1.000 kg", "water water 0.38 kg"],
  },
  "water by the cup with the millilitres in brackets, on either side": {
    text: "bread flour 1000 g\nwater 2/3 cup (150 ml)\nwater 150 ml (2/3 cup)",
    read: ["flours bread flour 1000 g", "water water 299.4 g"],
    remarks: ["150 ml of water at 20 °C"],
  },
  "amounts behind one another without a comma": {
    text: "bread flour 1000 g\nwater 380 g\nsodium carbonate 6g potassium carbonate 4g\n3 g salt 7 g potato starch",
    read: [
      ...plain.slice(0, 2),
      "alkali sodium carbonate 6 g",
      "alkali potassium carbonate 4 g",
      "salt salt 3 g",
      "flours potato starch 7 g",
    ],
  },
  "a table without heads: per cent without a sign, then grams": {
    text: "Bread flour\t80\t800 g\nCake flour\t20\t200 g\nWater\t38\t380 g\nSalt\t1\t10 g\n(total\t139\t1390 g)",
    read: ["flours Bread flour 800 g", "flours Cake flour 200 g", ...plain.slice(1)],
  },
  "a table without heads, of which a number is no share": {
    text: "Bread flour\t100\t1000 g\nWater\t38\t380 g\nSalt\t7\t10 g",
    read: ["flours Bread flour 1000 g", ...plain.slice(1, 2)],
    asks: ["3 what is it of"],
  },
  ...each("one line, ", [
    "bread flour 1000 g, water 380 g, salt 10 g, makes 10",
    "bread flour 1000 g; water 380 g; salt 10 g; serves ten",
    "Dough: 1000 g bread flour,380 g water and 10 g salt",
    "Class noodle; bread flour 1000 g, sifted / water 380 g / salt 10 g / enough for ten",
    "bread flour, 1000 g, water 380 g, salt: 10 g",
    "For 1000 g of bread flour use 380 g water and 10 g salt.",
    "Take 1000 g bread flour, 380 g water, 10 g salt",
  ]),
  "a sentence with half as much of a second flour": {
    text: "Take 1 kg bread flour and half as much whole wheat flour, 500 g water, 10 g salt.",
    read: ["water water 500 g", "salt salt 10 g"],
    asks: ["1 names bread flour and whole wheat flour"],
  },
  "a sentence of the steps behind the last ingredient": {
    text: "Knead 500 g bread flour, 175 g water, 5 g sodium carbonate, 5 g salt. Rest for 30 minutes.",
    read: ["flours bread flour 500 g", "water water 175 g", "alkali sodium carbonate 5 g", "salt salt 5 g"],
  },
  "an ingredient with brackets behind the last comma": {
    text: "Take 500 g of bread flour, 175 g of water, 5 g of salt and 1 egg (50 g).",
    read: ["flours bread flour 500 g", "water water 175 g", "salt salt 5 g", "ingredients egg 50 g"],
  },
  "two sentences, with the last words about the water": {
    text: "Mix 500 g bread flour with 175 g water. Dissolve 5 g sodium carbonate and 5 g salt in the water.",
    read: ["flours bread flour 500 g", "water water 175 g", "alkali sodium carbonate 5 g", "salt salt 5 g"],
  },
  "whom it serves behind a full stop, and an abbreviation": {
    text: "Bread flour 1 kg, water 350 g, approx. 10 g salt, soda ash 10 g. Serves 8.",
    read: ["flours Bread flour 1 kg", "water water 350 g", "salt salt 10 g", "alkali soda ash 10 g"],
  },
  "a sentence that says again what the list has": {
    text: "bread flour 1000 g\nwater 380 g\nsalt 10 g\nIn a bowl mix 1000 g flour with 380 g water. Add 10 g salt.",
    read: plain,
    leftOut: ["4 a step with an amount", "4 a step with an amount"],
  },
  "amounts in words, in a line that is no title": {
    text: "You need one kilo of strong white flour, a third of a litre of water and ten grams of salt.",
    read: ["flours strong white flour 1 kg", "water water 332.7 g", "salt salt 10 g"],
    remarks: ["may be any wheat flour", "1/3 litre of water at 20 °C"],
  },
  "one line, with a protein and a measure that is open": {
    text: "bread flour 1 kg, protein 12 %, water 350 ml, a pinch of salt, kansui powder 12 g, makes 10",
    read: ["flours bread flour 1 kg", "water water 349.4 g"],
    asks: ["1 nobody can tell", "1 may be any mixture"],
    remarks: ["350 ml of water"],
  },
  "two amounts and no one name": {
    text: "bread flour 1000 g\nwater 380 g\nmy kansui powder of 1 kg, 12 g\n10 g salt",
    read: plain,
    asks: ["3 not in the catalogue", "3 are not the same"],
  },
  "comma-separated values with quotes": {
    text: '"flour, strong",1000 g\nwater,380 g\n"salt, fine",10 g',
    read: ["flours strong flour 1000 g", "water water 380 g", "salt salt 10 g"],
    remarks: [anyWheat],
  },
  "semicolons and decimal commas": {
    text: "Zutat;Menge\nWeizenmehl;1,5 kg\nWasser;0,55 kg\nSalz;15 g",
    read: ["flours Weizenmehl 1.5 kg", "water water 0.55 kg", "salt salt 15 g"],
    remarks: [anyWheat],
  },
  "commas between thousands, told by a decimal point elsewhere": {
    text: "bread flour 1,000 g\nwater 380.5 g",
    read: ["flours bread flour 1000 g", "water water 380.5 g"],
  },
  "points between thousands, told by a decimal comma elsewhere": {
    text: "bread flour 1.000 g\nwater 0,38 kg",
    read: ["flours bread flour 1000 g", "water water 0.38 kg"],
  },
  "a comma that may be either": {
    text: "bread flour 1,000 g\nwater 380 g",
    read: ["water water 380 g"],
    asks: ["1 whole number or a decimal one"],
  },
  "pounds, ounces and fractions": {
    text: "2½ lb bread flour\n1¼ lb water\n1/4 oz soda ash\n1 1/2 oz salt",
    read: ["flours bread flour 2 1/2 lb", "water water 1 1/4 lb", "alkali soda ash 1/4 oz", "salt salt 1 1/2 oz"],
  },
  "pounds with ounces": {
    text: "1 lb 4 oz bread flour\n7 oz water",
    read: ["flours bread flour 1 lb 4 oz", "water water 7 oz"],
  },
  "several packs, and sums": {
    text: "bread flour 2 × 1 kg\nwater: 500g + 250 g",
    read: ["flours bread flour 2 kg", "water water 750 g"],
  },
  "per cent of flour": {
    text: "Water: 38 %\nBread flour: 100 %\nSalt: 1 %\nPotassium carbonate: 0.5 %",
    read: ["water water 38 %", "flours Bread flour 100 %", "salt salt 1 %", "alkali Potassium carbonate 0.5 %"],
  },
  "per cent, two flours and a starch that make up the hundred": {
    text: "bread flour 90%\ntapioca starch 10%\negg white 5%\nwater 33%",
    read: ["flours bread flour 90 %", "flours tapioca starch 10 %", "ingredients egg white 5 %", "water water 33 %"],
  },
  "per cent, a starch beside the hundred": {
    text: "bread flour 100 percent\ntapioca starch 10 percent\nwater 38 percent",
    read: ["flours bread flour 100 %", "ingredients tapioca starch 10 %", "water water 38 %"],
  },
  "per cent of the dough": {
    text: "bread flour 62 %\nwater 36.4 %\nsalt 0.6 %\nsodium carbonate 1 %",
    read: ["flours bread flour 62 g", "water water 36.4 g", "salt salt 0.6 g", "alkali sodium carbonate 1 g"],
    remarks: ["they are of the dough"],
  },
  "per cent that do not make up a hundred": {
    text: "bread flour 70 %\nwater 35 %",
    read: ["water water 35 %"],
    asks: ["1 make up 70 %"],
  },
  "flour by weight, the rest in per cent": {
    text: "1kg bread flour\n38% water\n1% salt\n0.8% soda ash",
    read: ["flours bread flour 1 kg", "water water 38 %", "salt salt 1 %", "alkali soda ash 0.8 %"],
  },
  "flours in per cent, water by weight": {
    text: "bread flour 100 %\nwater 380 g",
    read: ["flours bread flour 100 %"],
    asks: ["2 while the flours are in %"],
  },
  "both grams and per cent": {
    text: "Bread flour 1000 g (100 %)\nWater 38% 380 g\nSodium carbonate, 1% = 10 g",
    read: ["flours Bread flour 1000 g", "water water 380 g", "alkali Sodium carbonate 10 g"],
  },
  "bare numbers": {
    text: "flour 1000\nwater 380\nsalt 10",
    read: ["flours flour 1000 g", "water water 380 g", "salt salt 10 g"],
    remarks: ["numbers without a unit are taken as grams", "may be any wheat flour"],
  },
  "a bare number beside kilograms": {
    text: "bread flour 1 kg\nwater 0.38 kg\nsalt 10",
    read: ["flours bread flour 1 kg", "water water 0.38 kg"],
    asks: ["3 grams, or what?"],
  },
  parts: {
    text: "10 parts bread flour\n3.6 parts water",
    read: ["flours bread flour 10 g", "water water 3.6 g"],
    remarks: ["numbers without a unit are taken as grams"],
  },
  Japanese: {
    text: "小麦粉 1000g（たんぱく質 12 %）\n水　380ｇ\n炭酸ナトリウム 6グラム\n食塩 10g",
    read: ["flours 小麦粉 1000 g", "water water 380 g", "alkali 炭酸ナトリウム 6 g", "salt salt 10 g"],
  },
  "Chinese without spaces": {
    text: "面粉500克\n水190克\n盐5克",
    read: ["flours 面粉 500 g", "water water 190 g", "salt salt 5 g"],
    remarks: [anyWheat],
  },
  "a handout with headings, steps and a total": {
    text: "# Harbour school noodles\nServes 4\nFor the dough:\n- 400 g plain flour\n- 1 egg (50 g)\n- 140 ml water\nTotal 590 g\nFor dusting:\n- 20 g potato starch\nDirections\n1. Mix 400 g flour with 140 ml water.",
    read: ["flours plain flour 400 g", "ingredients egg 50 g", "water water 139.7 g", "dusting potato starch 20 g"],
    leftOut: ["11 a step with an amount"],
    remarks: ["140 ml of water at 20 °C"],
  },
  "what is no ingredient known here, and what does not belong in a noodle": {
    text: "bread flour 1 kg\nwater 380 g\nturmeric 3 g\nbaking powder 10 g\n25 g",
    read: ["flours bread flour 1 kg", "water water 380 g"],
    leftOut: ["3 not in the catalogue", "4 it is no noodle alkali", "5 without a name"],
  },
  "water twice": {
    text: "bread flour 1 kg\nwater 300 g\nice 80 g",
    read: ["flours bread flour 1 kg", "water water 380 g"],
    remarks: ["300 g and 80 g together"],
  },
  "a dose beyond belief": {
    text: "bread flour 1 kg\nwater 350 g\nsalt 120 g",
    read: ["flours bread flour 1 kg", "water water 350 g", "salt salt 120 g"],
    asks: ["3 12.00 % of flour"],
  },
  nothing: {
    text: " \n",
    read: [],
    asks: ["0 which flour", "0 how much water"],
  },
  "a column of what each row costs, which says for how much no price is": {
    text: "Ingredient,g,EUR\nbread flour,1000,0.94\nwater,380,0\nsalt,10,0.01",
    read: plain,
    remarks: ['"EUR" is left out: it does not say for how much'],
  },
  "a price for a kilogram, before the weights": {
    text: "Ingredient;Price EUR/kg;g\nbread flour;0,94;1000\nwater;0;380\nsalt;0,60;10",
    read: plain,
    prices: { "bread flour": "0.94 EUR/kg", salt: "0.60 EUR/kg" },
    remarks: ['prices are taken from the column "Price EUR/kg"'],
  },
  "a price for a bag, whose weight stands in the head, beside another column of money": {
    text: "Ingredient\tkg\tPrice per 25 kg bag (€)\tCost\nbread flour\t1\t23.50\t0.94\nwater\t0.38\t\t",
    read: ["flours bread flour 1 kg", "water water 0.38 kg"],
    prices: { "bread flour": "23.50 EUR per 25 kg" },
    remarks: ['prices are taken from the column "Price per 25 kg bag (€)"', '"Cost" is left out'],
  },
  "a price for a bag, whose weight stands in a column": {
    text: "Ingredient\tg\tBag kg\tEUR per bag\nbread flour\t1000\t25\t23.50\nwater\t380\t\t\nsalt\t10\t1\t0.6",
    read: plain,
    prices: { "bread flour": "23.50 EUR per 25 kg", salt: "0.6 EUR per 1 kg" },
    remarks: ['column "EUR per bag"'],
  },
  "prices in lines, for a kilogram and for a pack": {
    text: "bread flour 1000 g, 1.20 EUR/kg\n380 g water 0.01 EUR/kg\n10 g salt at 0,60 €/kg\nsoda ash 5 g (7.80 EUR per 500 g)",
    read: ["flours bread flour 1000 g", ...plain.slice(1), "alkali soda ash 5 g"],
    prices: { "bread flour": "1.20 EUR/kg", salt: "0.60 EUR/kg", "soda ash": "7.80 EUR per 500 g" },
    remarks: ['the price "0.01 EUR/kg" is left out'],
  },
  "prices in a sentence, of which one has a sign of several currencies and one no weight": {
    text: "Take 1000 g bread flour at 1.20 EUR/kg, 380 g water, 5 g soda ash at $3/kg and 10 g salt for 1 EUR.",
    read: ["flours bread flour 1000 g", "water water 380 g", "alkali soda ash 5 g", "salt salt 10 g"],
    prices: { "bread flour": "1.20 EUR/kg" },
    remarks: ['the price "$3/kg" is left out', 'the price "1 EUR" is left out'],
  },
  "prices in the cells, of which one has a sign of several currencies": {
    text: "Ingredient\tg\tPrice\nbread flour\t1000\t$0.94/lb\nwater\t380\t\nsalt\t10\t0.50 USD/kg",
    read: plain,
    prices: { salt: "0.50 USD/kg" },
    remarks: ['column "Price", but for line 2'],
  },
  "a price in yen for a kilogram": {
    text: "材料\t分量(g)\t単価(円/kg)\n強力粉\t1000\t280\n水\t380\t\n食塩\t10\t100",
    read: ["flours 強力粉 1000 g", ...plain.slice(1)],
    prices: { 強力粉: "280 JPY/kg", salt: "100 JPY/kg" },
    remarks: ["単価"],
  },
  "money in rows without a head": {
    text: "bread flour\t1000 g\t€ 0.94\nwater\t380 g\t€ 0.00\nsalt\t10 g\t€0.01",
    read: plain,
    remarks: ["money in the rows is left out"],
  },
  "kilograms or grams, beside nothing": {
    text: "Ingredient\tkg\tg\nbread flour\t1\t0\nwater\t0\t380\nsalt\t\t10",
    read: ["flours bread flour 1 kg", ...plain.slice(1)],
  },
  "kilograms or grams, beside a dash": {
    text: "Ingredient\tkg\tg\nbread flour\t1\t–\nwater\tn/a\t380\nsalt\t0\t10",
    read: ["flours bread flour 1 kg", ...plain.slice(1)],
  },
  "kilograms and grams that are the same, and that are not": {
    text: "Ingredient\tkg\tg\nbread flour\t1\t1000\nwater\t0.38\t380\nsalt\t1\t10",
    read: ["flours bread flour 1 kg", "water water 0.38 kg"],
    asks: ['4 "1 kg" and "10 g" are not the same'],
  },
  "pounds and ounces in two columns": {
    text: "Ingredient\tlb\toz\nbread flour\t2\t3\nwater\t\t12.5",
    read: ["flours bread flour 2 lb 3 oz", "water water 12.5 oz"],
  },
  "per cents that are rounded beside the grams": {
    text: "Ingredient\tg\t%\nbread flour\t667\t66.7\nrye flour\t333\t33.3\nwater\t380\t38\nsalt\t10\t1",
    read: ["flours bread flour 667 g", "flours rye flour 333 g", ...plain.slice(1)],
  },
  "batches side by side by what they make": {
    text: "Ingredient\t1 kg\t5 kg\t10 kg\nbread flour\t1000\t5000\t10000\nwater\t380\t1900\t3800\nsalt\t10\t50\t100",
    read: plain,
    remarks: ['of the columns "1 kg", "5 kg", "10 kg" only "1 kg" is read', "numbers without a unit"],
  },
  "a small batch and a large one": {
    text: "Ingredient\tSmall batch g\tLarge batch g\nbread flour\t1000\t5000\nwater\t380\t1900\nsalt\t10\t50",
    read: plain,
    remarks: ['only "Small batch g" is read'],
  },
  "batches below a head of two rows, with a total": {
    text: "\tSmall batch\t\tLarge batch\t\nIngredient\tg\t%\tg\t%\nbread flour\t1000\t100\t5000\t100\nwater\t380\t38\t1900\t38\nsalt\t10\t1\t50\t1\nTotal\t1390\t\t6950",
    read: plain,
    remarks: ['only "Small batch g", "Small batch %" are read'],
  },
  "batches by number, the corner of the table empty": {
    text: "\tBatch 1\tBatch 2\nbread flour\t1000\t2000\nwater\t380\t760\nsalt\t10\t20",
    read: plain,
    remarks: ['only "Batch 1" is read', "numbers without a unit"],
  },
  "the line of a spreadsheet that says what parts the cells": {
    text: "sep=;\nIngredient;g;Notes\nbread flour;1000;mill | silo | sack\nwater;380;tap | cold\nsalt;10;sea | fine",
    read: plain,
    remarks: ['"Notes" is kept as notes'],
  },
  "shares of one under a head of per cents": {
    text: "Ingredient\t%\nbread flour\t0.8\nrye flour\t0.2\nwater\t0.38\nsalt\t0.01",
    read: ["flours bread flour 0.8 %", "salt salt 0.01 %"],
    asks: ["3 the shares of the flours make up 1, and not 100", "4 is 38 % meant?"],
  },
  "water as a share of one beside shares with their sign": {
    text: "bread flour 100 %\nwater 0.36\nsalt 1 %",
    read: ["flours bread flour 100 %", "salt salt 1 %"],
    asks: ["2 is 36 % meant?"],
    remarks: ["taken as %: as the others are"],
  },
  "water as a share of one beside flour by weight": {
    text: "Ingredient\tg\t%\nbread flour\t1000\t\nwater\t\t0.38\nsalt\t10\t",
    read: [plain[0] ?? "", plain[2] ?? ""],
    asks: ["3 is 38 % meant?"],
  },
  "a title, a head in the third row, columns of no use, and a total without a word": {
    text: "Evening noodle\t\t\t\n\t\t\t\nNo\tIngredient\tg\tProtein %\tkcal\n1\tbread flour\t1000\t12\t340\n2\twater\t380\t\t0\n3\tsalt\t10\t\t0\n\t\t1390\t\t",
    read: plain,
    leftOut: ["7 numbers without a name"],
    remarks: ['"kcal" is left out'],
  },
  "an empty cell before the name": {
    text: "Group\tIngredient\tg\nFlours\tbread flour\t1000\n\twater\t380\n\tsalt\t10",
    read: plain,
    remarks: ['"Group" is kept as notes'],
  },
  "two formulas below one another": {
    text: "Ingredient\tg\nbread flour\t1000\nwater\t380\nsalt\t10\n\nIngredient\tg\nrye flour\t500\nwater\t200",
    read: plain,
    leftOut: ["7 a second table", "8 a second table"],
  },
  "two formulas beside one another": {
    text: "Ingredient\tg\t\tIngredient\tg\nbread flour\t1000\t\trye flour\t500\nwater\t380\t\twater\t200\nsalt\t10\t\t\t",
    read: plain,
    leftOut: ["2 a second table", "3 a second table"],
  },
  "one formula in two tables beside one another": {
    text: "Dry\tg\t\tWet\tg\nbread flour\t1000\t\twater\t380\nsalt\t10\t\twhole egg\t50",
    read: [plain[0] ?? "", plain[1] ?? "", plain[2] ?? "", "ingredients whole egg 50 g"],
  },
  "what dusts in a table of its own": {
    text: "Dough\tg\nbread flour\t1000\nwater\t380\nDusting\tg\ncornstarch\t30",
    read: [...plain.slice(0, 2), "dusting cornstarch 30 g"],
  },
  "cells that hold less than nothing, and the sign of an error": {
    text: "Ingredient\tg\nbread flour\t1000\nwater\t380\nsodium carbonate\t-6\nsalt\t#REF!",
    read: plain.slice(0, 2),
    asks: ["5 no amount stands there"],
    leftOut: ["4 below nothing"],
  },
  "separators at the ends, and empty rows": {
    text: "Ingredient;g;;;\nbread flour;1.000,5;;;\n;;;;\nwater;380,25;;;\nsalt;10;;;\nSumme;1.390,75",
    read: ["flours bread flour 1000.5 g", "water water 380.25 g", "salt salt 10 g"],
  },
  ...each("amounts before the names: ", [
    "Grams,Ingredient\n1000,bread flour\n380,water\n10,salt",
    "g,Ingredient\n1000,bread flour\n380,water\n10,salt",
    "Qty,Unit,Ingredient\n1000,g,bread flour\n380,g,water\n10,g,salt",
  ]),
  "kinds above their rows, sums of some rows, and the bowls in a row of their own": {
    text: "Ingredient,g\nFlour,\nbread flour,900\nwhole wheat flour,100\nFlour total,1000\nLiquid,\nwater,380\nDough,1380\nYield bowls,10\nNumber of bowls,10",
    read: ["flours bread flour 900 g", "flours whole wheat flour 100 g", "water water 380 g"],
  },
  "per cents of the flour beside per cents of the dough": {
    text: "Ingredient\t% of flour\t% of dough\nbread flour\t100\t71.9\nwater\t38\t27.4\nsalt\t1\t0.7",
    read: ["flours bread flour 100 %", "water water 38 %", "salt salt 1 %"],
    remarks: ['only "% of flour" is read'],
  },
};

function linesOf({ understood }: Handwritten): readonly string[] {
  return understood.map(({ part, name, amount }) => `${part} ${name} ${amount}`);
}

function said({ remarks, understood }: Handwritten): string {
  return [...remarks, ...understood.flatMap((line) => line.remarks)].join("\n");
}

/** A line's number, 0 for none, and words of what is said of it. */
const apart = (said: readonly string[]) =>
  said.map((one) => {
    const blank = one.indexOf(" ");
    return { line: Number(one.slice(0, blank)), words: expect.stringContaining(one.slice(blank + 1)) };
  });

function expectRead({ text, read, asks = [], leftOut = [], remarks = [], prices }: Sample): void {
  const result = readHandwritten(text);
  expect(linesOf(result)).toEqual(read);
  expect(result.questions.map(({ line = 0, ask }) => ({ line, words: ask }))).toEqual(apart(asks));
  expect(result.notUnderstood.map(({ line, why }) => ({ line, words: why }))).toEqual(apart(leftOut));
  for (const remark of remarks) expect(said(result)).toContain(remark);
  if (remarks.length === 0) expect(said(result)).toBe("");
  expect(result.spec["prices"]).toEqual(prices);
  expect(parse(result.text)).toEqual(result.spec);
  expect(formulaOf(result.spec).ok).toBe(asks.length === 0);
  for (const { text: line } of result.notUnderstood) expect(result.text).toContain(`: ${line}: `);
}

test.each(Object.entries(samples))("a formula with %s is read as it is meant, and becomes a spec", (_, sample) => {
  expectRead(sample);
});

describe("what stands beside an ingredient", () => {
  const flourOf = (text: string): unknown => (readHandwritten(`${text}\nwater 380 g`).spec["flours"] as unknown[])[0];

  test("is the protein of the flour as sold, unless a basis is named", () => {
    expect(flourOf("bread flour (12 % protein) 1 kg")).toEqual({
      name: "bread flour",
      amount: "1 kg",
      figures: { protein: "12 %", proteinBasis: "as is" },
    });
    expect(flourOf("bread flour, 11.8 % protein at 14 % mb, 13.2 % moisture, ash 0.45 %: 10 kg")).toEqual({
      name: "bread flour",
      amount: "10 kg",
      figures: { protein: "11.8 %", proteinBasis: "14 % mb", moisture: "13.2 %", ash: "0.45 %" },
    });
  });

  test("is a label where it counts for a serving, and nothing where the serving is not told", () => {
    expect(flourOf("bread flour, 11.8 % protein, 13.2 % moisture: 10 kg")).toEqual({
      name: "bread flour",
      amount: "10 kg",
      figures: { protein: "11.8 %", moisture: "13.2 %" },
    });
    expect(flourOf("strong flour (4 g protein per 30 g) 1 kg")).toMatchObject({
      figures: { label: { protein: "4 g", serving: "30 g" } },
    });
    expect(flourOf("bread flour, 12 g protein per 100 g, 1 kg")).toMatchObject({
      figures: { protein: "12 %", proteinBasis: "as is" },
    });
    expect(flourOf("bread flour (4 g protein) 1 kg")).toEqual({ name: "bread flour", amount: "1 kg" });
    expect(said(readHandwritten("bread flour (4 g protein) 1 kg\nwater 380 g"))).toContain("in how many grams?");
  });

  test("makes a solution of water where the name says so, and no product out of parts that do not add up", () => {
    const { spec, questions } = readHandwritten(
      "bread flour 1 kg\nwater 340 g\nlye water (20 % K2CO3) 40 g\nkansui (20 % K2CO3) 4 g",
    );
    expect(spec["alkali"]).toEqual([
      { name: "lye water", amount: "40 g", figures: { composition: { K2CO3: "20 %", water: "rest" } } },
      { name: "kansui", amount: "4 g" },
    ]);
    expect(questions.map(({ line }) => line)).toEqual([4]);
  });
});

test("the title, the bowls and the steps are kept", () => {
  const { spec, yields } = readHandwritten(
    "Harbour class noodles\n200 bowls, 130 g raw each\nbread flour 10 kg\nwater 3.6 kg\nMethod\nMix 10 min.",
  );
  expect([spec["name"], spec["notes"], yields]).toEqual([
    "Harbour class noodles",
    "Mix 10 min.\n",
    { bowls: 200, rawWeight: "130 g" },
  ]);
});

test("the ratio in brackets is what a product is made of", () => {
  const { spec } = readHandwritten("bread flour 500 g\nwater 175 g\n8 g kansui (Na2CO3 60 / K2CO3 40)");
  const figures = { composition: { Na2CO3: "60 %", K2CO3: "40 %" } };
  expect(spec["alkali"]).toEqual([{ name: "kansui", amount: "8 g", figures }]);
});

describe("nothing of a formula is lost without a word", () => {
  const dough = "bread flour 1 kg\nwater 380 g";

  test.each(["Process: mix and rest", "Method:", "Steps", "process. mix"])(
    "below %j an ingredient with its amount stays one, and any other amount is listed",
    (heading) => {
      const { understood, notUnderstood, notes } = readHandwritten(
        `${dough}\n${heading}\nsodium carbonate 5 g\nsalt 5 g\nadd 3 g turmeric\nRest 30 min`,
      );
      expect(understood.slice(2).map(({ part, amount }) => `${part} ${amount}`)).toEqual(["alkali 5 g", "salt 5 g"]);
      expect(notUnderstood.map(({ line }) => line)).toEqual([6]);
      const opening = heading.includes("mix") ? [heading] : [];
      expect(notes.map(({ text }) => text)).toEqual([...opening, "add 3 g turmeric", "Rest 30 min"]);
    },
  );

  test("an ingredient behind the word for the steps is read", () => {
    const { understood } = readHandwritten(`${dough}\nProcess: salt 5 g`);
    expect(understood.at(-1)).toMatchObject({ part: "salt", amount: "5 g" });
  });

  test.each([
    "one egg",
    "two eggs",
    "an egg",
    "pinch of salt",
    "salt: pinch",
    "some salt",
    "a little salt",
    "salt, a pinch",
  ])("%j is asked about", (line) => {
    const { questions, notes } = readHandwritten(`${dough}\n${line}`);
    expect(questions).toMatchObject([{ line: 3, about: "amount" }]);
    expect(notes).toEqual([]);
  });

  test.each(["Beat in one egg at the end", "Method: brush with egg white", "Salt:"])(
    "%j names what is in no line of the formula, and is listed",
    (line) => {
      const { notUnderstood } = readHandwritten(`${dough}\n${line}`);
      expect(notUnderstood).toMatchObject([{ line: 3, text: line, why: expect.stringMatching(/names (?:egg|salt)/u) }]);
    },
  );

  test("a step that names what the formula has is a note, as it is written", () => {
    const steps = ["mix flour and water ... fold", "../30 min", "Two passes, then one more"];
    const { notUnderstood, notes, spec } = readHandwritten(`${dough}\nMethod\n${steps.join("\n")}`);
    expect(notUnderstood).toEqual([]);
    expect(notes).toEqual(steps.map((text, index) => ({ line: index + 4, text })));
    expect(spec["notes"]).toBe(`${steps.join("\n")}\n`);
  });
});

test.each([
  ["half a kilo", "1/2 kg"],
  ["a kilo and a half", "1 1/2 kg"],
  ["three quarters of a kilo", "3/4 kg"],
  ["two hundred and fifty grams", "250 g"],
  ["two thousand five hundred g", "2500 g"],
  ["twenty-five grams", "25 g"],
])("%s of flour is %s", (words, amount) => {
  expect(readHandwritten(`${words} of bread flour`).understood).toMatchObject([{ name: "bread flour", amount }]);
});

test.each(["half a dozen eggs", "six eggs", "6 eggs"])("%s are six", (eggs) => {
  expect(readHandwritten(eggs).questions[0]?.ask).toContain("6 without the shell");
});

test.each(["1 ½ lb", "1½ lb", "１ ½ lb", "1 and ½ lb", "one and a half lb"])("%s is one pound and a half", (amount) => {
  const { understood } = readHandwritten(`${amount} bread flour`);
  expect(understood).toMatchObject([{ part: "flours", name: "bread flour", amount: "1 1/2 lb" }]);
});

test.each([
  ["Grandma's lye noodles (serves 4)", "Grandma's lye noodles"],
  ["Lye noodles (makes 4 bowls)", "Lye noodles"],
  ["Lye noodles, 4 portions", "Lye noodles"],
  ["Noodle 4 for 4 people", "Noodle 4"],
  ["Lye noodles (for 4)", "Lye noodles"],
  ["Nudeln für 4 Personen", "Nudeln"],
  ["Nouilles (4 pers.)", "Nouilles"],
  ["Fideos para 4 personas", "Fideos"],
  ["Für 4 Portionen à 140 g", "Noodles"],
  ["Ergibt 4 Portionen", "Noodles"],
  ["4 porzioni", "Noodles"],
  ["4人份", "Noodles"],
])("the number of %j is how many bowls, and no grams", (title, name) => {
  const { spec, yields, questions } = readHandwritten(`${title}\nbread flour 400 g\nwater 150 g`);
  expect([spec["name"], yields?.bowls, questions]).toEqual([name, 4, []]);
});

test.each([
  ["kansui 12 g", "sodium carbonate", "sodium carbonate 12 g"],
  ["kansui 12 g", "60 % Na2CO3, 40 % K2CO3", "kansui (60 % Na2CO3, 40 % K2CO3) 12 g"],
  ["1 tsp baking soda", "5 g", "baking soda 5 g"],
  ["25 % K2CO3 solution 20 g", "K2CO3 at 25 % w/v", "K2CO3 at 25 % w/v 20 g"],
  ["kansui 12 g", "potassium carbonate 11 g", "potassium carbonate 11 g"],
])("to the question about %j the answer %j makes the line %j", (line, answer, right) => {
  expect(answeredLine(line, answer)).toBe(right);
  expect(readHandwritten(right).questions.filter(({ about }) => about !== "missing")).toEqual([]);
});

test("a long or hostile text is read up to a limit, and quickly", () => {
  const many = readHandwritten("bread flour 1 g\n".repeat(100_000));
  expect(many.understood).toHaveLength(400);
  const cut = expect.stringContaining("only the first 400 lines are read");
  expect([many.remarks, readHandwritten("-".repeat(200_000)).remarks]).toEqual([[cut], [cut]]);
  const odd = readHandwritten(
    `${"1 ".repeat(5000)}\n${"(".repeat(5000)}\n\u001B[2J\u0000 # - : bread flour 1 kg\nwater 1/0 kg`,
  );
  expect(parse(odd.text)).toEqual(odd.spec);
  expect(odd.text).not.toContain("\u001B");
});

test.each<readonly [string, string | undefined]>([
  ["For 4 portions of 140 g", "140 g"],
  ["Makes 4 bowls, 140 g raw each", "140 g"],
  ...["Serves 4, 140 g each", "Makes 4 bowls, 140 g per bowl", "4 bowls (140 g a bowl)", "serves 4 of 140 g each"].map(
    (line): readonly [string, string] => [line, "140 g"],
  ),
  ["For 4 portions of 210 g cooked", "345 g"],
  ["For 4 portions, rye flour 210 g", "397.5 g"],
  ...[
    "makes 10",
    "Makes 10 bowls",
    "serves 10",
    "Yield: 10 bowls",
    "for 10 bowls",
    "10 portions",
    "enough for ten",
    "Feeds ten",
    "ten bowls",
  ].map((line): readonly [string, string] => [line, "138 g"]),
  ["makes 10\nsalt 1 %", undefined],
  ["makes 10\na pinch of salt", undefined],
  ["for 40 bowls", undefined],
])("%s: the raw weight of a bowl, stated or of the dough", (line, rawWeight) => {
  expect(readHandwritten(`${line}\nbread flour 1 kg\nwater 380 g`).yields?.rawWeight).toBe(rawWeight);
});

test("a weight beside the bowls that may be of cooked noodles is listed, and the dough is told in tenths", () => {
  const { notUnderstood, yields } = readHandwritten(
    "Serves 4, 210 g cooked\nbread flour 400 g\nwater 1 lb 0.5 oz\nsalt 0.3333 g",
  );
  expect(notUnderstood).toMatchObject([{ line: 1, why: expect.stringContaining("4 bowls of 210 g") }]);
  expect(yields?.workedOut).toContain(": 868.1 g of dough");
});

test("a part of a line is put in anew, and the rest of it stays", () => {
  const line = "bread flour １ ½ kg; water 350 g; kansui 12 g";
  expect(amendedText(`title\n${line}`, 2, "bread flour 1 1/2 kg", "rye flour 2 kg")).toBe(
    "title\nrye flour 2 kg; water 350 g; kansui 12 g",
  );
});

describe("rework", () => {
  const beside = (line: string) => readHandwritten(`bread flour 1000 g\nwater 380 g\nsalt 10 g\n${line}`);

  test.each([
    // 110 of 1500 g of dough, the rework in it
    ["rework 110 g", "7.333 %"],
    ["110 g dough trimmings", "7.333 %"],
    ["Rework: 8 % of the dough", "8 %"],
    ["Teigreste 110 g", "7.333 %"],
  ])("%s is a share of the dough", (line, amount) => {
    const { spec, questions, notUnderstood } = beside(line);
    expect([spec["rework"], questions, notUnderstood]).toEqual([{ amount }, [], []]);
    expect(formulaOf(spec)).toMatchObject({ ok: true });
  });

  test.each(["trimmings 8 %", "8 % dough trimmings"])("%s may be of the flour as well, and is asked about", (line) => {
    const { spec, questions } = beside(line);
    expect(spec["rework"]).toEqual({ amount: null });
    expect(questions.map(({ part, about }) => [part, about])).toEqual([["rework", "amount"]]);
  });

  test("in bare numbers counts what the others do", () => {
    const { spec } = readHandwritten("bread flour 1000\nwater 380\nsalt 10\nrework 110");
    expect(spec["rework"]).toEqual({ amount: "7.333 %" });
  });
});

test("hydration is the water added in all", () => {
  expect(readHandwritten("bread flour 1 kg\n38 % hydration").spec["water"]).toEqual({ added: "38 %" });
});

test.for<readonly [line: string, read: string, ...remarks: string[]]>([
  ["2 eggs (55 g each)", "ingredients whole egg 110 g"],
  ["2 eggs, 55 g each", "ingredients whole egg 110 g"],
  ["2 large eggs, about 55 g each, beaten", "ingredients whole egg 110 g"],
  ["2 eggs at 55 g", "ingredients whole egg 110 g"],
  ["2 Eier à 55 g", "ingredients Eier 110 g"],
  ["2 Eier (je 55 g)", "ingredients Eier 110 g"],
  ["2 oeufs de 55 g", "ingredients oeufs 110 g"],
  ["eggs 2 (110 g)", "ingredients whole egg 110 g"],
  ["one egg 50 g", "ingredients egg 50 g"],
  ["2 sachets Na2CO3 (4 g each)", "alkali Na2CO3 8 g"],
  ["2 cups rice flour (130 g each)", "flours rice flour 260 g"],
  ["sodium carbonate 5 g, dissolved in the water", "alkali sodium carbonate 5 g"],
  ["1 % sodium carbonate dissolved in the water", "alkali sodium carbonate 1 %"],
  ["30°Be K2CO3 20 g", "alkali 30°Be K2CO3 20 g"],
  ["K2CO3 200 g/L 20 g", "alkali K2CO3 200 g/L 20 g"],
  ["20 g K2CO3 28,5 °Bé", "alkali K2CO3 28,5 °Bé 20 g"],
  ["20 g K2CO3 at 28,5 %", "alkali K2CO3 at 28,5 % 20 g"],
  ["kansui (Na2CO3 58,8 %, K2CO3 41,2 %) 8 g", "alkali kansui 8 g"],
  ["8 g kansui (Na2CO3 60 / K2CO3 40)", "alkali kansui 8 g"],
  ["8 g alkali powder (Na2CO3 60 / K2CO3 40)", "alkali alkali powder 8 g"],
  ["kansui (Na2CO3 60 / K2CO3 40) 8 g", "alkali kansui 8 g"],
  ["8 g sodium carbonate / potassium carbonate 6/4", "alkali sodium carbonate / potassium carbonate 6/4 8 g"],
  ["5 g K2CO3 + Na2CO3 (9/1)", "alkali K2CO3 + Na2CO3 (9/1) 5 g"],
  ["5 g K2CO3 1,5:1 Na2CO3", "alkali K2CO3 1,5:1 Na2CO3 5 g"],
  ["20 g K2CO3 at 25 %", "alkali K2CO3 at 25 % 20 g"],
  ["kansui 20 g (potassium carbonate 25 %, water)", "alkali kansui 20 g"],
  ["K2CO3 at 30 °Bé 3 %", "alkali K2CO3 at 30 °Bé 3 %"],
  ["30 °Bé K2CO3 3 %", "alkali 30 °Bé K2CO3 3 %"],
  ["K2CO3 20 %, water rest: 3 %", "alkali K2CO3 20 %, water rest 3 %"],
  ["Natriumkarbonat 3 g", "alkali Natriumkarbonat 3 g"],
  ["carbonato di potassio 3 g", "alkali carbonato di potassio 3 g"],
  ["rye flour 1kg500", "flours rye flour 1500 g"],
  ["rye flour 25 000 g", "flours rye flour 25000 g"],
  ["Sel 1 c. à café rase (5 g)", "salt salt 5 g"],
  ["Sel 1 c. à soupe (15 g)", "salt salt 15 g"],
  ["salt 1% of flour", "salt salt 1 %"],
  ["farine T45 50 g", "flours farine T45 50 g", anyWheat],
  ["K2CO3 1:1 Na2CO3 5 g", "alkali K2CO3 1:1 Na2CO3 5 g"],
  ["Na2CO3 and K2CO3 3:2, 5 g", "alkali Na2CO3 and K2CO3 3:2 5 g"],
  ["kansui 8 g (60 % sodium carbonate, 40 % K2CO3)", "alkali kansui 8 g"],
  ["lye water (20 % potassium carbonate) 20 g", "alkali lye water 20 g"],
  ["E 501(i) 6 g", "alkali potassium carbonate 6 g"],
  ["sodium carbonate (decahydrate) 10 g", "alkali sodium carbonate decahydrate 10 g"],
  ["for dusting: cornstarch 30 g", "dusting cornstarch 30 g"],
  ["500g strong flour (12 % protein)", "flours strong flour 500 g"],
  ["strong flour (protein 4 g per 30 g) 1 kg", "flours strong flour 1 kg"],
  ["industrial white flour, 9 % protein: 500 g", "flours industrial white flour, 9 % protein 500 g"],
  ["bread flour type 550 900 g", "flours bread flour type 550 900 g", anyWheat],
  ["then add 900 g rye flour", "flours rye flour 900 g"],
  ["strong white flour 900 g", "flours strong white flour 900 g", "the protein on its bag"],
  ["plain flour 100 g", "flours plain flour 100 g"],
  ["00 flour 700 g", "flours 00 flour 700 g", anyWheat],
  ["flour type 550: 200 g", "flours flour type 550 200 g", anyWheat],
  ["T55 flour 100 g", "flours T55 flour 100 g", anyWheat],
  ["Type 55 flour 100 g", "flours Type 55 flour 100 g", anyWheat],
  ["Tipo 00 100 g", "flours Tipo 00 100 g", anyWheat],
  ["flour W 300 100 g", "flours flour W 300 100 g", anyWheat],
  ["Hi-gluten flour 100 g", "flours Hi-gluten flour 100 g", anyWheat],
  ["Mehl (550) 100 g", "flours Mehl 550 100 g", anyWheat],
  ["Roggenmehl 100 g", "flours Roggenmehl 100 g"],
  ["Eier 50 g", "ingredients Eier 50 g"],
  ["jaunes d’œufs 20 g", "ingredients jaunes d'œufs 20 g"],
  ["blanc d'oeuf 5 g", "ingredients blanc d'oeuf 5 g"],
])("%j is read as %j", ([line, read, ...remarks]) => {
  const text = `bread flour 500 g\nwater 190 g\n${line}`;
  expectRead({ text, read: ["flours bread flour 500 g", "water water 190 g", read], remarks });
});

test.each([
  ["2 eggs (55 g)", "55 g may be that of one"],
  ["25 % K2CO3 solution 20 g", '"K2CO3 at 25 %" or "K2CO3 at 25 % w/v"'],
  ["20 g of potassium carbonate (25 % solution)", '"potassium carbonate at 25 %"'],
  ["kansui liquid 30 °Bé 12 g", '"K2CO3 at 30 °Bé"'],
  ["Na2CO3 solution 5 g", '"Na2CO3 at 20 %"'],
  ["8 g Na2CO3 / K2CO3", "in the form of"],
  ["8 g Na2CO3 / K2CO3 6/3/1", "leaves open what is in it"],
  ["kansui powder 6:4 (sodium:potassium) 5 g", "Ask for"],
  ["20 ml K2CO3 at 25 %", '"20 ml" is a volume'],
  ["rye flour 1 500 g", '"1 500 g" may be 1500 g, or 500 g of'],
  ["rye flour 12 500 g", '"12 500 g" may be 12500 g'],
  ...[
    "Erdnussmehl Typ 3 100 g",
    "Roggenmehl Type 1150 50 g",
    "farine de seigle T130 50 g",
    "Buchweizenmehl 50 g",
    "Mandelmehl Typ 1: 20 g",
    "farine de lupin T80 9 g",
  ].map((line): [string, string] => [line, "is not in the catalogue: ask the mill"]),
  ["spelt-like flour 200 g", "moisture and protein"],
  ["white sorghum flour 5 g", "moisture and protein"],
  ["cornflour 100 g", "ground maize"],
  ["water 2/3 cup (350 ml)", '"350 ml" and "2/3 cup" are not the same'],
  ["1 ¼ cups water", "1 1/4 cups may be 247.5 to 312.5"],
  ["water 1 cup 3 tbsp", "1 cup 3 tbsp may be"],
  // 2 × 3785 + 946 mL at least, imperial ones at most
  ["2 gal 1 qt water", "8430.8 to 10229 g"],
  ["1,5 gal water", "1,5 gal may be"],
  ["3/4 cup + 1 Tbsp water", "3/4 cup + 1 Tbsp may be"],
  ["1 cup water", "198 to 250 g"],
  ["350–400 g water", "is a range"],
  ["water 3:50 g", "is not one number"],
  ["2 cups bread flour", "180 to 325 g (common practice, no source)"],
  ["2 eggs", "80 to 130 g"],
  ["Eier 2 Stück", "without the shell may be 80 to 130 g"],
  ["huevos 3", "so many eggs, or grams"],
  ["1 tsp baking soda", "2.5 to 6.5 g"],
  ["½ tsp salt", "1.5 to 3.4 g"],
  ["half a teaspoon salt", "1.5 to 3.4 g"],
  ["2 ½ tsp salt", "2 1/2 tsp may be"],
  ["小さじ1 塩", "2.9 to 6.8 g"],
  ["sel 1 c. à c.", "may be 2.9 to 6.8 g"],
  ["Na2CO3 1 cucchiaino", "may be"],
  ["a pinch of sugar", "nobody can tell"],
  ["salt to taste", "no amount stands there"],
  ["sodium carbonate 20 % 50 g", "neither of the flour nor of the dough"],
  ["Kansui powder (60/40) 15 g", "which salt is the 60"],
  ["kansui 12 g", "may be a powder, a solution"],
  ["washing soda 10 g", "decahydrate"],
  ["lye 5 g", "hydroxide"],
  ["pottash 3 g", "no guess is made"],
  ["E 500 2 g", "small number in brackets"],
])("of %j is asked what it may be: %s", (line, words) => {
  const water = line.includes("water") ? [] : ["water 190 g"];
  const { questions, understood } = readHandwritten(["bread flour 500 g", ...water, line].join("\n"));
  expect(questions.map(({ ask }) => ask)).toEqual([expect.stringContaining(words)]);
  expect(understood.length).toBeLessThanOrEqual(3);
});

test("a share beside a weight is checked once the flour is plain", () => {
  const { questions } = readHandwritten("1) strong flour - 1,000 g\n2) water - 400 g (40%)\n3) salt - 10 g (1%)");
  expect(questions.map(({ line }) => line)).toEqual([1]);
});

test.each(["Bowls", "Number of bowls", "Yield bowls"])(
  "the row %j of a table is how many bowls, and no grams",
  (bowls) => {
    const { spec, yields } = readHandwritten(`Ingredient,g\nFlour,\nbread flour,400\nwater,150\n${bowls},4`);
    expect([spec["name"], yields?.bowls]).toEqual(["Noodles", 4]);
  },
);

test("a title that names alkaline noodles is no alkali", () => {
  const { spec, questions } = readHandwritten("Alkaline noodles — class of 24\nbread flour 400 g\nwater 150 g");
  expect([spec["name"], questions]).toEqual(["Alkaline noodles – class of 24", []]);
});

test.each([
  ["Per 500 g flour:", "flours flour 500 g"],
  ["Flour B: spelt 500 g", "flours spelt 500 g"],
])("the words before the ingredient of %j are none of its name", (line, read) => {
  expect(linesOf(readHandwritten(`${line}\nwater 190 g`))).toEqual([read, "water water 190 g"]);
});

test.each(["tepid water 190 g", "lauwarmes Wasser 190 g", "Wasser, kalt: 190 g"])("%j is water", (line) => {
  expect(readHandwritten(`bread flour 500 g\n${line}`).spec["water"]).toEqual({ tap: "190 g" });
});

test("lines of which nobody is asked take not much longer than known ones: nearest names are looked for where somebody asks", () => {
  const took = (line: string): number => {
    const runs = Array.from({ length: 5 }, () => {
      const { user } = process.cpuUsage();
      readHandwritten(`${line}\n`.repeat(100));
      return process.cpuUsage().user - user;
    });
    return Math.min(...runs);
  };
  // Five times as long where names are looked for at once.
  expect(took('"x')).toBeLessThan(3 * took("bread flour 3 g"));
});
