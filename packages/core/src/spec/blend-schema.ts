import * as z from "zod/mini";
import { problem } from "../figure/problem.ts";
import {
  atMost,
  basisField,
  count,
  described,
  massField,
  moneyField,
  optional,
  priceField,
  readOrRefused,
  refuseValue,
  section,
  shareField,
  word,
  written,
} from "../materials/fields.ts";
import { namedOnce } from "../materials/named-once.ts";
import { materialFiguresSchema } from "../materials/schema.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { parseQuantity } from "../number/quantity.ts";
import type { Dimension } from "../number/units.ts";

/** What a quantity may be: one value, a range, or one end of a range. In base units, and as written. */
export interface Bounds {
  readonly text: string;
  readonly value?: DecimalText;
  readonly least?: DecimalText;
  readonly most?: DecimalText;
  /** The value within the range, where it was written with a `±`. */
  readonly aim?: DecimalText;
}

/**
 * Reads what a share, or another quantity, may be: `11.5 %`, `11.5 % ± 0.2`, `11 to 12 %`, `at least 11 %`,
 * `at most 12 %`, `any`.
 *
 * @param dimension - what it measures; a share of at most 100 % unless given
 * @example parseBounds("at most 4 %") // => { text: "at most 4 %", most: "4" }
 */
export function parseBounds(written: string, dimension: Dimension = "share"): Bounds | undefined {
  const text = written.trim();
  if (text.toLowerCase() === "any") return { text };
  const read = (one: string): DecimalText | undefined => amount(one, dimension);
  const about = /^(?<value>\d*\.?\d+)(?<unit> ?[^\d±]*?)? *(?:±|\+\/-) *(?<room>\d*\.?\d+)(?<after> ?\S+)?$/u.exec(
    text,
  )?.groups;
  if (about !== undefined) return within(about, read, text);
  const range = /^(?<low>\S+)(?<unit> \S+)? to (?<high>.+)$/u.exec(text)?.groups;
  if (range !== undefined) {
    const { low: lower = "", unit, high: upper = "" } = range;
    const [low, high] = [
      read(/^\d*\.?\d+$/u.test(lower) ? lower + (unit ?? unitOf(upper)) : lower + (unit ?? "")),
      read(upper),
    ];
    return low === undefined || high === undefined || dec(low).gt(high) ? undefined : { text, least: low, most: high };
  }
  const end = /^at (?<side>least|most) (?<bound>.+)$/u.exec(text)?.groups;
  const bound = read(end?.["bound"] ?? text);
  if (bound === undefined) return undefined;
  if (end === undefined) return { text, value: bound };
  return end["side"] === "least" ? { text, least: bound } : { text, most: bound };
}

/** A value and how far off it may be, of which one at least has a unit. */
function within(
  { value = "", unit = "", room = "", after = "" }: Readonly<Record<string, string | undefined>>,
  read: (one: string) => DecimalText | undefined,
  text: string,
): Bounds | undefined {
  const [aim, plusMinus] = [read(value + (unit.trim() || after)), read(room + (after.trim() || unit))];
  if (aim === undefined || plusMinus === undefined) return undefined;
  const least = decimalText(dec(aim).minus(plusMinus));
  return { text, least, most: decimalText(dec(aim).plus(plusMinus)), aim };
}

/** The unit after a number, which the number before it in a range has as well. */
function unitOf(text: string): string {
  return text.replace(/^\s*\d*\.?\d+/u, "");
}

function amount(text: string, dimension: Dimension): DecimalText | undefined {
  const reading = parseQuantity(text, [dimension]);
  if (!reading.ok || (dimension === "share" && dec(reading.quantity.value).gt(100))) return undefined;
  return reading.quantity.value;
}

function boundsField(description: string, examples: readonly [string, ...string[]], dimension: Dimension = "share") {
  const example = dimension === "share" ? "" : examples[0];
  return readOrRefused(
    written.check(z.maxLength(60)),
    (input) => parseBounds(input, dimension),
    (written) => problem("bounds.unreadable", [], { written, example }),
    { description, examples: [...examples] },
  );
}

