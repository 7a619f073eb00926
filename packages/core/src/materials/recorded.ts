import * as z from "zod/mini";
import { described, quantityField, section, shareField, textOrNumber, word } from "./fields.ts";
import { plainName } from "./nearest.ts";

/** A number would lose the zeros that it begins with. */
const lotNumber = described(word(40), {
  description: "Number of the lot, in quotes where it is digits alone",
  examples: ["L2298"],
});

/** What a certificate says beside the figures that are worked with. */
export const recordedSchema = section(
  {
    id: "RecordedFigures",
    description:
      "Figures of the certificate that are kept, printed and compared between lots, and that nothing is worked out from: no source turns them into the water of a noodle dough",
  },
  () => ({
    lotNumber: z.optional(lotNumber),
    bestBefore: z.optional(textOrNumber(40, "Best-before date", ["2027-05-01"])),
    wetGluten: z.optional(shareField("Wet gluten, % of the flour", ["28.5 %"])),
    farinographAbsorption: z.optional(
      shareField("Water absorption by the farinograph, % of flour of 14 % moisture", ["61 %"]),
    ),
    fallingNumber: z.optional(
      quantityField(["time"], "Falling number", ["340 s"], {
        least: "60",
        most: "2000",
        words: "a falling number from 60 to 2000 s",
      }),
    ),
    starchDamage: z.optional(
      textOrNumber(40, "Starch damage as the mill states it, with its unit", ["5.5 %", "19 UCD"]),
    ),
  }),
);

/** Recorded figures as read. */
export type RecordedFigures = z.output<typeof recordedSchema>;

type RecordedName = keyof RecordedFigures;

/** What each recorded figure is called, in the order in which they are told. */
export const recordedNames: Readonly<Record<RecordedName, string>> = {
  lotNumber: "lot",
  bestBefore: "best before",
  wetGluten: "wet gluten",
  farinographAbsorption: "farinograph absorption",
  fallingNumber: "falling number",
  starchDamage: "starch damage",
};

/** Said wherever recorded figures are told. */
export const recordedOnly =
  "These are kept as the mills state them: no source turns them into the water of a noodle dough.";

/** Other words that people write for them. */
const otherWords: Readonly<Record<string, RecordedName>> = {
  lot: "lotNumber",
  batchnumber: "lotNumber",
  expiry: "bestBefore",
  expirydate: "bestBefore",
  bestbeforedate: "bestBefore",
  gluten: "wetGluten",
  waterabsorption: "farinographAbsorption",
  farinograph: "farinographAbsorption",
  farinographwater: "farinographAbsorption",
  hagberg: "fallingNumber",
  damagedstarch: "starchDamage",
};

/** The recorded figure that a key of another place means. @example recordedMeant("waterAbsorption") // => "farinographAbsorption" */
export function recordedMeant(key: string): RecordedName | undefined {
  const plain = plainName(key);
  return (
    recordedList().find((name) => plainName(name) === plain) ??
    (Object.hasOwn(otherWords, plain) ? otherWords[plain] : undefined)
  );
}

function recordedList(): readonly RecordedName[] {
  const isName = (name: string): name is RecordedName => Object.hasOwn(recordedNames, name);
  return Object.keys(recordedNames).filter(isName);
}

/** Recorded figures, each with its name and as it was written. @example recordedTexts({ lotNumber: "L7" }) // => [["lot", "L7"]] */
export function recordedTexts(recorded: RecordedFigures): readonly (readonly [name: string, text: string])[] {
  return recordedList().flatMap((name) => {
    const value = recorded[name];
    if (value === undefined) return [];
    return [[recordedNames[name], typeof value === "string" ? value : value.text] as const];
  });
}
