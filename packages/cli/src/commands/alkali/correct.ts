import { correct, gramsOf, readHydrometer } from "@noodlewright/core/chemistry";
import { conditionsOf, recipeAnswer } from "./conditions.ts";
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
  examples: {
    "noodlewright alkali correct 'Na2CO3 at 12 °Bé' 'sodium carbonate' --amount '4.2 kg' --strength '12 %'":
      "what to add",
    "noodlewright alkali correct Na2CO3 'sodium carbonate' --reading '16.4 °Bé' --temperature '12 °C' --amount '4.2 kg' --strength '12 %' --tank '5 L'":
      "the same from a reading in the cold, in a tank",
  },
  read: (ask) => {
    const named = ask.product(ask.text("batch"), "<batch>");
    const salts = ask.product(ask.text("salts"), "<salts>");
    const amount = ask.amount("amount");
    const target = ask.strength("strength");
    const measured = readingOf(ask);
    const tank = ask.maybe("tank", ["volume"])?.value;
    const conditions = conditionsOf(ask);
    return () => {
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
      const telling = { command: "alkali correct", title: `${batch.name}, corrected`, ...conditions };
      return recipeAnswer(recipe, telling, [...(read?.notes ?? []), ...mass.notes]);
    };
  },
});
