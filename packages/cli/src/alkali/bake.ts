import { answer, bakeDose, bakedSalt, bakeReport, idealBakeReport } from "@noodlewright/core";
import { memberFlags } from "./flags.ts";
import { member } from "./member.ts";

const salts = { "baking soda": "NaHCO3", "potassium bicarbonate": "KHCO3" } as const;

/** `noodlewright alkali bake`: bicarbonate in the oven, how far it went, and how much of it meets a dose. */
export const bakeCommand = member({
  positionals: {},
  flags: {
    salt: { describe: "What went into the oven", kind: "text", choices: Object.keys(salts), fallback: "baking soda" },
    before: { describe: "Its mass before, without the tray", kind: "text", placeholder: "500 g" },
    after: { describe: "Its mass after, without the tray", kind: "text", placeholder: "320 g" },
    moisture: { describe: "Water it took up again before it was weighed", kind: "text", placeholder: "4 g" },
    assay: { describe: "Bicarbonate in what went in", kind: "text", placeholder: "99.5 %" },
    for: {
      describe: "Carbonate that a formula asks for: tells how much of the baked salt to weigh",
      kind: "text",
      placeholder: "40 g",
    },
    materials: memberFlags.materials,
    format: memberFlags.format,
    working: memberFlags.working,
    figure: memberFlags.figure,
    units: memberFlags.units,
    table: memberFlags.table,
  },
  examples: [
    ["noodlewright alkali bake", "what a full conversion leaves"],
    ["noodlewright alkali bake --before '500 g' --after '318 g'", "how far it went"],
    [
      "noodlewright alkali bake --before '500 g' --after '330 g' --for '40 g'",
      "baked soda to a written sodium carbonate dose",
    ],
  ],
  read: (ask) => {
    const salt = ask.text("salt") === "potassium bicarbonate" ? salts["potassium bicarbonate"] : salts["baking soda"];
    const weighed = ["before", "after", "moisture", "assay", "for"].some((flag) => ask.text(flag) !== undefined);
    if (!weighed) return { salt };
    const moisture = ask.maybe("moisture", ["mass"])?.value;
    const assay = ask.maybe("assay", ["share"])?.value;
    return {
      salt,
      bake: {
        salt,
        before: ask.quantity("before", ["mass"]).value,
        after: ask.quantity("after", ["mass"]).value,
        ...(moisture !== undefined && { moisture }),
        ...(assay !== undefined && { assay }),
      },
      wanted: ask.maybe("for", ["mass"])?.value,
      units: ask.units,
    };
  },
  answer: ({ salt, bake, wanted, units }) => {
    if (bake === undefined) return answer(idealBakeReport(salt));
    const baked = bakedSalt(bake);
    if (!baked.ok) return baked;
    if (wanted === undefined) return answer(bakeReport(baked.value, baked.notes));
    const dose = bakeDose(baked.value, salt, wanted);
    return dose.ok ? answer(bakeReport(baked.value, [...baked.notes, ...dose.notes], dose.value, units)) : dose;
  },
});
