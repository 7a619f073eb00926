import { askLot } from "@noodlewright/core";
import { usualLotHold } from "@noodlewright/core/explore";
import { atFlag, specCommand } from "../shared/ask-noodle.ts";
import { holdFlag, searchFlags, searchOverrides, searchValues } from "../shared/blend-flags.ts";
import { flagsAt, type ValueFlags } from "../shared/flag-values.ts";
import { writeFlags } from "../shared/write-spec.ts";

const figure = flagsAt("lot", "figures");
const record = flagsAt("lot", "figures", "recorded");

const certificate: ValueFlags = {
  of: flagsAt("lot")("of", "The flour that the new lot follows", "bread flour"),
  protein: figure("protein", "Protein of the new lot", "11.8 %"),
  "protein-basis": figure("proteinBasis", "Moisture basis of it", "14 % mb"),
  "protein-uncertainty": figure("proteinUncertainty", "How far it may be off, ±", "0.3 %"),
  moisture: figure("moisture", "Moisture of the new lot", "14.4 %"),
  "moisture-uncertainty": figure("moistureUncertainty", "How far it may be off, ±", "0.2 %"),
  ash: figure("ash", "Ash of the new lot", "0.52 %"),
  "ash-basis": figure("ashBasis", "Moisture basis of it", "14 % mb"),
  "lot-number": record("lotNumber", "Number of the new lot", "L2298"),
  "best-before": record("bestBefore", "Best-before date of it", "2027-05-01"),
  "wet-gluten": record("wetGluten", "Wet gluten of it, kept on record", "28.5 %"),
  "farinograph-absorption": record("farinographAbsorption", "By the farinograph, kept on record", "61 %"),
  "falling-number": record("fallingNumber", "Falling number of it, kept on record", "340 s"),
  "starch-damage": record("starchDamage", "Starch damage of it, kept on record", "5.5 %"),
  absorption: figure("absorption", "Added water the new lot takes, the kitchen's own", "36 %"),
};

/** `noodlewright lot`: the blend and the water for a new lot of a flour. */
export const lotCommand = specCommand({
  flags: { ...certificate, ...holdFlag(usualLotHold), ...searchFlags, ...writeFlags },
  examples: {
    "noodlewright lot noodle.yaml --of 'bread flour' --protein '11.8 %' --moisture '14.4 %'":
      "figures of the certificate",
    "noodlewright lot noodle.yaml": "the lot that the spec describes under lot:",
    "noodlewright lot noodle.yaml --write": "makes the new lot the flour in use: its figures, the blend, the water",
  },
  question: (asked) => {
    const hold = asked.text("hold");
    return {
      ask: (noodle) => askLot(noodle, hold === undefined ? {} : { hold }),
      overrides: searchOverrides({ ...certificate, ...searchValues }, asked),
      found: ({ answer }) => answer.kind === "found",
      place: atFlag("hold"),
    };
  },
});
