import * as z from "zod/mini";
import { worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { note, type Outcome } from "../../figure/problem.ts";
import { massBalance } from "../../figure/source.ts";
import { massField, shareField } from "../../materials/fields.ts";
import { toastedMoisture } from "../../materials/toasted.ts";
import { fixedText } from "../../number/decimal.ts";
import { readBy } from "../../spec/read-spec.ts";
import type { Measurement } from "./measurements.ts";

const toastingSchema = z.strictObject({
  before: massField("Flour before it was dried or toasted", ["1000 g"]),
  after: massField("The same flour after it", ["940 g"]),
  moisture: shareField("Its moisture before", ["13.6 %"]),
  protein: z.optional(shareField("Its protein before, as is", ["12.4 %"])),
});

/**
 * Finds the moisture, and the protein, of a flour that the kitchen dried or toasted, from its masses before and after.
 *
 * Problems: those of reading; `toasted.gained`, `toasted.beyond-water`.
 * @example shown(measuredToasting({ before: "1000 g", after: "940 g", moisture: "13.6 %" }).value.results[0]) // => "8.09 %"
 */
export function measuredToasting(input: unknown): Outcome<Published<Measurement>> {
  const reading = readBy(toastingSchema, input);
  if (!reading.ok) return reading;
  const { before, after, moisture, protein } = reading.value;
  const dried = toastedMoisture({ before: before.value, after: after.value, moisture: moisture.value }, []);
  if (!dried.ok) return dried;
  const naming = { id: "toasted.protein", label: "protein after, as is", unit: "%", places: 2 };
  const more = protein && [
    worked(
      naming,
      "protein * before / after",
      { protein: protein.value, before: before.value, after: after.value },
      massBalance,
    ),
  ];
  const results = [dried.value, ...(more ?? [])];
  const lines = [
    `toasted: { before: ${before.text}, after: ${after.text} }   # beside moisture: ${moisture.text}`,
    `moisture: ${fixedText(dried.value.value, 2)} %   # or this in place of it`,
  ];
  return publish({ results, lines }, [note("toasted.gluten", [], {})]);
}
