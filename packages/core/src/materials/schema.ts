import * as z from "zod/mini";
import { problem } from "../figure/problem.ts";
import { allergenTags } from "./allergen.ts";
import { doubtFields } from "./doubt-schema.ts";
import {
  basisField,
  celsius,
  described,
  massField,
  numberField,
  optional,
  priceField,
  quantityField,
  readAs,
  readOrRefused,
  section,
  shareField,
  stockField,
  written,
} from "./fields.ts";
import { ownMachinesSchema } from "./machine-schema.ts";
import { materialKinds } from "./material.ts";
import { namedOnce } from "./named-once.ts";
import { eachStated, nutrients } from "./nutrients.ts";
import { recordedSchema } from "./recorded.ts";
import { moduli, readModulus } from "./strength-text.ts";

const partField = described(z.string(), { quantity: { dimensions: ["share"], rest: true } });

const salts = readAs(
  z.union([z.record(z.string(), z.number().check(z.nonnegative())), written.check(z.maxLength(60))]),
  (stated): Readonly<Record<string, number>> => (typeof stated === "string" ? { [stated]: 1 } : stated),
  {
    description:
      "One salt, or the salts and their parts, by the mass of the anhydrous salts unless ratioBy says otherwise",
    examples: [{ K2CO3: 6, Na2CO3: 4 }, "K2CO3"],
  },
);

const solutionSchema = section(
  { id: "Solution", description: "A solution by its salts and its strength; the rest is water" },
  () => ({
    salts,
    ratioBy: optional(
      z.enum(["anhydrous", "as weighed"]),
      "What the parts and a strength by mass count: salts without crystal water, or salts as weighed; anhydrous unless stated, and asked for where salts with crystal water are among them",
    ),
    strength: described(written.check(z.maxLength(40)), {
      description:
        "Strength: by mass (%), % w/v, g/L, mol/L, mol/kg of water, density in g/mL, °Bé, or parts of salts to parts of water",
      examples: ["30 °Bé", "20 %", "15 % w/v", "250 g/L", "1.2 mol/L", "1.25 g/mL", "1 to 3"],
    }),
    modulus: optional(
      readOrRefused(
        z.union([z.number(), z.string()]),
        (input) => readModulus(String(input)),
        (written) => problem("materials.modulus", [], { written, moduli }),
        {},
      ),
      "Modulus of the degrees Baumé; 145 unless stated",
      [145, 144.3],
    ),
    temperature: z.optional(
      celsius(
        "Temperature of the volume, density or reading; 20 °C unless stated, for °Bé that of the hydrometer",
        "20 °C",
        "0",
        "40",
      ),
    ),
  }),
);

const certificateSchema = section(
  { id: "Certificate", description: "A product by its salts and its stated alkalinity; the rest is inert" },
  () => ({
    salts,
    alkalinity: described(written.check(z.maxLength(60)), {
      description: "Alkalinity as stated: in % as a substance, or the acid used for a sample",
      examples: ["98 % as Na2CO3", "37.4 mL of 1 N acid on 2 g"],
    }),
    water: z.optional(shareField("Water in the product; none unless stated", ["0.6 %"])),
  }),
);

const assaySchema = section(
  { id: "Assay", description: "A product of one salt by its assay; the rest is inert" },
  () => ({
    of: described(written.check(z.maxLength(30)), {
      description: "Formula of the salt",
      examples: ["Na2CO3", "Na2CO3.10H2O"],
    }),
    content: quantityField(
      ["share"],
      "Content of the salt; of the dried product where a loss on drying is stated",
      ["99.2 %"],
      { above: "0", most: "100" },
    ),
    lossOnDrying: z.optional(shareField("Loss on drying, % of the product", ["0.6 %"], "99")),
  }),
);

export type SolutionFigures = z.output<typeof solutionSchema>;
export type CertificateFigures = z.output<typeof certificateSchema>;
export type AssayFigures = z.output<typeof assaySchema>;

const toastedSchema = section(
  {
    id: "Toasted",
    description:
      "A flour that the kitchen dried or toasted: the figures beside are those before it, those after follow from the masses",
  },
  () => ({
    before: massField("Flour before it was dried or toasted", ["1000 g"]),
    after: massField("The same flour after it", ["940 g"]),
  }),
);

