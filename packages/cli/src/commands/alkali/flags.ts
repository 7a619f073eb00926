import { moduli } from "@noodlewright/core/chemistry";
import type { Flag } from "../../shared/command.ts";
import { reportFlags } from "../../shared/flags.ts";

/** Flags of every member of `alkali`. */
export const memberFlags = {
  materials: { describe: "File of the kitchen's own materials", placeholder: "store.yaml" },
  modulus: { describe: "Modulus of degrees Baumé", choices: moduli, fallback: "145" },
  temperature: {
    describe: "Working temperature, 0 to 40 °C; 20 °C unless stated, for a hydrometer its own",
    placeholder: "18 °C",
  },
  "ratio-by": {
    describe: "What the parts of a ratio, and the strength of a product, count; anhydrous unless stated",
    choices: ["anhydrous", "as weighed"],
  },
  ...reportFlags,
} as const satisfies Readonly<Record<string, Flag>>;

/** Flags of the members that end in a solution to weigh out. */
export const solutionFlags = {
  storage: { describe: "Temperature where it is kept; as made unless stated", placeholder: "4 °C" },
  division: { describe: "Smallest step of the scale; 0.1 g unless stated, 0.005 oz in US units", placeholder: "0.1 g" },
  ...memberFlags,
} as const satisfies Readonly<Record<string, Flag>>;

/** How to name a product, for the help. */
export const productHelp = "name, formula, 'Na2CO3 60 %, K2CO3 40 %', or 'K2CO3 6, Na2CO3 4 at 30 °Bé'";
