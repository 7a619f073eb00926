import { answer, correct, gramsOf, recipeReport } from "@noodlewright/core";
import { conditionsOf } from "./conditions.ts";
import { productHelp, solutionFlags } from "./flags.ts";
import { member } from "./member.ts";

/** `noodlewright alkali correct`: a batch of solution that came out too strong or too weak. */
export const correctCommand = member({
  positionals: {
    batch: `The batch as it came out: ${productHelp}`,
    salts: "What to strengthen it with, should it be too weak",
  },
  flags: {
    amount: { describe: "How much of it there is, by mass or by volume", kind: "text", placeholder: "4.2 kg" },
    strength: { describe: "Strength that was meant", kind: "text", placeholder: "20 %" },
    ...solutionFlags,
  },
  examples: [
    [
      "noodlewright alkali correct 'Na2CO3 1 at 12 °Bé' 'sodium carbonate' --amount '4.2 kg' --strength '12 %'",
      "what to add",
    ],
  ],
  read: (ask) => {
    return {
      batch: ask.product(ask.text("batch"), "<batch>"),
      salts: ask.product(ask.text("salts"), "<salts>"),
      amount: ask.amount("amount"),
      target: ask.strength("strength"),
      conditions: conditionsOf(ask),
    };
  },
  answer: ({ batch, salts, amount, target, conditions }) => {
    const mass = gramsOf(batch.composition, amount, conditions.temperature);
    if (!mass.ok) return mass;
    const recipe = correct({ batch: { ...batch, mass: mass.value }, salts, target, ...conditions });
    if (!recipe.ok) return recipe;
    const products = recipe.value.amounts.length === 1 ? [batch] : [batch, salts];
    const title = `${batch.name}, corrected`;
    const telling = { command: "alkali correct", title, products, ...conditions };
    return answer(recipeReport(recipe.value, telling, recipe.notes));
  },
});
