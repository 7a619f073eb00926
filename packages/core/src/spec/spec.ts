import * as z from "zod/mini";
import { plusMinusField } from "../materials/doubt-schema.ts";
import {
  amountField,
  amountOrRestField,
  count,
  described,
  massField,
  numberField,
  optional,
  priceField,
  quantityField,
  section,
  shareField,
  stockField,
  word,
  written,
} from "../materials/fields.ts";
import { ownMachinesSchema } from "../materials/machine-schema.ts";
import { materialOnce } from "../materials/named-once.ts";
import { materialFiguresSchema, ownMaterialsSchema } from "../materials/schema.ts";
import { acceptable, mostParts } from "./believed.ts";
import { lotSchema, shelfSchema, wantedSchema } from "./blend-schema.ts";
import { minutes, planSchema, temperatureSchema } from "./day-schema.ts";
import { sheetSchema, type startWays } from "./sheet-schema.ts";

const nameField = (what: string, example: string) =>
  described(word(80), {
    description: `${what}: a name of the catalogue or of the kitchen's own materials`,
    examples: [example],
  });

const figures = optional(
  materialFiguresSchema,
  "Own figures of this material; over a name of the catalogue they replace only what they state",
);

const flourSchema = section(
  { id: "Flour", description: "One of the flours, starches or glutens that make up the 100 parts" },
  () => ({
    name: nameField("Flour, starch or gluten", "bread flour"),
    amount: amountOrRestField(
      "Share of the flour, or its mass; one flour may be rest; find where `wanted:` says what it is to come to",
      ["70 %", "350 g", "rest", "find"],
    ),
    least: z.optional(shareField("Smallest share; a stated amount is held against it", ["20 %"])),
    most: z.optional(shareField("Greatest share; a stated amount is held against it", ["40 %"])),
    figures,
  }),
);

const ingredientSchema = section(
  { id: "Ingredient", description: "Anything else in the dough; its water counts" },
  () => ({
    name: nameField("Ingredient", "whole egg"),
    amount: amountField("Amount in % of flour, or its mass", ["5 %", "60 g"]),
    figures,
  }),
);

const alkaliSchema = section({ id: "Alkali", description: "An alkaline product and its dose" }, () => ({
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
  as: optional(
    z.enum(["product", "anhydrous salts", "alkalinity"]),
    "What the dose states; product unless said otherwise",
  ),
  figures,
  replaceWith: optional(
    z.union([
      nameField("Product", "potassium carbonate"),
      z.array(nameField("Product", "potassium carbonate")).check(z.minLength(1), z.maxLength(2)),
    ]),
    "One product, or a list of two, to take its place; its water is taken off the tap water. Two products hold both alkalinities where they can, or else the ratio of sodium to potassium as well",
    ["potassium carbonate", ["sodium carbonate", "potassium carbonate"]],
  ),
  holding: optional(
    z.enum(["anhydrous salts", "alkalinity M", "alkalinity P", "sodium and potassium"]),
    "What the replacement keeps exactly; alkalinity M unless stated",
  ),
}));

/** The ways to state water, the size of a batch, and the weight of its bowls. */
export const waterWays = ["added", "tap", "dough"] as const;
const batchWays = ["bowls", "dough", "flour", "load", "have"] as const;
const bowlWays = ["rawWeight", "cookedWeight"] as const;

const waterSchema = section(
  { id: "Water", description: "Water, stated in one way: added, tap or dough", ways: [{ keys: waterWays }] },
  () => ({
    added: z.optional(
      amountField(
        "All water that is not the flour's own: tap water and the water of eggs, solutions, hydrates; find where `wanted:` says what it is to come to",
        ["36 %", "find"],
      ),
    ),
    tap: z.optional(amountField("Water poured in, as a written formula states it", ["34 %", "170 g"])),
    dough: z.optional(
      quantityField(["share"], "All water, the flour's own included, % of the dough", ["36 %"], {
        above: "0",
        most: "70",
        after: " of the dough",
      }),
    ),
    onFlourMoisture: z.optional(
      shareField(
        "Flour moisture the formula was written on: every amount in % of flour is taken on flour of this moisture, and the dough keeps its dry matter and its water whatever the flour at hand",
        ["14 %"],
        "40",
      ),
    ),
  }),
);