const percent = (description: string, example: string) => shareField(description, [example]);

const flourName = (description: string) => described(word(80), { description, examples: ["bread flour"] });

/** A flour on the shelf and what of it may go into the blend. */
const shelfEntrySchema = section(
  { id: "ShelfEntry", description: "A flour, starch or gluten that may go into the blend" },
  () => ({
    share: z.optional(
      boundsField("What of the blend it may be; any share unless stated", ["at most 4 %", "10 to 20 %"]),
    ),
    ratio: optional(
      z.strictObject({
        to: flourName("Another flour of the blend or of the shelf"),
        times: readOrRefused(
          z.union([z.string(), z.number()]),
          (input): DecimalText | undefined => {
            const text = String(input).trim();
            return /^\d+(?:\.\d+)?$/u.test(text) && dec(text).gt(0) ? text : undefined;
          },
          (written) => problem("shelf.ratio", [], { written }),
          { description: "So many times the share of the other one", examples: [0.5] },
        ),
      }),
      "A fixed ratio to another flour",
    ),
    step: z.optional(
      percent("Steps that its share comes in; those of the blend unless stated, 0.1 % of dry gluten", "0.1 %"),
    ),
    bag: z.optional(massField("A bag of it: only whole bags go into the batch", ["25 kg"])),
    figures: optional(
      materialFiguresSchema,
      "Own figures of this material; over a name of the catalogue they replace only what they state",
    ),
  }),
);

/** Most flours of a shelf, as many as a blend may have. */
const mostOnShelf = 40;

/** The `shelf:` section: what may go into a blend beside the flours of the spec, and limits for both. */
export const shelfSchema = described(
  z.record(word(80), shelfEntrySchema).check(namedOnce, (context) => {
    const shelf = context.value;
    const flours = Object.keys(shelf).length;
    if (flours > mostOnShelf) refuseValue(context, problem("shelf.too-many", [], { flours, most: mostOnShelf }));
  }),
  {
    maxProperties: mostOnShelf,
    description:
      "Flours that may go into the blend, by name, and limits for these and for the flours of the spec; the store limits those that have a stock",
    examples: [{ "vital wheat gluten": { share: "at most 4 %" }, "rye flour": {} }],
  },
);

const preferences: readonly Preferred[] = [{ kind: "nearest" }, { kind: "cheapest" }, { kind: "fewest" }];

/** Which blend is wanted of those that meet everything. */
type Preferred =
  | { readonly kind: "nearest" }
  | { readonly kind: "cheapest" }
  | { readonly kind: "fewest" }
  | { readonly kind: "most"; readonly flour: string }
  | { readonly kind: "use up"; readonly flours: readonly string[] };

/** Reads a preference. @example readPreference("most rye flour") // => { kind: "most", flour: "rye flour" } */
export function readPreference(text: string): Preferred | undefined {
  const plain = text.trim();
  const preference = preferences.find(({ kind }) => kind === plain);
  if (preference !== undefined) return preference;
  const stocks = /^use up (?<flours>.+)$/u.exec(plain)?.groups?.["flours"];
  if (stocks !== undefined) return { kind: "use up", flours: stocks.split(";").map((name) => name.trim()) };
  const flour = /^most (?:of )?(?<flour>.+)$/u.exec(plain)?.groups?.["flour"];
  return flour === undefined ? undefined : { kind: "most", flour };
}

const preferField = readOrRefused(
  written.check(z.maxLength(400)),
  readPreference,
  (written) => problem("wanted.prefer", [], { written }),
  {
    description:
      "Which blend comes first: nearest to the flours of the spec (least flour moved, each part counted by how unlike its flour is to that blend; then fewest changed), cheapest, fewest flours, most of a named flour, or as much as can be of several together; nearest unless stated",
    examples: ["nearest", "cheapest", "fewest", "most rye flour", "use up rye flour; barley flour"],
  },
);

