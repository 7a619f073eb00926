import type { Source } from "../figure/source.ts";

/** Dry gluten takes one and a half times its own mass of water: 3 % on 100 of flour that gets 2 % of it beside. */
export const glutenWater: Source = {
  cite: "Cauvain and Young, Baking Problems Solved, Q 2.7; T. Lehmann, dough forum answer: 3 % more water for 2 % dry gluten",
  standing: "copy",
};

/** More protein did not mean more water in noodle dough; the optimum fell with it. */
export const noodleWater: Source = {
  cite: "C. S. Park, B.-K. Baik, Cereal Chemistry 81(2):159-164, 2004",
  at: "abstract",
  standing: "read",
};

/** Water and flour are corrected to a constant dough at a moisture basis. */
export const doughMoisture: Source = {
  cite: "ICC Standard 115/1, farinograph, flour at 14 % moisture",
  standing: "read",
};

export const wholeEgg: Source = {
  cite: "USDA National Nutrient Database SR28",
  at: "01123, egg, whole, raw",
  standing: "read",
};
export const driedEgg: Source = {
  cite: "USDA National Nutrient Database SR28",
  at: "01133, egg, whole, dried",
  standing: "read",
};
