import * as z from "zod";
import { plusMinusField } from "../materials/doubt-schema.ts";
import {
  amountField,
  amountOrRestField,
  massField,
  numberField,
  priceField,
  quantityField,
  shareField,
  stockField,
} from "../materials/fields.ts";
import { ownMachinesSchema } from "../materials/machine-schema.ts";
import { materialFiguresSchema, ownMaterialsSchema } from "../materials/schema.ts";
import { acceptable, mostParts } from "./believed.ts";
import { lotSchema, shelfSchema, wantedSchema } from "./blend-schema.ts";
import { planSchema, temperatureSchema } from "./day-schema.ts";
import { sheetSchema } from "./sheet-schema.ts";

const nameField = (what: string, example: string) =>
  z
    .string()
    .trim()
    .min(1)
    .max(80)
    .meta({
      description: `${what}: a name of the catalogue or of the kitchen's own materials`,
      examples: [example],
    });

const figures = materialFiguresSchema.optional().meta({
  description: "Own figures of this material; over a name of the catalogue they replace only what they state",
});

const flourSchema = z
  .strictObject({
    name: nameField("Flour, starch or gluten", "bread flour"),
    amount: amountOrRestField(
      "Share of the flour, or its mass; one flour may be rest; find where `wanted:` says what it is to come to",
      ["70 %", "350 g", "rest", "find"],
    ),
    least: shareField("Smallest share, where it is to be found", ["20 %"]).optional(),
    most: shareField("Greatest share, where it is to be found", ["40 %"]).optional(),
    figures,
  })
  .meta({
    id: "Flour",
    description: "One of the flours, starches or glutens that make up the 100 parts",
  });

const ingredientSchema = z.lazy(() =>
  z
    .strictObject({
      name: nameField("Ingredient", "whole egg"),
      amount: amountField("Amount in % of flour, or its mass", ["5 %", "60 g"]),
      figures,
    })
    .meta({ id: "Ingredient", description: "Anything else in the dough; its water counts" }),
);

const alkaliSchema = z
  .strictObject({
    name: nameField("Alkaline product", "sodium carbonate"),
    amount: quantityField(
      ["share", "mass", "alkalinity"],
      "Dose: % of flour or a mass; for alkalinity, % of flour as Na2CO3 or meq per 100 g flour; find where `wanted:` says what it is to come to",
      ["0.9 %", "4.5 g", "17 meq", "find"],
      {
        least: "0",
        most: mostParts.alkali,
        mostOther: { alkalinity: "1000" },
        words: `at most ${mostParts.alkali} % of flour, or 1000 meq per 100 g flour`,
      },
    ),
    as: z
      .enum(["product", "anhydrous salts", "alkalinity"])
      .optional()
      .meta({ description: "What the dose states; product unless said otherwise" }),
    figures,
    replaceWith: z
      .union([
        nameField("Product", "potassium carbonate"),
        z.array(nameField("Product", "potassium carbonate")).min(1).max(2),
      ])
      .optional()
      .meta({
        description:
          "One product, or a list of two, to take its place; its water is taken off the tap water. Two products hold both alkalinities where they can, or else the ratio of sodium to potassium as well",
        examples: ["potassium carbonate", ["sodium carbonate", "potassium carbonate"]],
      }),
    holding: z
      .enum(["anhydrous salts", "alkalinity M", "alkalinity P", "sodium and potassium"])
      .optional()
      .meta({ description: "What the replacement keeps exactly; alkalinity M unless stated" }),
  })
  .meta({ id: "Alkali", description: "An alkaline product and its dose" });

