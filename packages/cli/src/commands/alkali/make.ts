import { type InRatio, makeUp, readRatio } from "@noodlewright/core/chemistry";
import { ownProblem } from "../../input/problem.ts";
import { conditionsOf, recipeAnswer } from "./conditions.ts";
import { productHelp, solutionFlags } from "./flags.ts";
import { member } from "./member.ts";

/** `noodlewright alkali make`: a solution of products at hand. */
export const makeCommand = member({
  positionals: { products: `The products at hand: ${productHelp}` },
  flags: {
    strength: { describe: "Strength to reach", placeholder: "20 %" },
    amount: { describe: "How much to make, by mass or by volume", placeholder: "2 L" },
    ratio: { describe: "Parts of the products, in their order; equal parts unless stated", placeholder: "6 to 4" },
    ...solutionFlags,
  },
  examples: {
    "noodlewright alkali make 'potassium carbonate' 'sodium carbonate' --ratio '6 to 4' --strength '30 °Bé' --amount '2 L'":
      "a bottle of the usual kind, checked with a hydrometer",
    "noodlewright alkali make 'sodium carbonate' --strength '10 %' --amount '1 kg' --storage '4 °C'":
      "will it stay clear in the fridge?",
  },
  read: (ask) => {
    const names = ask.list("products");
    const text = ask.text("ratio");
    const ratio = text === undefined ? names.map(() => "1") : readRatio(text, names.length);
    if (ratio === undefined) {
      ask.wrong("--ratio", ownProblem("ratio.unreadable", { written: `"${text}"`, products: names }));
    }
    const products = names.map(
      (name, index): InRatio => ({ ...ask.product(name, "<products>"), parts: ratio?.[index] ?? "1" }),
    );
    const target = ask.strength("strength");
    const amount = ask.amount("amount");
    const conditions = conditionsOf(ask);
    const title = `Solution of ${products.map(({ name }) => name).join(" and ")}`;
    return () => {
      const [first, ...others] = products;
      if (first === undefined) throw new RangeError("the parser asks for a product");
      const recipe = makeUp({ products: [first, ...others], ratioBy: ask.ratioBy, target, amount, ...conditions });
      return recipeAnswer(recipe, { command: "alkali make", title, ...conditions });
    };
  },
});
