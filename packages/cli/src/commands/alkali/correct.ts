import { correct, gramsOf, readHydrometer, recipeReport } from "@noodlewright/core/chemistry";
import { answer } from "@noodlewright/core/figure";
import { conditionsOf } from "./conditions.ts";
import { productHelp, solutionFlags } from "./flags.ts";
import { member } from "./member.ts";
import { readingOf } from "./reading.ts";

/** `noodlewright alkali correct`: a batch of solution that came out too strong or too weak. */
export const correctCommand = member({
  positionals: {
    batch: `The batch as it came out: ${productHelp}`,
    salts: "What to strengthen it with, should it be too weak",
  },
  flags: {
    amount: { describe: "How much of it there is, by mass or by volume", placeholder: "4.2 kg" },
    strength: { describe: "Strength that was meant", placeholder: "20 %" },
    reading: {
      describe: "What a hydrometer or a density meter shows in it at the working temperature; <batch> gives its salts",
      placeholder: "16.4 °Bé",
    },
    error: { describe: "How far the reading may be off", placeholder: "0.2 °Bé" },
    tank: { describe: "What the tank holds", placeholder: "10 L" },
    ...solutionFlags,
  },
  examples: [
    [
      "noodlewright alkali correct 'Na2CO3 at 12 °Bé' 'sodium carbonate' --amount '4.2 kg' --strength '12 %'",
      "what to add",
    ],
    [
      "noodlewright alkali correct Na2CO3 'sodium carbonate' --reading '16.4 °Bé' --temperature '12 °C' --amount '4.2 kg' --strength '12 %' --tank '5 L'",
      "the same from a reading in the cold, in a tank",
    ],
  ],
  read: (ask) => ({
    batch: ask.product(ask.text("batch"), "<batch>"),
    salts: ask.product(ask.text("salts"), "<salts>"),
    amount: ask.amount("amount"),
    target: ask.strength("strength"),
    measured: readingOf(ask),
    tank: ask.maybe("tank", ["volume"])?.value,
    conditions: conditionsOf(ask),
  }),
  answer: ({ batch: named, salts, amount, target, measured, tank, conditions }) => {
    const read = measured && readHydrometer(named.composition, measured.reading, measured.error);
    if (read?.ok === false) return read;
    const batch =
      read === undefined ? named : { name: `solution of ${named.name}`, composition: read.value.composition };
    const within = read?.value.massPercent.range;
    const mass = gramsOf(batch.composition, amount, conditions.temperature);
    if (!mass.ok) return mass;
    const recipe = correct({
      batch: { ...batch, mass: mass.value },
      salts,
      target,
      ...conditions,
      ...(within && { within }),
      ...(tank !== undefined && { tank }),
    });
    if (!recipe.ok) return recipe;
    const title = `${batch.name}, corrected`;
    const telling = { command: "alkali correct", title, ...conditions };
    return answer(recipeReport(recipe.value, telling, [...(read?.notes ?? []), ...mass.notes, ...recipe.notes]));
  },
});
