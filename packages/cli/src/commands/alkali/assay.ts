import {
  alkalinityForms,
  assayed,
  assayReport,
  potassiumOf,
  readAlkalinity,
  readNormality,
  splitByEndPoints,
} from "@noodlewright/core/chemistry";
import { answer } from "@noodlewright/core/figure";
import { ownProblem } from "../../input/problem.ts";
import { memberFlags } from "./flags.ts";
import { member } from "./member.ts";

/** `noodlewright alkali assay`: the composition behind a label, a certificate or a titration. */
export const assayCommand = member({
  positionals: { salts: "The salts and their parts: a formula such as Na2CO3, or 'Na2CO3 9, K2CO3 1'" },
  flags: {
    alkalinity: { describe: "As the label or certificate states it", placeholder: "58 % as Na2O" },
    acid: { describe: "Acid used to the end of methyl orange", placeholder: "37.4 mL" },
    phenolphthalein: { describe: "Of it, acid used to the end of phenolphthalein", placeholder: "18.6 mL" },
    normality: { describe: "Normality of the acid, eq/L", placeholder: "1 N" },
    sample: { describe: "Product titrated", placeholder: "2 g" },
    water: { describe: "Water in the product", placeholder: "0.6 %" },
    ...memberFlags,
  },
  examples: {
    "noodlewright alkali assay 'Na2CO3 9, K2CO3 1' --alkalinity '96 % as Na2CO3' --water '1 %'": "from a certificate",
    "noodlewright alkali assay Na2CO3 --acid '37.4 mL' --normality '1 N' --sample '2 g'": "from a titration",
    "noodlewright alkali assay Na2CO3 --acid '36 mL' --phenolphthalein '17 mL' --normality '1 N' --sample '2 g'":
      "from both end points: hydroxide, carbonate and bicarbonate",
  },
  read: (ask) => {
    const { composition } = ask.product(ask.text("salts"), "<salts>");
    const water = ask.maybe("water", ["share"])?.value ?? "0";
    const told = (assay: ReturnType<typeof assayed> | ReturnType<typeof splitByEndPoints>) =>
      assay.ok ? answer(assayReport(assay.value, assay.notes, ask.units)) : assay;
    const text = ask.text("alkalinity");
    if (text !== undefined) {
      const stated = readAlkalinity(text);
      if (stated === undefined) {
        ask.wrong(
          "--alkalinity",
          ownProblem("alkalinity.unreadable", { written: `"${text}"`, forms: alkalinityForms }),
        );
      }
      return () => told(assayed(stated ?? { as: "Na2CO3", percent: "1" }, composition, water));
    }
    const millilitres = ask.quantity("acid", ["volume"]).value;
    const sample = ask.quantity("sample", ["mass"]).value;
    const read = readNormality(ask.text("normality") ?? "");
    if (read === undefined) {
      ask.wrong(
        "--normality",
        ownProblem("normality.unreadable", { written: `"${ask.text("normality") ?? "nothing"}"` }),
      );
    }
    const normality = read ?? "1";
    const phenolphthalein = ask.maybe("phenolphthalein", ["volume"])?.value;
    return () => {
      if (phenolphthalein === undefined)
        return told(assayed({ acid: { millilitres, normality, sample } }, composition, water));
      const potassium = potassiumOf(composition);
      return told(splitByEndPoints({ phenolphthalein, total: millilitres, normality, sample, potassium, water }));
    };
  },
});
