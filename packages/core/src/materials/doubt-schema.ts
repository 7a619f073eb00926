import * as z from "zod";
import { massField, numberField, quantityField } from "./fields.ts";

/** An error without its sign, in %. */
export function plusMinusField(description: string, examples: readonly string[], most = "20") {
  return quantityField(["share"], description, examples, { least: "0", most, words: `a share from 0 to ${most} %` });
}

const labelSchema = z.lazy(() =>
  z
    .strictObject({
      protein: z
        .union([z.string().trim().min(1).max(20), z.number().nonnegative()])
        .transform(String)
        .meta({ description: "Protein as the label prints it", examples: ["4 g", "<1 g"] }),
      serving: massField("What the printed protein is for; 100 g in the EU and in Japan unless stated", [
        "30 g",
      ]).optional(),
      servingRounded: z.boolean().optional().meta({
        description: "Whether the serving may be off by half its last digit; false unless stated",
      }),
      rules: z.enum(["US", "EU", "JP"]).meta({
        description:
          "Rule book the label was rounded by: US 21 CFR 101.9, EU guidance of 2012, or the standard of Japan",
      }),
      nitrogenFactor: numberField(
        "Nitrogen factor behind the label; 6.25 in the EU, any from 5.7 to 6.25 elsewhere unless stated",
        [6.25],
        { above: 4, most: 7 },
      ).optional(),
    })
    .meta({
      id: "ProteinLabel",
      description: "The protein line of a nutrition label, in place of the protein",
    }),
);

export type LabelFigures = z.output<typeof labelSchema>;

/** What is known of a material without being exact. */
export const doubtFields = {
  label: z
    .union([labelSchema, z.array(labelSchema).min(1).max(6)])
    .optional()
    .meta({
      description:
        "The protein line of the nutrition label, or of several labels of the same flour, in place of protein",
      examples: [{ protein: "4 g", serving: "30 g", rules: "US" }],
    }),
  proteinUncertainty: plusMinusField("How far the stated protein may be off, ± in % of the flour", [
    "0.3 %",
  ]).optional(),
  moistureUncertainty: plusMinusField("How far the moisture may be off, ± in % of the material", ["0.2 %"]).optional(),
  strengthUncertainty: plusMinusField("How far the strength of an alkaline product may be off, ± in % of it", [
    "2 %",
  ]).optional(),
  absorption: quantityField(
    ["share"],
    "Added water that noodle dough of this flour alone takes at its moisture, the kitchen's own, % of it",
    ["36 %"],
    {
      least: "0",
      most: "300",
      words: "a share from 0 to 300 % of the flour",
    },
  ).optional(),
  absorptionUncertainty: plusMinusField("How far the absorption may be off, ± in % of the flour; 0.5 % unless stated", [
    "0.5 %",
  ]).optional(),
};
