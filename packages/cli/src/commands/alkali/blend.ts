import { blendStocks, type Product } from "@noodlewright/core/chemistry";
import { conditionsOf, recipeAnswer } from "./conditions.ts";
import { productHelp, solutionFlags } from "./flags.ts";
import { member } from "./member.ts";

/** `noodlewright alkali blend`: two stocks to a strength and a ratio. */
export const blendCommand = member({
  positionals: { one: `The first stock: ${productHelp}`, other: "The second stock" },
  flags: {
    amount: { describe: "How much to make, by mass or by volume", placeholder: "1 kg" },
    strength: { describe: "Strength to reach", placeholder: "15 %" },
    potassium: { describe: "Potassium carbonate, % by mass of the anhydrous carbonates", placeholder: "60 %" },
    ...solutionFlags,
  },
  examples: {
    "noodlewright alkali blend 'Na2CO3 15 %, water rest' 'K2CO3 40 %, water rest' --strength '15 %' --potassium '60 %' --amount '1 kg'":
      "a bottle of 6 to 4 from two stocks",
  },
  read: (ask) => {
    const stocks: readonly [Product, Product] = [
      ask.product(ask.text("one"), "<one>"),
      ask.product(ask.text("other"), "<other>"),
    ];
    const amount = ask.amount("amount");
    const target = ask.strength("strength");
    const potassiumShare = ask.quantity("potassium", ["share"]).value;
    const conditions = conditionsOf(ask);
    const title = `Blend of ${stocks.map(({ name }) => name).join(" and ")}`;
    return () => {
      const recipe = blendStocks({ stocks, amount, target, potassiumShare, ...conditions });
      return recipeAnswer(recipe, { command: "alkali blend", title, ...conditions });
    };
  },
});