const reworkSchema = section(
  {
    id: "Rework",
    description: "Trimmings of the same dough that go into the next; they change nothing in the formula",
  },
  () => ({
    amount: quantityField(
      ["share", "mass"],
      "Rework in % of the dough in the mixer, rework and new dough together; or its mass in the whole batch, shared equally by the loads",
      ["8 %", "1.2 kg"],
      { least: "0", most: "90", words: "at most 90 % of the dough in the mixer, or a mass of at most 1000 tonnes" },
    ),
    most: z.optional(
      shareField("The kitchen's own greatest share, % of the dough in the mixer; more is refused", ["10 %"], "90"),
    ),
    oldest: z.optional(minutes("The kitchen's own greatest age of rework, told with it", "1 d")),
  }),
);

const lossesSchema = section(
  { id: "Losses", description: "Losses by stage, each in % of what enters it; none unless stated" },
  () => ({
    mixing: z.optional(shareField("Lost at the mixer, % of the dough mixed", ["0.5 %"], "90")),
    sheeting: z.optional(shareField("Lost at the rolls and as trim, % of what reaches the rolls", ["3 %"], "90")),
    cutting: z.optional(shareField("Lost at the cutter, % of what reaches it", ["1 %"], "90")),
    uncertainty: z.optional(
      plusMinusField(
        "How far each stated loss may be off, ± in % of what enters the stage; not in question unless stated",
        ["0.5 %"],
        "50",
      ),
    ),
  }),
);

const batchSchema = section(
  {
    id: "Batch",
    description: "Size of the batch, stated in one way",
    examples: [{ bowls: 320, rawWeight: "130 g" }],
    ways: [
      { keys: batchWays, orNone: true },
      { keys: bowlWays, orNone: true },
    ],
  },
  () => ({
    bowls: optional(count(1, 1_000_000), "Number of bowls", [320]),
    rawWeight: z.optional(massField("Raw strands in a bowl", ["130 g"])),
    cookedWeight: z.optional(massField("Cooked noodles in a bowl", ["230 g"])),
    cookGain: z.optional(
      numberField("Cooked weight over raw weight; 1.8 unless stated", [1.8], { above: 0.5, most: 5 }),
    ),
    dough: z.optional(massField("Dough in the mixer, before any loss", ["12 kg"])),
    flour: z.optional(massField("Flour as weighed", ["10 kg"])),
    load: optional(z.enum(["largest", "smallest"]), "One mixer load, the largest or the smallest the mixer takes"),
    have: optional(
      z.strictObject({
        name: nameField("Ingredient", "bread flour"),
        amount: massField("What there is of it", ["3.2 kg"]),
      }),
      "The batch that uses up what there is of one ingredient",
    ),
  }),
);

const mixerSchema = section({ id: "Mixer", description: "The mixer's limits" }, () => ({
  smallest: z.optional(massField("Smallest load that mixes well", ["2 kg"])),
  largest: massField("Largest load the mixer takes", ["10 kg"]),
  of: optional(z.enum(["flour", "dough"]), "What the limits weigh, rework included; dough unless stated"),
}));

const scaleSchema = section({ id: "Scale", description: "A scale" }, () => ({
  name: optional(word(40), "What the kitchen calls it"),
  division: massField("Smallest step it shows", ["1 g", "0.1 oz"]),
  capacity: z.optional(massField("Most it weighs", ["15 kg"])),
  error: z.optional(massField("How far a weight on it may be off, ±; half a division unless stated", ["2 g"])),
}));

/** Most letters of notes in a spec. */
export const mostNotes = 4000;