/** The `wanted:` section: what the noodle has to reach. */
export const wantedSchema = section(
  { id: "Wanted", description: "What the noodle has to reach: its blend, and its water, alkali and salt" },
  () => ({
    protein: z.optional(
      boundsField(
        "Protein of the blend (N × 5.7): a value, which the blend comes as near to as its steps allow; a value with the ± that is near enough; a range, or one end of it",
        ["11.5 %", "11.5 % ± 0.2", "at least 11.5 %"],
      ),
    ),
    within: z.optional(
      percent(
        "How near to a protein value is near enough, ±, so that `prefer` chooses among all blends within it. Unless stated the nearest blend comes first, and flours whose amounts are stated meet the value within the share that weights may be off (`weighingTolerance`)",
        "0.1 %",
      ),
    ),
    basis: z.optional(basisField("Moisture basis of protein, gluten-forming protein and ash; 14 % mb unless stated")),
    glutenProtein: z.optional(percent("Least protein that forms gluten", "9 %")),
    ash: z.optional(
      boundsField("Ash of the blend: the most of it, or a window (ash darkens the noodle)", [
        "0.6 %",
        "0.38 to 0.45 %",
      ]),
    ),
    wholegrain: z.optional(boundsField("Share of wholegrain flours", ["at least 20 %"])),
    wholeRange: optional(
      z.boolean(),
      "Meet protein over the whole range that labels and certificates of the flours leave open",
      [true],
    ),
    addedWater: z.optional(boundsField("Added water, % of flour", ["38 %", "36 to 38 %"])),
    doughWater: z.optional(boundsField("All water, the flour's own included, % of the dough", ["36 %"])),
    alkalinity: z.optional(boundsField("Alkalinity M of the dough, meq per 100 g flour", ["17 meq"], "alkalinity")),
    anhydrousSalts: z.optional(boundsField("Alkaline salts without any water, % of flour", ["0.9 %"])),
    potassiumShare: z.optional(boundsField("Potassium carbonate, % of the carbonates", ["40 %"])),
    saltInDough: z.optional(boundsField("Salt, % of the dough", ["0.8 %"])),
    saltInBowl: z.optional(
      boundsField("Salt that is left in a cooked bowl, by what boiling leaves of sodium", ["0.6 g"], "mass"),
    ),
    sodium: z.optional(
      massField("Most sodium in a cooked bowl, from all that is in it", ["500 mg", "at most 500 mg"], atMost),
    ),
    bowlPrice: z.optional(moneyField("Most that the ingredients of a bowl may cost")),
    price: z.optional(priceField("Most that the blend may cost", atMost)),
    batchPrice: z.optional(moneyField("Most that all the flour of the batch may cost")),
    mostFlours: optional(count(1, 40), "Most flours that may be in the blend", [3]),
    leastShare: z.optional(
      percent("Smallest share of a flour that is in the blend at all, dry gluten aside; 2 % unless stated", "5 %"),
    ),
    step: z.optional(percent("Steps that the shares come in; 1 % unless stated, from 0.1 to 5 %", "0.5 %")),
    prefer: z.optional(preferField),
    alternatives: optional(count(1, 20), "How many blends to show; 3 unless stated", [5]),
  }),
);

/** The `lot:` section: a new lot of one of the flours. */
export const lotSchema = section(
  {
    id: "Lot",
    description: "A new lot of one of the flours",
    examples: [{ of: "bread flour", figures: { moisture: "14.1 %", protein: "11.9 %" } }],
  },
  () => ({
    of: flourName("The flour of the spec that the lot follows"),
    figures: described(materialFiguresSchema, {
      description: "The figures of its certificate, over those of the old lot",
    }),
  }),
);

export type Lot = z.output<typeof lotSchema>;
