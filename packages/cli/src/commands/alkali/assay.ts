import type { UnitSystem } from "@noodlewright/core";
import {
  alkalinityForms,
  assayed,
  assayReport,
  type Product,
  potassiumOf,
  readAlkalinity,
  readNormality,
  type StatedAlkalinity,
  splitByEndPoints,
} from "@noodlewright/core/chemistry";
import { answer, type DecimalText } from "@noodlewright/core/figure";
import { ownProblem } from "../../input/problem.ts";
import { memberFlags } from "./flags.ts";
import { member } from "./member.ts";

interface Question {
  readonly salts: Product;
  readonly water: DecimalText;
  readonly stated: StatedAlkalinity;
  readonly units: UnitSystem;
  /** mL to the end of phenolphthalein, and the whole titration */
  readonly first?: DecimalText;
  readonly acid?: { readonly millilitres: DecimalText; readonly normality: DecimalText; readonly sample: DecimalText };
}

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
  examples: [
    ["noodlewright alkali assay 'Na2CO3 9, K2CO3 1' --alkalinity '96 % as Na2CO3' --water '1 %'", "from a certificate"],
    ["noodlewright alkali assay Na2CO3 --acid '37.4 mL' --normality '1 N' --sample '2 g'", "from a titration"],
    [
      "noodlewright alkali assay Na2CO3 --acid '36 mL' --phenolphthalein '17 mL' --normality '1 N' --sample '2 g'",
      "from both end points: hydroxide, carbonate and bicarbonate",
    ],
  ],
  read: (ask): Question => {
    const salts = ask.product(ask.text("salts"), "<salts>");
    const water = ask.maybe("water", ["share"])?.value ?? "0";
    const text = ask.text("alkalinity");
    if (text !== undefined) {
      const stated = readAlkalinity(text);
      if (stated === undefined) {
        ask.wrong(
          "--alkalinity",
          ownProblem("alkalinity.unreadable", { written: `"${text}"`, forms: alkalinityForms }),
        );
      }
      return { salts, water, units: ask.units, stated: stated ?? { as: "Na2CO3", percent: "1" } };
    }
    const millilitres = ask.quantity("acid", ["volume"]).value;
    const sample = ask.quantity("sample", ["mass"]).value;
    const normality = readNormality(ask.text("normality") ?? "");
    if (normality === undefined) {
      ask.wrong(
        "--normality",
        ownProblem("normality.unreadable", { written: `"${ask.text("normality") ?? "nothing"}"` }),
      );
    }
    const acid = { millilitres, normality: normality ?? "1", sample };
    const first = ask.maybe("phenolphthalein", ["volume"])?.value;
    return { salts, water, units: ask.units, stated: { acid }, ...(first !== undefined && { first, acid }) };
  },
  answer: ({ salts, water, stated, first, acid, units }) => {
    if (first === undefined || acid === undefined) {
      const outcome = assayed(stated, salts.composition, water);
      return outcome.ok ? answer(assayReport(outcome.value, outcome.notes, units)) : outcome;
    }
    const { normality, sample } = acid;
    const potassium = potassiumOf(salts.composition);
    const ends = { phenolphthalein: first, total: acid.millilitres, normality, sample, potassium, water };
    const outcome = splitByEndPoints(ends);
    return outcome.ok ? answer(assayReport(outcome.value, outcome.notes, units)) : outcome;
  },
});
