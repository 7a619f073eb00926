import type { Outcome } from "@noodlewright/core";
import {
  type Composition,
  type ReadStrength,
  readHydrometer,
  readWeighedVolume,
  strengthOf,
  strengthReport,
} from "@noodlewright/core/chemistry";
import { answer } from "@noodlewright/core/figure";
import type { Asking } from "./asking.ts";
import { memberFlags, productHelp } from "./flags.ts";
import { member } from "./member.ts";
import { readingOf } from "./reading.ts";

/** `noodlewright alkali strength`: every measure of a strength, from a reading, a weighed volume or any stated measure. */
export const strengthCommand = member({
  positionals: { product: `The solution, or its salts with a reading of it: ${productHelp}` },
  flags: {
    reading: { describe: "What a hydrometer or a density meter shows", placeholder: "24.5 °Bé" },
    error: { describe: "How far the reading may be off", placeholder: "0.2 °Bé" },
    weighed: { describe: "Mass of a known volume, the vessel taken off", placeholder: "121.4 g" },
    volume: { describe: "That volume", placeholder: "100 mL" },
    "weighed-error": { describe: "How far the mass may be off", placeholder: "0.1 g", fallback: "0.1 g" },
    "volume-error": { describe: "How far the volume may be off", placeholder: "0.5 mL", fallback: "0.5 mL" },
    ...memberFlags,
  },
  examples: {
    "noodlewright alkali strength 'K2CO3 6, Na2CO3 4' --reading '28.5 °Bé' --error '0.2 °Bé'":
      "what is left in the bottle",
    "noodlewright alkali strength K2CO3 --weighed '121.4 g' --volume '100 mL'": "the same from a flask and a scale",
    "noodlewright alkali strength 'Na2CO3 at 1.2 mol/L'": "one measure in all others",
  },
  read: (ask) => {
    const { name, composition: salts } = ask.product(ask.text("product"), "<product>");
    const measure = measuring(ask);
    const { temperature, scale, units } = ask;
    return () => {
      const read = measure?.(salts);
      if (read?.ok === false) return read;
      const composition = read?.value.composition ?? salts;
      const strength = strengthOf(composition, temperature, scale);
      if (!strength.ok) return strength;
      const telling = { name, composition, strength: strength.value, reading: read?.value.massPercent };
      return answer(strengthReport(telling, [...(read?.notes ?? []), ...strength.notes], units));
    };
  },
});

/** Reads what was measured; gives what finds the strength of a solution of some salts by it, where anything was. */
function measuring(ask: Asking): ((salts: Composition) => Outcome<ReadStrength>) | undefined {
  if (ask.text("weighed") !== undefined || ask.text("volume") !== undefined) {
    const weighed = {
      mass: ask.quantity("weighed", ["mass"]).value,
      volume: ask.quantity("volume", ["volume"]).value,
      massError: ask.quantity("weighed-error", ["mass"]).value,
      volumeError: ask.quantity("volume-error", ["volume"]).value,
      temperature: ask.temperature,
    };
    return (salts) => readWeighedVolume(salts, weighed);
  }
  const read = readingOf(ask);
  return read && ((salts) => readHydrometer(salts, read.reading, read.error));
}
