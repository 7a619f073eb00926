import { type Figure, type Naming, type Range, worked } from "../figure/figure.ts";
import { definition, massBalance, type Source } from "../figure/source.ts";
import { basisRule, dryRatio, flourBasis } from "../materials/moisture.ts";
import { flourFactor, flourRule } from "../materials/nitrogen.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { percent } from "./naming.ts";
import { basisRange, rangeOfSum, sumRange, type Term } from "./ranges.ts";

/** Nitrogen factor that blends are stated on, as flour specifications are. */
export const blendFactor = flourFactor;

/** What a flour holds of one thing, % as is. */
export interface Content {
  readonly value: Figure;
  /** The nitrogen factor of a protein; as the blend's where none is told. */
  readonly factor?: Figure;
}

/** A flour of a blend: its share, % of the blend, and what it holds and costs, as far as that is known. */
export interface MixedFlour {
  readonly share: Figure;
  readonly moisture: Figure;
  readonly protein: Content | undefined;
  /** Protein that forms gluten. */
  readonly gluten: Content | "none" | undefined;
  readonly ash: Figure | undefined;
  /** 1 for a wholegrain flour, 0 for another. */
  readonly wholegrain: Figure;
  readonly price: Figure | undefined;
  /** Whether the range of its protein is of the protein as is, so that at a basis its moisture counts as well. */
  readonly openAsIs: boolean;
}

/** What flours come to when mixed, where every flour tells it. */
export interface Mixture {
  readonly moisture: Figure;
  readonly protein: Held | undefined;
  readonly gluten: Held | undefined;
  readonly ash: Held | undefined;
  readonly wholegrain: Figure;
  readonly price: Figure | undefined;
}

/** What a blend holds of one thing: as is, and at a moisture. */
export interface Held {
  readonly asIs: Figure;
  readonly at: (moisture: DecimalText) => Figure;
}

/**
 * Mixes flours as is.
 *
 * The figures at a moisture are derived from what was mixed and the mixed moisture, never by mixing converted figures.
 */
export function mix(flours: readonly MixedFlour[]): Mixture {
  const parts = (read: (flour: MixedFlour) => Content | "none" | undefined): readonly Part[] | undefined => {
    const contents = whole(flours.map(read));
    return (
      contents &&
      flours.flatMap(({ share }, index) => {
        const content = contents[index];
        return content === undefined || content === "none" ? [] : [{ share, ...content }];
      })
    );
  };
  const moistures = flours.map(({ share, moisture: value }): Part => ({ share, value }));
  const naming = percent("blend.moisture", "moisture of the blend");
  const moisture = mixed(naming, "moisture", moistures, "moisture of the flours");
  const open = rangeOfSum(
    moisture,
    termsOf(moistures.filter((_, index) => flours[index]?.openAsIs)),
    "protein of the flours, and moisture of those with protein stated as is",
  );
  const held = (
    id: string,
    label: string,
    name: "protein" | "ash",
    of: readonly Part[] | undefined,
    ...sources: readonly Source[]
  ): Held | undefined => {
    if (of === undefined) return undefined;
    const asIs = mixed(
      { id: `blend.${id}.as-is`, label: `${label} as is`, unit: "%", places: name === "ash" ? 3 : 2 },
      name,
      of,
      "protein of the flours, their moisture as shown",
      ...sources,
    );
    return { asIs, at: (basis) => atMoisture(asIs, moisture, basis, open, ...sources) };
  };
  const protein = parts((flour) => flour.protein);
  const gluten = parts((flour) => flour.gluten);
  const ash = parts((flour) => flour.ash && { value: flour.ash });
  const prices = whole(flours.map(({ share, price }) => price && { share, value: price }));
  const units = [...new Set(prices?.map(({ value }) => value.unit))];
  const [unit] = units;
  return {
    moisture,
    protein: held("protein", "protein", "protein", protein, flourRule),
    gluten: held("gluten-protein", "gluten-forming protein", "protein", gluten, flourRule),
    ash: held("ash", "ash", "ash", ash),
    wholegrain: worked(
      { id: "blend.wholegrain", label: "wholegrain share", unit: "% of flour", places: 1 },
      "sum(share * whole)",
      { share: flours.map(({ share }) => share), whole: flours.map(({ wholegrain }) => wholegrain) },
      definition,
    ),
    price:
      prices === undefined || unit === undefined || units.length > 1
        ? undefined
        : mixed({ id: "blend.price", label: "price of the blend", unit, places: 3 }, "price", prices, ""),
  };
}

/** A flour's share and what it brings. */
interface Part extends Content {
  readonly share: Figure;
}

function mixed(
  naming: Naming,
  name: string,
  parts: readonly Part[],
  why: string,
  ...sources: readonly Source[]
): Figure {
  const factors = parts.flatMap(({ factor }) => factor ?? []);
  const figure = worked(
    naming,
    `sum(share * ${name}${factors.length === 0 ? "" : ` * ${blendFactor} / factor`}) / 100`,
    {
      share: parts.map(({ share }) => share),
      [name]: parts.map(({ value }) => value),
      ...(factors.length > 0 && { factor: factors }),
    },
    massBalance,
    ...sources,
  );
  return sumRange(figure, termsOf(parts), why);
}

function termsOf(parts: readonly Part[]): readonly Term[] {
  return parts.map(({ share, value, factor }) => ({
    weight: () =>
      dec(share.value)
        .times(blendFactor)
        .div(factor?.value ?? blendFactor)
        .div(100),
    figure: value,
  }));
}

/**
 * What a blend holds as is, brought to a moisture by the moisture of the blend.
 *
 * @param basis - %; 0 is dry
 * @param open - the range of the moisture that the share as is does not depend on
 */
export function atMoisture(
  asIs: Figure,
  moisture: Figure,
  basis: DecimalText,
  open?: Range,
  ...sources: readonly Source[]
): Figure {
  const at = decimalText(dec(basis));
  const [end, words] = at === "0" ? ["dry", "dry"] : [at, `at ${at} % mb`];
  const figure = worked(
    { ...asIs, id: asIs.id.replace(/as-is$/u, end), label: asIs.label.replace(/as is$/u, words) },
    `asIs * ${dryRatio("moisture", at)}`,
    { asIs, moisture },
    basisRule,
    ...(at === flourBasis.value ? [flourBasis.source] : []),
    ...sources,
  );
  return basisRange(figure, asIs, moisture, open);
}

/** The whole list, or nothing where one of it is missing. */
function whole<T>(values: readonly (T | undefined)[]): readonly T[] | undefined {
  const present = values.filter((value): value is T & {} => value !== undefined);
  return present.length === values.length ? present : undefined;
}
