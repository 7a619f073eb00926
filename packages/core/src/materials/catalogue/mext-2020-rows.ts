import type { NatureName } from "./nature.ts";

/**
 * One food of the table: item number, name here, nature, composition, nitrogen factor, other names.
 *
 * Composition, per 100 g as is, `-` where it was not read: water g, protein g, fat g, carbohydrate g (fibre in it),
 * fibre g, ash g, sodium mg, potassium mg. The table prints grams to one place.
 * The nitrogen factors are from memory: they stand in the table's introduction, which was not read.
 */
export type MextRow = readonly [
  item: string,
  name: string,
  nature: NatureName,
  composition: string,
  nitrogenFactor: string,
  ...aliases: string[],
];

/**
 * Ministry of Education, Culture, Sports, Science and Technology (MEXT), Standard Tables of Food Composition in Japan
 * 2020 (eighth revised edition), read in a copy and taken over by program. Names and natures are ours.
 */
// biome-ignore format: one food a line
export const mextIngredientRows: readonly MextRow[] = [
  ["01015", "soft flour, grade 1", "wheat flour", "14.0 8.3 1.5 75.8 2.5 0.4 0 110", "5.70", "weak flour", "hakurikiko"],
  ["01016", "soft flour, grade 2", "wheat flour", "14.0 9.3 1.9 74.3 2.6 0.5 0 130", "5.70"],
  ["01018", "medium flour, grade 1", "wheat flour", "14.0 9.0 1.6 75.1 2.8 0.4 1 100", "5.70", "medium flour", "churikiko"],
  ["01019", "medium flour, grade 2", "wheat flour", "14.0 9.7 1.8 74.0 2.1 0.5 1 110", "5.70"],
  ["01020", "strong flour, grade 1", "wheat flour", "14.5 11.8 1.5 71.7 2.7 0.4 0 89", "5.70", "kyorikiko"],
  ["01021", "strong flour, grade 2", "wheat flour", "14.5 12.6 1.7 70.6 2.1 0.5 0 86", "5.70"],
  ["01023", "strong flour, whole grain", "whole wheat", "14.5 12.8 2.9 68.2 11.2 1.6 2 330", "5.83", "strong whole-grain flour"],
  ["01071", "gluten powder", "gluten", "6.5 72.0 9.7 10.6 2.4 1.2 60 90", "5.70"],
  ["01143", "rye flour, Japanese table", "rye", "13.5 8.5 1.6 75.8 12.9 0.6 1 140", "5.83"],
  ["01122", "buckwheat flour, whole-layer", "buckwheat", "13.5 12.0 3.1 69.6 4.3 1.8 2 410", "6.31"],
  ["01123", "buckwheat flour, inner-layer", "buckwheat", "14.0 6.0 1.6 77.6 1.8 0.8 1 190", "6.31"],
  ["01158", "rice flour, Japanese table", "other flour", "11.1 6.0 0.7 81.9 0.6 0.3 1 45", "5.95"],
  ["02028", "cassava starch", "starch", "14.2 0.1 0.2 85.3 0 0.2 1 48", "6.25", "tapioca starch"],
  ["02031", "wheat starch", "wheat starch", "13.1 0.2 0.5 86.0 0 0.2 3 8", "6.25"],
  ["02034", "potato starch", "starch", "18.0 0.1 0.1 81.6 0 0.2 2 34", "6.25", "katakuriko"],
  ["02035", "maize starch", "starch", "12.8 0.1 0.7 86.3 0 0.1 1 5", "6.25"],
  ["12004", "whole egg, Japanese table", "egg", "75.0 12.2 10.2 0.4 0 1.0 140 130", "6.25"],
  ["12010", "egg yolk, Japanese table", "egg", "49.6 16.5 34.3 0.2 0 1.7 53 100", "6.25"],
  ["12014", "egg white, Japanese table", "egg", "88.3 10.1 0.0 0.5 0 0.7 180 140", "6.25"],
];

/** Noodles and wrappers of the same table. */
// biome-ignore format: one food a line
export const mextNoodleRows: readonly MextRow[] = [
  ["01047", "Chinese noodle, raw", "wheat noodle", "33.0 8.6 - 55.7 - 1.5 410 350", "-"],
  ["01048", "Chinese noodle, boiled", "wheat noodle", "65.0 4.9 - 29.2 - 0.3 70 60", "-"],
  ["01187", "Chinese noodle, semi-raw", "wheat noodle", "23.7 9.9 - 61.2 - 1.3 470 430", "-"],
  ["01052", "Okinawa soba, raw", "wheat noodle", "32.3 9.2 - 54.2 - 2.3 810 340", "-"],
  ["01053", "Okinawa soba, boiled", "wheat noodle", "65.5 5.2 - 28.0 - 0.5 170 80", "-"],
  ["01038", "udon, raw", "wheat noodle", "33.5 6.1 - 56.8 - 3.0 1000 90", "-"],
  ["01039", "udon, boiled", "wheat noodle", "75.0 2.6 - 21.6 - 0.4 120 9", "-"],
  ["01127", "buckwheat noodle, raw", "buckwheat noodle", "33.0 9.8 - 54.5 - 0.8 1 160", "-"],
  ["01128", "buckwheat noodle, boiled", "buckwheat noodle", "68.0 4.8 - 26.0 - 0.2 2 34", "-"],
  ["01074", "gyoza wrapper, raw", "wheat noodle", "32.0 9.3 - 57.0 - 0.3 2 64", "-"],
  ["01075", "shumai wrapper, raw", "wheat noodle", "31.1 8.3 - 58.9 - 0.3 2 72", "-"],
];
