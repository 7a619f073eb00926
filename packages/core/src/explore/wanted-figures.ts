import { weighingTolerance } from "../batch/weighing.ts";
import { mostPlaces } from "../blend/blend-figures.ts";
import { type Feed, type Figure, given, worked } from "../figure/figure.ts";
import { definition, fromSpec, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { ofDough } from "../formula/naming.ts";
import { dec } from "../number/decimal.ts";
import type { Bounds } from "../spec/blend-schema.ts";
import type { Spec } from "../spec/spec.ts";

/** What is wanted of a figure, as figures: it lies between these, where they are. */
export interface Want {
  readonly label: string;
  /** Nothing where no figure tells it. */
  readonly reached?: Figure | undefined;
  readonly least?: Figure | undefined;
  readonly most?: Figure | undefined;
  /** Whether it counts as it is shown, to the places of what is reached. */
  readonly asShown: boolean;
}

/**
 * The ends that a wanted value or range is met between: those that are written, or the value less and more what it may be
 * off, which is `within`, the ± behind it or the share that weights may be off.
 *
 * @param of - under which name of a key, of what, and in which unit
 */
export function wantedEnds(
  of: { readonly id: string; readonly label: string; readonly unit: string },
  { text, value, aim, least, most }: Bounds,
  spec: Pick<Spec, "weighingTolerance">,
  within?: string,
): Pick<Want, "least" | "most"> & { readonly room?: Figure } {
  const { unit } = of;
  const id = idOfKey(of.id);
  const wanted = (end: string, says: string, bound: string): Figure => {
    const label = `${of.label.replace(/^the /u, "")} wanted${says}`;
    const naming = {
      id: `wanted.${id}${end}`,
      label,
      unit,
      places: Math.min(dec(bound).decimalPlaces(), mostPlaces),
    };
    return given(naming, bound, `spec, ${text}`, fromSpec);
  };
  const middle = aim ?? value;
  if (middle === undefined) {
    return {
      least: least === undefined ? undefined : wanted(".least", ", at least", least),
      most: most === undefined ? undefined : wanted(".most", ", at most", most),
    };
  }
  const asked = wanted("", "", middle);
  const own =
    aim === undefined
      ? within
      : dec(most ?? aim)
          .minus(aim)
          .toFixed();
  const room =
    own !== undefined
      ? wanted(".within", ", ±", own)
      : worked(
          { id: `wanted.${id}.room`, label: `what the ${of.label} may be off`, unit, places: 3 },
          "wanted * tolerance / 100",
          { wanted: asked, tolerance: weighingTolerance(spec) },
          definition,
        );
  const end = (name: "least" | "most", sign: "-" | "+"): Figure =>
    worked(
      { id: `wanted.${id}.${name}`, label: `${of.label} that meets it, at ${name}`, unit, places: 3 },
      `wanted ${sign} room`,
      { wanted: asked, room },
      definition,
    );
  return { least: end("least", "-"), most: end("most", "+"), room };
}

/** What comes of a figure that is wanted and that no other answer has. */
export function reachedBy(
  id: string,
  naming: Pick<Figure, "label" | "unit">,
  formula: string,
  from: Readonly<Record<string, Feed>>,
): Figure {
  return worked({ id: `reached.${idOfKey(id)}`, ...naming, places: 2 }, formula, from, massBalance);
}

/** A key of the spec as a part of an id. */
function idOfKey(key: string): string {
  return key.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`);
}

/** The salt of a dough, % of it. */
export function saltOfDough({ salt, water: { dough } }: Pick<Formula, "salt" | "water">): Figure {
  return worked(ofDough("salt.of-dough", "salt in the dough"), "100 * salt / dough", { salt, dough }, massBalance);
}
