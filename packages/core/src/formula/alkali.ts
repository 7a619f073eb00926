import type { Composition } from "../chemistry/composition.ts";
import { potassiumCarbonateShare } from "../chemistry/composition.ts";
import { atomicWeightSource } from "../chemistry/elements.ts";
import { exact, type Figure, summed, worked } from "../figure/figure.ts";
import { definition, massBalance } from "../figure/source.ts";
import { type Decimal, dec, decimalText } from "../number/decimal.ts";
import { alkalinityFigure, anhydrousFigure } from "./content.ts";
import type { FormulaLine } from "./line.ts";
import { contentFigure } from "./made-of.ts";
import { sumRange, withRange } from "./ranges.ts";

/** The alkaline salts of a dough. */
export interface AlkaliFigures {
  /** Product as weighed, % of flour. */
  readonly product: Figure;
  /** Alkaline salts without any water, % of flour. */
  readonly anhydrous: Figure;
  /** K2CO3 and Na2CO3 as mass % of the neutral carbonates, where there are any. */
  readonly potassiumShare?: Figure;
  readonly sodiumShare?: Figure;
  /** To the end of bicarbonate (M) and to the end of carbonate (P), meq per 100 g flour. */
  readonly alkalinityM: Figure;
  readonly alkalinityP: Figure;
  readonly figures: readonly Figure[];
}

/** Sums up the alkaline products of a formula; undefined where there are none. */
export function sumAlkali(lines: readonly FormulaLine[]): AlkaliFigures | undefined {
  const products = lines.flatMap((line) => {
    const { composition } = line.material;
    return line.role === "alkali" && composition !== undefined ? [{ line, composition }] : [];
  });
  if (products.length === 0) return undefined;
  const parts = products.map(({ line }) => line.parts);
  const ranged = (figure: Figure, strengths: readonly Figure[], over: Decimal): Figure =>
    sumRange(
      figure,
      strengths.map((strength, index) => ({ weight: () => dec(parts[index]?.value ?? 0).div(over), figure: strength })),
      "strength of the alkaline products",
    );
  const product = summed(
    { id: "alkali.product", label: "alkaline products as weighed", unit: "% of flour", places: 3 },
    { parts },
    massBalance,
  );
  const anhydrousShares = products.map(({ line, composition }) =>
    strengthRange(anhydrousFigure(line, composition), line),
  );
  const anhydrous = ranged(
    worked(
      { id: "alkali.anhydrous", label: "anhydrous salts", unit: "% of flour", places: 3 },
      "sum(parts * anhydrous) / 100",
      { parts, anhydrous: anhydrousShares },
      massBalance,
    ),
    anhydrousShares,
    dec(100),
  );
  const strengthsTo = (end: "M" | "P"): readonly Figure[] =>
    products.map(({ line, composition }) => strengthRange(alkalinityFigure(line, composition, end), line));
  const alkalinity = (id: string, label: string, strength: readonly Figure[]) =>
    ranged(
      worked(
        { id: `alkali.${id}`, label, unit: "meq/100 g flour", places: 2 },
        "sum(parts * alkalinity)",
        { parts, alkalinity: strength },
        atomicWeightSource,
        massBalance,
      ),
      strength,
      dec(1),
    );
  const m = alkalinity("alkalinity-m", "alkalinity M", strengthsTo("M"));
  const p = alkalinity("alkalinity-p", "alkalinity P", strengthsTo("P"));
  const shares = carbonateShares(products, parts);
  const [sodiumShare, potassiumShare] = shares;
  return {
    product,
    anhydrous,
    ...(potassiumShare && { potassiumShare }),
    ...(sodiumShare && { sodiumShare }),
    alkalinityM: m,
    alkalinityP: p,
    figures: [product, anhydrous, ...shares, m, p],
  };
}

/** A strength that may be off by so many per cent of it. */
function strengthRange(figure: Figure, { material }: FormulaLine): Figure {
  const error = material.strengthUncertainty;
  if (error === undefined) return figure;
  const off = dec(figure.value).times(error).div(100);
  const why = `strength known to ± ${error} %`;
  return withRange(figure, {
    low: decimalText(dec(figure.value).minus(off)),
    high: decimalText(dec(figure.value).plus(off)),
    why,
  });
}

/** Whether a line brings some of a neutral carbonate. */
export function hasCarbonate({ role, parts, material: { composition } }: FormulaLine): boolean {
  if (role !== "alkali" || composition === undefined || exact(parts).isZero()) return false;
  return potassiumCarbonateShare(composition) !== undefined;
}

function carbonateShares(
  products: readonly { readonly line: FormulaLine; readonly composition: Composition }[],
  parts: readonly Figure[],
): readonly Figure[] {
  if (!products.some(({ line }) => hasCarbonate(line))) return [];
  const content = (name: "Na2CO3" | "K2CO3") => products.map(({ line }) => contentFigure(line, name));
  const from = { parts, sodium: content("Na2CO3"), potassium: content("K2CO3") };
  const share = (id: string, label: string, over: string) =>
    worked(
      { id, label, unit: "% of the carbonates", places: 1 },
      `100 * sum(parts * ${over}) / (sum(parts * sodium) + sum(parts * potassium))`,
      from,
      definition,
    );
  return [
    share("alkali.sodium-share", "sodium carbonate", "sodium"),
    share("alkali.potassium-share", "potassium carbonate", "potassium"),
  ];
}
