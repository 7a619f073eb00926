import { bakeDose, bakedSalt, bakeReport, idealBakeReport, idealYield } from "@noodlewright/core/chemistry";
import { answer } from "@noodlewright/core/figure";
import { ownProblem } from "../../input/problem.ts";
import type { Asking } from "./asking.ts";
import { memberFlags, productHelp } from "./flags.ts";
import { member } from "./member.ts";

const salts = { "baking soda": "NaHCO3", "potassium bicarbonate": "KHCO3" } as const;

/** `noodlewright alkali bake`: bicarbonate in the oven, how far it went, and how much of it meets a dose. */
export const bakeCommand = member({
  positionals: {},
  flags: {
    salt: { describe: "What went into the oven", choices: Object.keys(salts), fallback: "baking soda" },
    before: { describe: "Its mass before, without the tray", placeholder: "500 g" },
    after: { describe: "Its mass after, without the tray", placeholder: "320 g" },
    moisture: { describe: "Water it took up again before it was weighed", placeholder: "4 g" },
    assay: { describe: "Bicarbonate in what went in", placeholder: "99.5 %" },
    for: {
      describe: `Product that a formula asks for, to weigh the baked salt in its place: ${productHelp}`,
      placeholder: "potassium carbonate",
    },
    dose: { describe: "Dose of that product", placeholder: "40 g" },
    materials: memberFlags.materials,
    format: memberFlags.format,
    working: memberFlags.working,
    figure: memberFlags.figure,
    units: memberFlags.units,
    table: memberFlags.table,
  },
  examples: {
    "noodlewright alkali bake": "what a full conversion leaves",
    "noodlewright alkali bake --before '500 g' --after '318 g'": "how far it went",
    "noodlewright alkali bake --before '500 g' --after '330 g' --for 'potassium carbonate' --dose '40 g'":
      "how much of it does for a written dose",
  },
  read: (ask) => {
    const salt = ask.text("salt") === "potassium bicarbonate" ? salts["potassium bicarbonate"] : salts["baking soda"];
    const weighed = ["before", "after", "moisture", "assay", "for", "dose"].some(
      (flag) => ask.text(flag) !== undefined,
    );
    const { units } = ask;
    if (!weighed) return () => answer(idealBakeReport(salt, idealYield(salt), units));
    const moisture = ask.maybe("moisture", ["mass"])?.value;
    const assay = ask.maybe("assay", ["share"])?.value;
    const before = ask.quantity("before", ["mass"]).value;
    const after = ask.quantity("after", ["mass"]).value;
    const wanted = wantedOf(ask);
    return () => {
      const more = { ...(moisture !== undefined && { moisture }), ...(assay !== undefined && { assay }) };
      const baked = bakedSalt({ salt, before, after, ...more });
      if (!baked.ok) return baked;
      if (wanted === undefined) return answer(bakeReport(baked.value, baked.notes, undefined, units));
      const dose = bakeDose(baked.value, wanted);
      return dose.ok ? answer(bakeReport(baked.value, [...baked.notes, ...dose.notes], dose.value, units)) : dose;
    };
  },
});

/** The dose to meet, where one is asked for: a mass alone does not say of which salt. */
function wantedOf(ask: Asking) {
  if (ask.text("for") === undefined && ask.text("dose") === undefined) return undefined;
  if (ask.text("for") === undefined) {
    ask.wrong(
      "--for",
      ownProblem("flag.missing", { wanted: "the product that the dose is of", example: "--for 'sodium carbonate'" }),
    );
    return undefined;
  }
  return { ...ask.product(ask.text("for"), "--for"), mass: ask.quantity("dose", ["mass"]).value };
}
