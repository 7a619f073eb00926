import { type Figure, given, worked } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { definition, fromSpec, massBalance, type Source } from "../figure/source.ts";
import type { Allergen } from "../materials/allergens.ts";
import { dec } from "../number/decimal.ts";
import { type FormulaLine, moistureFigure } from "./lines.ts";
import { scaledRange, sumRange, withRange } from "./ranges.ts";

/** Nitrogen factor that blends are stated on, as flour specifications are. */
export const blendFactor = "5.7";
/** Moisture basis that flours are compared on, %. */
export const flourBasis = "14";

const basisRule: Source = {
  cite: "Iowa State University Extension, PM 1625, Moisture Basis Conversions for Grain Composition Data (about 1995): P(b) = P(a) (100 − M(b)) / (100 − M(a))",
  standing: "read",
};
const flourFactor: Source = {
  cite: "USDA commodity requirements A-A-20126F, section 6.3, note 8: flour protein is nitrogen × 5.7",
  standing: "read",
};
const fourteen: Source = {
  cite: "Cereals Canada, Methods of Analysis: flour and semolina at 14.0 % moisture",
  standing: "read",
};

/** What the flours come to when mixed. Percentages are of the blend. */
export interface Blend {
  readonly moisture: Figure;
  /** Protein as N × 5.7, where every flour states its protein. */
  readonly protein?: OnBases;
  /** The part of the protein that comes from gluten-forming flours. */
  readonly glutenProtein?: OnBases;
  readonly otherProtein?: Figure;
  readonly ash?: OnBases;
  readonly wholegrain: Figure;
  readonly price?: Figure;
  readonly currency?: string;
  readonly allergens: readonly Allergen[];
  readonly figures: readonly Figure[];
  readonly notes: readonly Note[];
}

/** One quantity as is, dry and at 14 % moisture. */
export interface OnBases {
  readonly asIs: Figure;
  readonly dry: Figure;
  readonly at14: Figure;
}

/**
 * Mixes the flours as is, and states the blend as is, dry and at 14 % moisture.
 *
 * The figures at a moisture are derived from the mixed protein and the mixed moisture, never by mixing converted figures.
 * Protein is brought to N × 5.7 flour by flour.
 */
export function mixFlours(flours: readonly FormulaLine[]): Blend {
  const share = flours.map((line) => line.parts);
  const moistures = flours.map(moistureFigure);
  const moisture = sumRange(
    worked({
      id: "blend.moisture",
      label: "moisture of the blend",
      unit: "%",
      places: 2,
      formula: "sum(share * moisture) / 100",
      from: { share, moisture: moistures },
      sources: [massBalance],
    }),
    flours.map((line, index) => ({
      weight: dec(line.parts.value).div(100),
      figure: moistures[index] ?? moistureFigure(line),
    })),
    "moisture of the flours",
  );
  const notes: Note[] = [];
  const proteins = flours.map((line) => proteinFigures(line, notes));
  const ashes = flours.map((line) => ashFigure(line, notes));
  const protein = proteinOf(flours, share, proteins, () => true, moisture, "blend.protein", "protein");
  const gluten = proteinOf(
    flours,
    share,
    proteins,
    (line) => line.material.glutenForming,
    moisture,
    "blend.gluten-protein",
    "gluten-forming protein",
  );
  const ashFigures = whole(ashes);
  const ash = ashFigures && onBases("blend.ash", "ash", mixedAsh(share, ashFigures), moisture, []);
  const other =
    protein &&
    gluten &&
    worked({
      id: "blend.other-protein.14",
      label: "protein of the other flours at 14 % mb",
      unit: "%",
      places: 2,
      formula: "all - gluten",
      from: { all: protein.at14, gluten: gluten.at14 },
      sources: [definition],
    });
  const wholegrain = worked({
    id: "blend.wholegrain",
    label: "wholegrain share",
    unit: "% of flour",
    places: 1,
    formula: "sum(share * whole)",
    from: { share, whole: flours.map(wholegrainFigure) },
    sources: [definition],
  });
  const price = blendPrice(flours, share);
  const leaves = flours.flatMap((line, index) => {
    const stated = proteins[index];
    const mineral = ashes[index];
    const whole = wholegrainFigure(line);
    return [
      moistureFigure(line),
      ...(stated ? [stated.value, stated.factor] : []),
      ...(mineral ? [mineral] : []),
      whole,
    ];
  });
  const groups = [protein, gluten, ash].flatMap((group) => (group ? [group.asIs, group.dry, group.at14] : []));
  return {
    moisture,
    ...(protein && { protein }),
    ...(gluten && { glutenProtein: gluten }),
    ...(other && { otherProtein: other }),
    ...(ash && { ash }),
    wholegrain,
    ...(price && { price: price.figure, currency: price.currency }),
    allergens: [...new Set(flours.flatMap((line) => line.material.allergens))],
    figures: [...leaves, moisture, ...groups, ...(other ? [other] : []), wholegrain, ...(price?.figures ?? [])],
    notes,
  };
}

