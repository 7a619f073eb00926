import { dilute, gramsOf } from "@noodlewright/core/chemistry";
import { conditionsOf, recipeAnswer } from "./conditions.ts";
import { productHelp, solutionFlags } from "./flags.ts";
import { member } from "./member.ts";

/** `noodlewright alkali dilute`: a stock brought down with water. */
export const diluteCommand = member({
  positionals: { stock: `The stock: ${productHelp}` },
  flags: {
    amount: { describe: "How much stock there is, by mass or by volume", placeholder: "500 g" },
    strength: { describe: "Strength to reach", placeholder: "10 %" },
    ...solutionFlags,
  },
  examples: {
    "noodlewright alkali dilute 'K2CO3 40 %, water rest' --amount '500 g' --strength '20 %'": "half as strong",
    "noodlewright alkali dilute 'Na2CO3 at 15 °Bé' --amount '1 L' --strength '50 g/L'": "by hydrometer and volume",
  },
  read: (ask) => {
    const stock = ask.product(ask.text("stock"), "<stock>");
    const amount = ask.amount("amount");
    const target = ask.strength("strength");
    const conditions = conditionsOf(ask);
    return () => {
      const mass = gramsOf(stock.composition, amount, conditions.temperature);
      if (!mass.ok) return mass;
      const recipe = dilute({ stock: { ...stock, mass: mass.value }, target, ...conditions });
      return recipeAnswer(recipe, { command: "alkali dilute", title: `${stock.name}, diluted`, ...conditions });
    };
  },
});
