import * as z from "zod/mini";
import {
  described,
  massField,
  numberField,
  optional,
  quantityField,
  section,
  shareField,
  textOrNumber,
} from "./fields.ts";

/** An error without its sign, in %. */
export function plusMinusField(description: string, examples: readonly string[], most = "20") {
  return shareField(description, examples, most);
}

const labelSchema = section(
  { id: "ProteinLabel", description: "The protein line of a nutrition label, in place of the protein" },
  () => ({
    protein: textOrNumber(20, "Protein as the label prints it", ["4 g", "<1 g"]),
    serving: z.optional(
      massField("What the printed protein is for; 100 g in the EU and in Japan unless stated", ["30 g"]),
    ),
    servingRounded: optional(z.boolean(), "Whether the serving may be off by half its last digit; false unless stated"),
    rules: described(z.enum(["US", "EU", "JP"]), {
      description: "Rule book the label was rounded by: US 21 CFR 101.9, EU guidance of 2012, or the standard of Japan",
    }),
    nitrogenFactor: z.optional(
      numberField(
        "Nitrogen factor behind the label; 6.25 in the EU, any from 5.7 to 6.25 elsewhere unless stated",
        [6.25],
        { above: 4, most: 7 },
      ),
    ),
  }),
);

export type LabelFigures = z.output<typeof labelSchema>;

/** What is known of a material without being exact. */
export const doubtFields = () => ({
  label: optional(
    z.union([labelSchema, z.array(labelSchema).check(z.minLength(1), z.maxLength(6))]),
    "The protein line of the nutrition label, or of several labels of the same flour, in place of protein",
    [{ protein: "4 g", serving: "30 g", rules: "US" }],
  ),
  proteinUncertainty: z.optional(
    plusMinusField("How far the stated protein may be off, ± in % of the flour", ["0.3 %"]),
  ),
  moistureUncertainty: z.optional(plusMinusField("How far the moisture may be off, ± in % of the material", ["0.2 %"])),
  strengthUncertainty: z.optional(
    plusMinusField("How far the strength of an alkaline product may be off, ± in % of it", ["2 %"]),
  ),
  absorption: z.optional(
    quantityField(
      ["share"],
      "Added water that noodle dough of this flour alone takes at its moisture, the kitchen's own, % of it",
      ["36 %"],
      { least: "0", most: "300", after: " of the flour" },
    ),
  ),
  absorptionUncertainty: z.optional(
    plusMinusField("How far the absorption may be off, ± in % of the flour; 0.5 % unless stated", ["0.5 %"]),
  ),
});