interface ProteinFigures {
  readonly value: Figure;
  readonly factor: Figure;
}

/** Protein of a flour as is, with the nitrogen factor it stands on. */
export function proteinFigures(line: FormulaLine, notes: Note[] = []): ProteinFigures | undefined {
  const { material } = line;
  if (material.protein === undefined) {
    notes.push({
      code: "blend.protein-missing",
      path: line.path,
      text: `the protein of ${line.name} is not stated, so the blend has no protein figure`,
    });
    return undefined;
  }
  const stated = material.stated.protein;
  const naming = { id: `${line.id}.protein`, label: `protein of ${line.name} as is`, unit: "%", places: 2 };
  const sources = [material.figureSources.protein];
  const value = withRange(
    stated === undefined || stated.basis.kind === "as is"
      ? given({ ...naming, value: material.protein.value, by: "as stated for the material", sources })
      : toAsIs(naming, stated.value, stated.basis.moisture, line, sources),
    material.ranges?.protein,
  );
  const known = material.protein.nitrogenFactor;
  if (known === undefined) {
    notes.push({
      code: "blend.factor-unknown",
      path: line.path,
      text: `the nitrogen factor behind the protein of ${line.name} is not stated; it is taken as ${blendFactor}, and would read ${dec(blendFactor).div("6.25").times(100).toFixed(1)} % of that if it was 6.25`,
    });
  }
  const factor = given({
    id: `${line.id}.nitrogen-factor`,
    label: `nitrogen factor of ${line.name}`,
    unit: "",
    places: 2,
    value: known ?? blendFactor,
    by: known === undefined ? "assumed" : "as stated for the material",
    sources,
  });
  return { value, factor };
}

function ashFigure(line: FormulaLine, notes: Note[]): Figure | undefined {
  const { material } = line;
  if (material.ash === undefined) {
    notes.push({
      code: "blend.ash-missing",
      path: line.path,
      text: `the ash of ${line.name} is not stated, so the blend has no ash figure`,
    });
    return undefined;
  }
  const stated = material.stated.ash;
  const naming = { id: `${line.id}.ash`, label: `ash of ${line.name} as is`, unit: "%", places: 3 };
  const sources = [material.figureSources.ash];
  return stated === undefined || stated.basis.kind === "as is"
    ? given({ ...naming, value: material.ash, by: "as stated for the material", sources })
    : toAsIs(naming, stated.value, stated.basis.moisture, line, sources);
}

function toAsIs(
  naming: Pick<Figure, "id" | "label" | "unit" | "places">,
  stated: string,
  basis: string,
  line: FormulaLine,
  sources: readonly Source[],
): Figure {
  return worked({
    ...naming,
    formula: "stated * (100 - moisture) / (100 - basis)",
    from: { stated, moisture: moistureFigure(line), basis },
    sources: [...sources, basisRule],
  });
}

/** The whole list, or nothing where one of it is missing. */
function whole<T>(values: readonly (T | undefined)[]): readonly T[] | undefined {
  const present = values.filter((value): value is T & {} => value !== undefined);
  return present.length === values.length ? present : undefined;
}