const waterSchema = z
  .strictObject({
    added: amountField(
      "All water that is not the flour's own: tap water and the water of eggs, solutions, hydrates; find where `wanted:` says what it is to come to",
      ["36 %", "find"],
    ).optional(),
    tap: amountField("Water poured in, as a written formula states it", ["34 %", "170 g"]).optional(),
    dough: quantityField(["share"], "All water, the flour's own included, % of the dough", ["36 %"], {
      above: "0",
      most: "70",
      words: "a share above 0 and at most 70 % of the dough",
    }).optional(),
    onFlourMoisture: shareField(
      "Flour moisture the formula was written on: every amount in % of flour is taken on flour of this moisture, and the dough keeps its dry matter and its water whatever the flour at hand",
      ["14 %"],
      "40",
    ).optional(),
  })
  .meta({ id: "Water", description: "Water, stated in one way: added, tap or dough" });

const reworkSchema = z.lazy(() =>
  z
    .strictObject({
      amount: quantityField(
        ["share", "mass"],
        "Rework in % of the dough in the mixer, rework and new dough together; or its mass in the whole batch, shared equally by the loads",
        ["8 %", "1.2 kg"],
        { least: "0", most: "90", words: "at most 90 % of the dough in the mixer, or a mass of at most 1000 tonnes" },
      ),
      most: shareField(
        "The kitchen's own greatest share, % of the dough in the mixer; more is refused",
        ["10 %"],
        "90",
      ).optional(),
      oldest: quantityField(["time"], "The kitchen's own greatest age of rework, told with it", ["1 d"], {
        above: "0",
        most: "604800",
        words: "a time above zero and at most 7 d",
      }).optional(),
    })
    .meta({
      id: "Rework",
      description: "Trimmings of the same dough that go into the next; they change nothing in the formula",
    }),
);

const lossesSchema = z.lazy(() =>
  z
    .strictObject({
      mixing: shareField("Lost at the mixer, % of the dough mixed", ["0.5 %"], "90").optional(),
      sheeting: shareField("Lost at the rolls and as trim, % of what reaches the rolls", ["3 %"], "90").optional(),
      cutting: shareField("Lost at the cutter, % of what reaches it", ["1 %"], "90").optional(),
      uncertainty: plusMinusField(
        "How far each stated loss may be off, ± in % of what enters the stage; not in question unless stated",
        ["0.5 %"],
        "50",
      ).optional(),
    })
    .meta({
      id: "Losses",
      description: "Losses by stage, each in % of what enters it; none unless stated",
    }),
);

const batchSchema = z.lazy(() =>
  z
    .strictObject({
      bowls: z
        .int()
        .min(1)
        .max(1_000_000)
        .optional()
        .meta({ description: "Number of bowls", examples: [320] }),
      rawWeight: massField("Raw strands in a bowl", ["130 g"]).optional(),
      cookedWeight: massField("Cooked noodles in a bowl", ["230 g"]).optional(),
      cookGain: numberField("Cooked weight over raw weight; 1.8 unless stated", [1.8], {
        above: 0.5,
        most: 5,
      }).optional(),
      dough: massField("Dough in the mixer, before any loss", ["12 kg"]).optional(),
      flour: massField("Flour as weighed", ["10 kg"]).optional(),
      load: z
        .enum(["largest", "smallest"])
        .optional()
        .meta({ description: "One mixer load, the largest or the smallest the mixer takes" }),
      have: z
        .strictObject({
          name: nameField("Ingredient", "bread flour"),
          amount: massField("What there is of it", ["3.2 kg"]),
        })
        .optional()
        .meta({ description: "The batch that uses up what there is of one ingredient" }),
    })
    .meta({ id: "Batch", description: "Size of the batch, stated in one way" }),
);

const mixerSchema = z.lazy(() =>
  z
    .strictObject({
      smallest: massField("Smallest load that mixes well", ["2 kg"]).optional(),
      largest: massField("Largest load the mixer takes", ["10 kg"]),
      of: z.enum(["flour", "dough"]).optional().meta({ description: "What the limits weigh; dough unless stated" }),
    })
    .meta({ id: "Mixer", description: "The mixer's limits" }),
);

const scaleSchema = z.lazy(() =>
  z
    .strictObject({
      name: z.string().trim().min(1).max(40).optional().meta({ description: "What the kitchen calls it" }),
      division: massField("Smallest step it shows", ["1 g", "0.1 oz"]),
      capacity: massField("Most it weighs", ["15 kg"]).optional(),
      error: massField("How far a weight on it may be off, ±; half a division unless stated", ["2 g"]).optional(),
    })
    .meta({ id: "Scale", description: "A scale" }),
);