/** Figures of a material, as a certificate, a label or the kitchen states them. */
export const materialFiguresSchema = section(
  { id: "MaterialFigures", description: "A material described by its own figures" },
  () => ({
    like: optional(
      written.check(z.minLength(1)),
      "Catalogue material to start from; the figures given here replace its own",
      ["bread flour"],
    ),
    kind: optional(z.enum(materialKinds), "Kind of material; flour unless stated"),
    moisture: z.optional(shareField("Moisture, % of the material as weighed", ["13.6 %"])),
    protein: z.optional(shareField("Protein, % on the stated basis", ["12.4 %"])),
    proteinBasis: z.optional(
      basisField("Moisture basis of the protein; 14 % mb for flours, glutens, starches and brans, as is for all else"),
    ),
    nitrogenFactor: z.optional(
      numberField(
        "Nitrogen factor of the protein, or behind the label; 5.7 for flours, 6.25 for all else unless stated",
        [5.7, 6.25],
        { above: 4, most: 7 },
      ),
    ),
    ash: z.optional(shareField("Ash, % on the stated basis", ["0.48 %"])),
    ashBasis: z.optional(
      basisField("Moisture basis of the ash; 14 % mb for flours, glutens, starches and brans, as is for all else"),
    ),
    ...doubtFields(),
    toasted: z.optional(toastedSchema),
    recorded: z.optional(recordedSchema),
    ...eachStated((name, { description, example }) =>
      z.optional(
        nutrients[name].unit === "g"
          ? shareField(description, [example])
          : quantityField(["mass"], description, [example], { least: "0", words: "zero or more" }),
      ),
    ),
    glutenForming: optional(
      z.boolean(),
      "Whether its protein forms gluten, as that of wheat does; true for kinds flour and gluten",
    ),
    wholegrain: optional(z.boolean(), "Whether it is the whole grain; false unless stated"),
    allergens: optional(
      z.array(z.enum(allergenTags)),
      "Allergens it contains, as the supplier declares them: the kind where it is known, such as mackerel, or else fish; leave out when nothing is known",
    ),
    price: z.optional(priceField("What it costs")),
    stock: z.optional(stockField("What there is of it in the store", ["12 kg"])),
    composition: optional(
      z.record(z.string(), partField),
      "What an alkaline product or a salt is made of, % of the product: formulas such as Na2CO3, K2CO3, Na2CO3.10H2O, with water and inert; one may be rest",
      [{ K2CO3: "18 %", Na2CO3: "12 %", water: "rest" }],
    ),
    solution: optional(solutionSchema, "An alkaline solution by its salts and strength"),
    certificate: optional(certificateSchema, "An alkaline product by its stated alkalinity"),
    assay: optional(assaySchema, "An alkaline product of one salt by its assay"),
    source: optional(written.check(z.maxLength(200)), "Where the figures come from", ["certificate of lot 2214"]),
  }),
);

/** Figures of a material as read. */
export type MaterialFigures = z.output<typeof materialFiguresSchema>;

/** A kitchen's own materials by name. */
export const ownMaterialsSchema = described(
  z.record(written.check(z.minLength(1), z.maxLength(80)), materialFiguresSchema).check(namedOnce),
  {
    description: "The kitchen's own materials, by name",
    examples: [{ "house flour": { moisture: "13.6 %", protein: "12.4 %" } }],
  },
);

const kitchenFile = { description: "A file of the kitchen's own materials and machines" };

/** A kitchen file: the kitchen's own materials and machines, which specs include. */
export const kitchenFileSchema = described(
  z.strictObject({ materials: z.optional(ownMaterialsSchema), machines: z.optional(ownMachinesSchema) }),
  { id: "KitchenFile", ...kitchenFile },
);

/** A kitchen file of which only the materials are read. */
export const kitchenMaterialsSchema = described(
  z.strictObject({ materials: z.optional(ownMaterialsSchema), machines: z.optional(z.unknown()) }),
  kitchenFile,
);