function proteinOf(
  flours: readonly FormulaLine[],
  share: readonly Figure[],
  proteins: readonly (ProteinFigures | undefined)[],
  counts: (line: FormulaLine) => boolean,
  moisture: Figure,
  id: string,
  label: string,
): OnBases | undefined {
  const chosen = flours.flatMap((line, index) => {
    const part = share[index];
    return counts(line) && part !== undefined ? [{ part, protein: proteins[index] }] : [];
  });
  const stated = whole(chosen.map(({ protein }) => protein));
  if (stated === undefined) return undefined;
  const asIs = worked({
    id: `${id}.as-is`,
    label: `${label} as is`,
    unit: "%",
    places: 2,
    formula: `sum(share * protein * ${blendFactor} / factor) / 100`,
    from: {
      share: chosen.map(({ part }) => part),
      protein: stated.map(({ value }) => value),
      factor: stated.map(({ factor }) => factor),
    },
    sources: [massBalance, flourFactor],
  });
  const terms = chosen.flatMap(({ part, protein }) =>
    protein === undefined
      ? []
      : [{ weight: dec(part.value).times(blendFactor).div(protein.factor.value).div(100), figure: protein.value }],
  );
  const ranged = sumRange(asIs, terms, "protein of the flours, their moisture as stated");
  return onBases(id, label, ranged, moisture, [flourFactor]);
}

function mixedAsh(share: readonly Figure[], ash: readonly Figure[]): Figure {
  return worked({
    id: "blend.ash.as-is",
    label: "ash as is",
    unit: "%",
    places: 3,
    formula: "sum(share * ash) / 100",
    from: { share, ash },
    sources: [massBalance],
  });
}

function onBases(id: string, label: string, asIs: Figure, moisture: Figure, sources: readonly Source[]): OnBases {
  const { unit, places } = asIs;
  const dry = worked({
    id: `${id}.dry`,
    label: `${label} dry`,
    unit,
    places,
    formula: "asIs * 100 / (100 - moisture)",
    from: { asIs, moisture },
    sources: [basisRule, ...sources],
  });
  const at14 = worked({
    id: `${id}.14`,
    label: `${label} at ${flourBasis} % mb`,
    unit,
    places,
    formula: `asIs * (100 - ${flourBasis}) / (100 - moisture)`,
    from: { asIs, moisture },
    sources: [basisRule, fourteen, ...sources],
  });
  return { asIs, dry: scaledRange(dry, asIs), at14: scaledRange(at14, asIs) };
}

function wholegrainFigure(line: FormulaLine): Figure {
  return given({
    id: `${line.id}.wholegrain`,
    label: `whether ${line.name} is wholegrain`,
    unit: "",
    places: 0,
    value: line.material.wholegrain ? 1 : 0,
    by: "as stated for the material",
    sources: [line.material.source],
  });
}

interface BlendPrice {
  readonly figure: Figure;
  readonly currency: string;
  readonly figures: readonly Figure[];
}

/** The price of the blend, where every flour has one and all are in one currency. */
function blendPrice(flours: readonly FormulaLine[], share: readonly Figure[]): BlendPrice | undefined {
  const prices = whole(flours.map((line) => line.material.price));
  const currencies = new Set(prices?.map(({ currency }) => currency));
  const [currency] = currencies;
  if (prices === undefined || currencies.size !== 1 || currency === undefined) return undefined;
  const each = prices.map((price, index) =>
    given({
      id: `flour.${index + 1}.price`,
      label: `price of ${flours[index]?.name ?? "flour"}`,
      unit: `${currency}/kg`,
      places: 2,
      value: price.perKilogram,
      by: `spec, ${price.text}`,
      sources: [fromSpec],
    }),
  );
  const figure = worked({
    id: "blend.price",
    label: "price of the blend",
    unit: `${currency}/kg`,
    places: 3,
    formula: "sum(share * price) / 100",
    from: { share, price: each },
    sources: [massBalance],
  });
  return { figure, currency, figures: [...each, figure] };
}