/** The noodle spec: what a cook writes. Types, validation and JSON Schema come from here. */
export const specSchema = z
  .strictObject({
    name: z
      .string()
      .trim()
      .min(1)
      .max(120)
      .meta({ description: "Name of the noodle", examples: ["Weekday noodle"] }),
    notes: z.string().max(4000).optional().meta({ description: "Anything worth remembering" }),
    include: z.array(z.string().min(1)).max(20).optional().meta({
      description: "Files of the kitchen's own materials and machines, relative to this file",
    }),
    materials: ownMaterialsSchema.optional(),
    flours: z.array(flourSchema).min(1).max(40).meta({ description: "The flours, which make up the 100 parts" }),
    shelf: shelfSchema.optional(),
    wanted: wantedSchema.optional(),
    lot: lotSchema.optional(),
    style: z
      .string()
      .trim()
      .min(1)
      .max(40)
      .optional()
      .meta({
        description: "Style of the noodle; the formula gets a note where it is outside what is published for it",
        examples: ["ramen", "hokkien"],
      }),
    water: waterSchema,
    alkali: z.array(alkaliSchema).max(20).optional().meta({ description: "Alkaline products" }),
    salt: amountField(
      "Table salt in % of flour, or its mass; find where `wanted:` says what it is to come to",
      ["1 %", "10 g", "find"],
      mostParts.salt,
    ).optional(),
    accept: z
      .array(z.enum(acceptable))
      .max(acceptable.length)
      .optional()
      .meta({
        description:
          "Doses that are meant although they are refused otherwise: high alkali is more than 5 % of anhydrous salts on flour, high salt more than 10 %",
        examples: [["high salt"]],
      }),
    ingredients: z
      .array(ingredientSchema)
      .max(60)
      .optional()
      .meta({ description: "Egg, oil, colour and anything else in the dough" }),
    dusting: ingredientSchema.optional().meta({
      description: "Starch or flour for dusting, in % of flour; not in the dough",
      examples: [{ name: "cornstarch", amount: "1.5 %" }],
    }),
    rework: reworkSchema.optional(),
    batch: batchSchema.optional(),
    losses: lossesSchema.optional(),
    mixer: mixerSchema.optional(),
    scales: z.array(scaleSchema).min(1).max(10).optional().meta({ description: "The scales at hand" }),
    prices: z
      .record(z.string().trim().min(1).max(80), priceField("Price of a pack or of a weight"))
      .optional()
      .meta({
        description: "Prices by ingredient, before those of the materials; tap water costs nothing unless stated",
        examples: [{ "table salt": "0.60 EUR/kg", "whole egg": "3.20 EUR per 600 g" }],
      }),
    stock: z
      .record(z.string().trim().min(1).max(80), stockField("What there is of it", ["12 kg"]))
      .optional()
      .meta({
        description: "What is in the store, by ingredient, before what the materials state",
        examples: [{ "table salt": "2 kg" }],
      }),
    machines: ownMachinesSchema.optional(),
    sheet: sheetSchema.optional(),
    plan: planSchema.optional(),
    temperature: temperatureSchema.optional(),
    weighingTolerance: quantityField(
      ["share"],
      "Most that rounding to the scale may be off before a warning; 1 % unless stated",
      ["1 %"],
      { above: "0", most: "100", words: "a share above 0 and at most 100 %" },
    ).optional(),
  })
  .meta({ id: "Spec", description: "A noodle spec: the formula, and the kitchen it is made in" });

/** A spec as read: quantities in base units, names as written. */
export type Spec = z.output<typeof specSchema>;

/** A spec as written. */
export type SpecInput = z.input<typeof specSchema>;

export type SpecAlkali = z.output<typeof alkaliSchema>;
export type Holding = NonNullable<SpecAlkali["holding"]>;
