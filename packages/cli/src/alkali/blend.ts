import { answer, blendStocks, type Product, recipeReport } from "@noodlewright/core";
import { productHelp, solutionFlags } from "./flags.ts";
import { member } from "./member.ts";

/** `noodlewright alkali blend`: two stocks to a strength and a ratio. */
export const blendCommand = member({
  positionals: { one: `The first stock: ${productHelp}`, other: "The second stock" },
  flags: {
    amount: { describe: "How much to make, by mass or by volume", kind: "text", placeholder: "1 kg" },
    strength: { describe: "Strength to reach", kind: "text", placeholder: "15 %" },
    potassium: {
      describe: "Potassium carbonate, % by mass of the anhydrous carbonates",
      kind: "text",
      placeholder: "60 %",
    },
    ...solutionFlags,
  },
  examples: [
    [
      "noodlewright alkali blend 'Na2CO3 15 %, water rest' 'K2CO3 40 %, water rest' --strength '15 %' --potassium '60 %' --amount '1 kg'",
      "a bottle of 6 to 4 from two stocks",
    ],
  ],
  read: (ask) => {
    const storage = ask.maybe("storage", ["temperature"]);
    const stocks: readonly [Product, Product] = [
      ask.product(ask.text("one"), "<one>"),
      ask.product(ask.text("other"), "<other>"),
    ];
    return {
      stocks,
      amount: ask.amount("amount"),
      target: ask.strength("strength"),
      potassiumShare: ask.quantity("potassium", ["share"]).value,
      temperature: ask.temperature,
      scale: ask.scale,
      units: ask.units,
      division: ask.quantity("division", ["mass"]).value,
      ...(storage && { storage: storage.value }),
    };
  },
  answer: ({ units, division, ...request }) => {
    const recipe = blendStocks(request);
    if (!recipe.ok) return recipe;
    const { stocks, temperature, scale } = request;
    const title = `Blend of ${stocks.map(({ name }) => name).join(" and ")}`;
    const telling = { command: "alkali blend", title, products: stocks, division, temperature, scale, units };
    return answer(recipeReport(recipe.value, telling, recipe.notes));
  },
});
