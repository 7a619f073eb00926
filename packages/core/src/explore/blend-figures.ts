import { type Figure, found, given, worked } from "../figure/figure.ts";
import { fromSpec, massBalance, type Source } from "../figure/source.ts";
import { basisText, type MoistureBasis } from "../materials/fields.ts";
import { type Decimal, dec, decimalText, HUNDRED, sum } from "../number/decimal.ts";
import { limitRow, priceUnit, reached } from "./blend-limits.ts";
import type { BlendQuestion, Candidate, Check, FoundBlend } from "./blend-question.ts";
import type { Setup } from "./blend-setup.ts";
import { rowValue } from "./step-problem.ts";

const moistureBasis: Source = {
  cite: "Moisture Basis Conversions for Grain Composition Data, PM 1625, Iowa",
  standing: "read",
};

/** Writes a blend of steps out: shares, what it comes to, and how each target stands. */
export function describeBlend(setup: Setup, steps: readonly number[]): FoundBlend {
  const { question, unit } = setup;
  const values = question.flours.map((_, index) => unit.times(steps[index] ?? 0));
  const places = Math.max(...values.map((share) => share.decimalPlaces()));
  const shares = question.flours.map(({ name }, index) => ({
    name,
    share: found({
      id: `share.${name}`,
      label: `share of ${name}`,
      unit: "% of flour",
      places,
      value: values[index] ?? 0,
      by: "search in whole steps",
      sources: [],
    }),
  }));
  const figures = blendFigures(
    question.flours,
    shares.map(({ share }) => share),
    basisAsked(question.targets),
    question.currency,
  );
  return { shares: shares.filter(({ share }) => share.value !== "0"), figures, checks: checksOf(setup, steps) };
}

/**
 * Works out what a blend comes to: moisture and protein as it is and at a basis; ash, gluten-forming protein, wholegrain
 * share and price where every flour in it has the figure.
 *
 * @param shares - one figure for each flour, % of the blend
 */
export function blendFigures(
  flours: readonly Candidate[],
  shares: readonly Figure[],
  basis: MoistureBasis,
  currency?: string,
): readonly Figure[] {
  const used = flours.flatMap((flour, index) => {
    const share = shares[index];
    return share === undefined || dec(share.value).isZero() ? [] : [{ flour, share }];
  });
  const mixed = (id: string, label: string, unit: string, read: (flour: Candidate) => string | undefined): Figure[] => {
    const values = used.flatMap(({ flour }) => {
      const value = read(flour);
      if (value === undefined) return [];
      return [
        given({
          id: `${id}.${flour.name}`,
          label: `${label} of ${flour.name}`,
          unit,
          places: 2,
          value,
          by: "the flour's figures",
          sources: [fromSpec],
        }),
      ];
    });
    if (values.length < used.length || used.length === 0) return [];
    const from = { share: used.map(({ share }) => share), figure: values };
    return [
      worked({
        id: `blend.${id}`,
        label: `${label} of the blend`,
        unit,
        places: 2,
        formula: "sum(share * figure) / 100",
        from,
        sources: [massBalance],
      }),
    ];
  };
  const moisture = mixed("moisture", "moisture", "%", (flour) => flour.moisture);
  const atBasis = (figure: Figure): Figure[] => withBasis(figure, moisture[0], basis);
  const protein = mixed("protein", "protein", "%", (flour) => flour.protein).map((figure) => ranged(figure, used));
  const ash = mixed("ash", "ash", "%", (flour) => flour.ash);
  const gluten = mixed("gluten-protein", "gluten-forming protein", "%", (flour) => flour.glutenProtein);
  return [
    ...moisture,
    ...[...protein, ...ash, ...gluten].flatMap((figure) => [figure, ...atBasis(figure)]),
    ...mixed("wholegrain", "wholegrain share", "%", (flour) => (flour.wholegrain === true ? "100" : "0")),
    ...mixed("price", "price", priceUnit(currency), (flour) => flour.price),
  ];
}

/** Protein of the blend with every flour at its least, and at its greatest, where any flour has such a range. */
function ranged(figure: Figure, used: readonly { readonly flour: Candidate; readonly share: Figure }[]): Figure {
  if (used.every(({ flour }) => flour.proteinRange === undefined)) return figure;
  const mixedAt = (end: "low" | "high"): Decimal =>
    sum(
      used.map(({ flour, share }) =>
        dec(share.value)
          .times(flour.proteinRange?.[end] ?? flour.protein)
          .div(100),
      ),
    );
  const why = "range of protein of the flours";
  return { ...figure, range: { low: decimalText(mixedAt("low")), high: decimalText(mixedAt("high")), why } };
}

/** The same figure at a moisture basis: the blend is mixed as it is and then converted by its own moisture. */
function withBasis(figure: Figure, moisture: Figure | undefined, basis: MoistureBasis): Figure[] {
  if (basis.kind === "as is" || moisture === undefined) return [];
  const where = dec(basis.moisture).isZero() ? "dry" : `at ${basisText(basis)}`;
  const own = worked({
    id: `${figure.id}.at-basis`,
    label: `${figure.label}, ${where}`,
    unit: figure.unit,
    places: figure.places,
    formula: "figure * (100 - basis) / (100 - moisture)",
    from: { figure, basis: basis.moisture, moisture },
    sources: [moistureBasis],
  });
  const { range } = figure;
  if (range === undefined) return [own];
  const converted = (value: string): string =>
    decimalText(dec(value).times(HUNDRED.minus(basis.moisture)).div(HUNDRED.minus(moisture.value)));
  return [{ ...own, range: { low: converted(range.low), high: converted(range.high), why: range.why } }];
}

/** The basis the protein target is in; 14 % moisture where none is asked for. */
export function basisAsked(targets: BlendQuestion["targets"]): MoistureBasis {
  return targets.protein?.basis ?? { kind: "at", moisture: "14" };
}

function checksOf(setup: Setup, steps: readonly number[]): readonly Check[] {
  return setup.targets.map(
    (limit): Check => ({
      id: limit.id,
      label: limit.label,
      side: limit.side,
      bound: decimalText(limit.bound),
      reached: decimalText(reached(limit, steps) ?? dec(0)),
      unit: limit.unit,
      holds: rowValue(limitRow(limit), steps) >= 0,
    }),
  );
}
