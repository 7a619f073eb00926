import { type Figure, given, worked } from "../figure/figure.ts";
import { answer, type Note, note, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import { fromSpec, type Source } from "../figure/source.ts";
import { type DecimalText, dec, decimalText, fixedText } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";
import type { MaterialFigures } from "./schema.ts";

/** Only water leaves: the dry matter is the same before and after. */
const dryMatterStays: Source = {
  cite: "constant dry matter, mass (100 − M) the same before and after; what else leaves in toasting is taken as nothing",
  standing: "definition",
};

/** A flour before and after it was dried or toasted, g, and its moisture before, %. */
interface Toasting {
  readonly before: DecimalText;
  readonly after: DecimalText;
  readonly moisture: DecimalText;
}

/**
 * Moisture of a flour that was dried or toasted, from its mass before and after, % of it.
 *
 * Problems: `toasted.gained` where it weighs more after; `toasted.beyond-water` where it lost more than its water.
 * @param path - of the two masses
 * @example toastedMoisture({ before: "1000", after: "940", moisture: "13.6" }, []).value.value.slice(0, 6) // => "8.0851"
 */
export function toastedMoisture({ before, after, moisture }: Toasting, path: Path): Outcome<Figure> {
  if (dec(after).gt(before)) return refuse(problem("toasted.gained", [...path, "after"], { before, after }));
  const dry = dec(before).times(dec(100).minus(moisture)).div(100);
  if (dry.gt(after)) {
    return refuse(problem("toasted.beyond-water", [...path, "after"], { moisture, dry: fixedText(dry, 1) }));
  }
  const leaf = (id: string, label: string, unit: string, value: DecimalText): Figure =>
    given({ id: `toasted.${id}`, label, unit, places: 1 }, value, "as measured", fromSpec);
  return answer(
    worked(
      { id: "toasted.moisture", label: "moisture after", unit: "%", places: 2 },
      "100 - (100 - moisture) * before / after",
      {
        moisture: leaf("moisture-before", "moisture before", "%", moisture),
        before: leaf("before", "flour before", "g", before),
        after: leaf("after", "flour after", "g", after),
      },
      dryMatterStays,
    ),
  );
}

/** What is known of a flour before it went into the oven. */
interface Raw {
  readonly moisture: DecimalText;
  readonly range: { readonly low: DecimalText; readonly high: DecimalText } | undefined;
}

/**
 * The figures of a flour that was toasted, to be laid over those that it had before: its moisture, and that its protein is
 * not counted as forming gluten unless the cook says that it is.
 */
export function toastedLayer(
  { toasted, glutenForming = false, source }: MaterialFigures,
  { moisture, range }: Raw,
  place: Path,
): Outcome<MaterialFigures | undefined> {
  if (toasted === undefined) return answer(undefined);
  const masses = { before: toasted.before.value, after: toasted.after.value };
  const after = toastedMoisture({ ...masses, moisture }, [...place, "toasted"]);
  if (!after.ok) return after;
  const percent = (value: DecimalText, places: number): Quantity => {
    const text = `${fixedText(value, places)} %`;
    return { text, dimension: "share", value, unit: "%" };
  };
  const times = dec(masses.before).div(masses.after);
  const off = range && decimalText(dec(range.high).minus(range.low).div(2).times(times));
  return answer({
    moisture: percent(after.value.value, 2),
    ...(off !== undefined && { moistureUncertainty: percent(off, 2) }),
    glutenForming,
    ...(source !== undefined && { source }),
  });
}

/** What there is to say of a flour that was toasted. */
export function toastedNote({ toasted, glutenForming = false }: MaterialFigures, moisture: DecimalText): Note {
  const lost = toasted && fixedText(dec(100).minus(dec(toasted.after.value).times(100).div(toasted.before.value)), 1);
  return note("materials.toasted", [], { lost: lost ?? "0", moisture: fixedText(moisture, 2), glutenForming });
}
