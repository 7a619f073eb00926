import { askLot } from "@noodlewright/core";
import { usualHold } from "@noodlewright/core/explore";
import { lotChanges } from "@noodlewright/core/spec";
import { atFlag, printAnswer } from "../shared/ask-noodle.ts";
import { searchFlags, searchOverrides, searchValues } from "../shared/blend-flags.ts";
import type { Command } from "../shared/command.ts";
import type { ValueFlags } from "../shared/flag-values.ts";
import { specFlags } from "../shared/flags.ts";
import { writeFlags } from "../shared/write-spec.ts";

const figure = (key: string, describe: string, placeholder: string, group?: string): ValueFlags[string] => ({
  describe,
  placeholder,
  path: ["lot", "figures", ...(group === undefined ? [] : [group]), key],
});

const certificate: ValueFlags = {
  of: { describe: "The flour that the new lot follows", placeholder: "bread flour", path: ["lot", "of"] },
  protein: figure("protein", "Protein of the new lot", "11.8 %"),
  "protein-basis": figure("proteinBasis", "Moisture basis of it", "14 % mb"),
  "protein-uncertainty": figure("proteinUncertainty", "How far it may be off, ±", "0.3 %"),
  moisture: figure("moisture", "Moisture of the new lot", "14.4 %"),
  "moisture-uncertainty": figure("moistureUncertainty", "How far it may be off, ±", "0.2 %"),
  ash: figure("ash", "Ash of the new lot", "0.52 %"),
  "ash-basis": figure("ashBasis", "Moisture basis of it", "14 % mb"),
  "lot-number": figure("lotNumber", "Number of the new lot", "L2298", "recorded"),
  "best-before": figure("bestBefore", "Best-before date of it", "2027-05-01", "recorded"),
  "wet-gluten": figure("wetGluten", "Wet gluten of it, kept on record", "28.5 %", "recorded"),
  "farinograph-absorption": figure("farinographAbsorption", "By the farinograph, kept on record", "61 %", "recorded"),
  "falling-number": figure("fallingNumber", "Falling number of it, kept on record", "340 s", "recorded"),
  "starch-damage": figure("starchDamage", "Starch damage of it, kept on record", "5.5 %", "recorded"),
  absorption: figure("absorption", "Added water the new lot takes, the kitchen's own", "36 %"),
};

/** `noodlewright lot`: the blend and the water for a new lot of a flour. */
export const lotCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: {
    ...certificate,
    hold: {
      describe:
        "What the new blend keeps, of protein, ash, gluten protein; also `ash or less`, `gluten protein or more`",
      placeholder: "protein, ash",
      fallback: usualHold.join(", "),
    },
    ...searchFlags,
    ...writeFlags,
    ...specFlags,
  },
  examples: [
    [
      "noodlewright lot noodle.yaml --of 'bread flour' --protein '11.8 %' --moisture '14.4 %'",
      "figures of the certificate",
    ],
    ["noodlewright lot noodle.yaml", "the lot that the spec describes under lot:"],
    ["noodlewright lot noodle.yaml --write", "makes the new lot the flour in use: its figures, the blend, the water"],
  ],
  run: (asked, io) => {
    const hold = asked.text("hold");
    return printAnswer(
      {
        ask: (noodle) => askLot(noodle, hold === undefined ? {} : { hold }),
        overrides: searchOverrides({ ...certificate, ...searchValues }, asked),
        found: ({ answer }) => answer.kind === "found",
        changes: (substitution, noodle) => lotChanges(noodle, substitution),
        place: atFlag("hold"),
      },
      asked,
      io,
    );
  },
};