/** The noodle spec: what a cook writes. Types, validation and JSON Schema come from here. */
export const specSchema = described(
  z.strictObject({
    name: described(word(120), {
      description: "Name of the noodle",
      examples: ["Weekday noodle"],
    }),
    notes: optional(written.check(z.maxLength(mostNotes)), "Anything worth remembering", ["The class likes it firm"]),
    include: optional(
      z.array(written.check(z.minLength(1))).check(z.maxLength(20)),
      "Files of the kitchen's own materials and machines, relative to this file",
      [["harbour-store.yaml"]],
    ),
    materials: z.optional(ownMaterialsSchema),
    flours: described(z.array(flourSchema).check(z.minLength(1), z.maxLength(40)), {
      description: "The flours, which make up the 100 parts",
      examples: [[{ name: "bread flour", amount: "100 %" }]],
    }),
    shelf: z.optional(shelfSchema),
    wanted: z.optional(wantedSchema),
    lot: z.optional(lotSchema),
    style: optional(
      word(40),
      "Style of the noodle; the formula gets a note where it is outside what is published for it",
      ["ramen", "hokkien"],
    ),
    water: waterSchema,
    alkali: optional(z.array(alkaliSchema).check(z.maxLength(20)), "Alkaline products"),
    salt: z.optional(
      amountField(
        "Table salt in % of flour, or its mass; find where `wanted:` says what it is to come to",
        ["1 %", "10 g", "find"],
        mostParts.salt,
      ),
    ),
    accept: optional(
      z.array(z.enum(acceptable)).check(z.maxLength(acceptable.length)),
      "Doses that are meant although they are refused otherwise: high alkali is more than 5 % of anhydrous salts on flour, high salt more than 10 %",
      [["high salt"]],
    ),
    ingredients: optional(
      z.array(ingredientSchema).check(z.maxLength(60)),
      "Egg, oil, colour and anything else in the dough",
    ),
    dusting: optional(ingredientSchema, "Starch or flour for dusting, in % of flour; not in the dough", [
      { name: "cornstarch", amount: "1.5 %" },
    ]),
    rework: z.optional(reworkSchema),
    batch: z.optional(batchSchema),
    losses: z.optional(lossesSchema),
    mixer: z.optional(mixerSchema),
    scales: optional(z.array(scaleSchema).check(z.minLength(1), z.maxLength(10)), "The scales at hand"),
    prices: optional(
      z.record(word(80), priceField("Price of a pack or of a weight")).check(materialOnce),
      "Prices by ingredient, before those of the materials; tap water costs nothing unless stated",
      [{ "bread flour": "0.92 EUR/kg", "whole egg": "3.20 EUR per 600 g" }],
    ),
    stock: optional(
      z.record(word(80), stockField("What there is of it", ["12 kg"])).check(materialOnce),
      "What is in the store, by ingredient, before what the materials state",
      [{ "table salt": "2 kg" }],
    ),
    machines: z.optional(ownMachinesSchema),
    sheet: z.optional(sheetSchema),
    plan: z.optional(planSchema),
    temperature: z.optional(temperatureSchema),
    weighingTolerance: z.optional(
      quantityField(
        ["share"],
        "Most that rounding to the scale may be off before a warning; 1 % unless stated",
        ["1 %"],
        { above: "0", most: "100" },
      ),
    ),
  }),
  { id: "Spec", description: "A noodle spec: the formula, and the kitchen it is made in" },
);

/** A spec as read: quantities in base units, names as written. */
export type Spec = z.output<typeof specSchema>;

/** A section that says the same under several keys, of which one is stated. */
export type InOneWay<Section, Ways extends keyof Section> = Section extends unknown
  ? Omit<Section, Ways> &
      {
        [Way in Ways]: { readonly [Key in Way]: NonNullable<Section[Key]> } & {
          readonly [Key in Exclude<Ways, Way>]?: never;
        };
      }[Ways]
  : never;

/** The same, where none may be stated, too. */
export type InOneWayOrNone<Section, Ways extends keyof Section> =
  | InOneWay<Section, Ways>
  | (Section extends unknown ? Omit<Section, Ways> & { readonly [Key in Ways]?: never } : never);

/** Data as it is written, in which nobody writes. */
export type Written<Data> = Data extends object ? { readonly [Key in keyof Data]: Written<Data[Key]> } : Data;

/** A spec as written: its water is stated in one way, and so are the size of its batch, the weight of a bowl and the dough for the rolls, where they are. */
export interface SpecInput extends Omit<Written<z.input<typeof specSchema>>, "water" | "batch" | "sheet"> {
  readonly water: InOneWay<Written<z.input<typeof waterSchema>>, (typeof waterWays)[number]>;
  readonly batch?:
    | InOneWayOrNone<
        InOneWayOrNone<Written<z.input<typeof batchSchema>>, (typeof batchWays)[number]>,
        (typeof bowlWays)[number]
      >
    | undefined;
  readonly sheet?: InOneWay<Written<z.input<typeof sheetSchema>>, (typeof startWays)[number]> | undefined;
}

export type SpecAlkali = z.output<typeof alkaliSchema>;
export type Holding = NonNullable<SpecAlkali["holding"]>;
