import * as z from "zod";
import type { Allergen } from "./allergens.ts";
import { basisField, numberField, priceField, quantityField, shareField, stockField } from "./fields.ts";

/** Kinds of material a kitchen may describe for itself. */
export const materialKinds = [
  "flour",
  "starch",
  "gluten",
  "bran",
  "egg",
  "salt",
  "alkali",
  "fat",
  "water",
  "other",
] as const;

/** Allergen tags that a material may carry; the lists of the jurisdictions are read off them. */
export const allergenTags = [
  "wheat",
  "rye",
  "barley",
  "oats",
  "buckwheat",
  "egg",
  "milk",
  "soy",
  "sesame",
  "peanut",
  "tree nut",
  "walnut",
  "fish",
  "crustacean",
  "mollusc",
  "celery",
  "mustard",
  "lupin",
  "sulphite",
] as const satisfies readonly Allergen[];

const part = z.union([z.string(), z.number()]);

/** Figures of a material, as a certificate, a label or the kitchen states them. */
export const materialFiguresSchema = z
  .strictObject({
    like: z
      .string()
      .min(1)
      .optional()
      .meta({
        description: "Catalogue material to start from; the figures given here replace its own",
        examples: ["bread flour"],
      }),
    kind: z.enum(materialKinds).optional().meta({ description: "Kind of material; flour unless stated" }),
    moisture: shareField("Moisture, % of the material as weighed", ["13.6 %"]).optional(),
    protein: shareField("Protein, % on the stated basis", ["12.4 %"]).optional(),
    proteinBasis: basisField("Moisture basis of the protein; 14 % mb for flours, as is for all else").optional(),
    nitrogenFactor: numberField(
      "Nitrogen factor of the protein; 5.7 for flours, 6.25 for all else unless stated",
      [5.7, 6.25],
      { above: 4, most: 7 },
    ).optional(),
    ash: shareField("Ash, % on the stated basis", ["0.48 %"]).optional(),
    ashBasis: basisField("Moisture basis of the ash; 14 % mb for flours, as is for all else").optional(),
    fat: shareField("Fat, % as is", ["1.2 %"]).optional(),
    carbohydrate: shareField("Carbohydrate with fibre, % as is", ["72 %"]).optional(),
    fibre: shareField("Dietary fibre, % as is", ["2.4 %"]).optional(),
    sodium: quantityField(["mass"], "Sodium in 100 g as is", ["2 mg"], {
      least: "0",
      words: "zero or more",
    }).optional(),
    potassium: quantityField(["mass"], "Potassium in 100 g as is", ["110 mg"], {
      least: "0",
      words: "zero or more",
    }).optional(),
    glutenForming: z.boolean().optional().meta({
      description: "Whether its protein forms gluten, as that of wheat does; true for kinds flour and gluten",
    }),
    wholegrain: z.boolean().optional().meta({ description: "Whether it is the whole grain; false unless stated" }),
    allergens: z
      .array(z.enum(allergenTags))
      .optional()
      .meta({ description: "Allergens it contains, as the supplier declares them; leave out when not known" }),
    price: priceField("What it costs").optional(),
    stock: stockField("What there is of it in the store", ["12 kg"]).optional(),
    composition: z
      .record(z.string(), part)
      .optional()
      .meta({
        description:
          "What an alkaline product or a salt is made of, % of the product: formulas such as Na2CO3, K2CO3, Na2CO3.10H2O, with water and inert; one may be rest",
        examples: [{ K2CO3: "18 %", Na2CO3: "12 %", water: "rest" }],
      }),
    source: z
      .string()
      .max(200)
      .optional()
      .meta({ description: "Where the figures come from", examples: ["certificate of lot 2214"] }),
  })
  .meta({ id: "MaterialFigures", description: "A material described by its own figures" });

/** Figures of a material as read. */
export type MaterialFigures = z.output<typeof materialFiguresSchema>;

/** A kitchen's own materials by name. */
export const ownMaterialsSchema = z
  .record(z.string().min(1).max(80), materialFiguresSchema)
  .meta({ description: "The kitchen's own materials, by name" });

/** A file of the kitchen's own materials, which specs include. */
export const materialsFileSchema = z
  .strictObject({ materials: ownMaterialsSchema })
  .meta({ id: "MaterialsFile", description: "A file of the kitchen's own materials" });
