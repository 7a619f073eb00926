import { sharesOf } from "../chemistry/composition.ts";
import type { SpeciesName } from "../chemistry/species.ts";
import { type Figure, given, type Naming, worked } from "../figure/figure.ts";
import { definition, type Source } from "../figure/source.ts";
import { basisRule, dryRatio, flourBasis } from "../materials/moisture.ts";
import type { Stated } from "../materials/own.ts";
import type { FormulaLine } from "./line.ts";
import { percent } from "./naming.ts";
import { withRange } from "./ranges.ts";

/** An ingredient, in a formula or beside it. */
export type Product = Pick<FormulaLine, "id" | "name" | "material">;

const asStated = "as stated for the material";

/** Moisture of a material as a figure: stated, or what its other parts leave. */
export function moistureFigure(product: Product): Figure {
  const { id, name, material } = product;
  const { composition, figureSources } = material;
  const naming = percent(`${id}.moisture`, `moisture of ${name}`);
  if (composition !== undefined && material.waterIsRest) {
    const content = sharesOf(composition).map(([salt]) => contentFigure(product, salt));
    const inert = given(
      percent(`${id}.inert`, `inert matter in ${name}`),
      composition.inert,
      asStated,
      figureSources.composition,
    );
    const rest = { ...naming, bounds: { least: "0" } };
    return worked(rest, "100 - sum(content) - inert", { content, inert }, definition);
  }
  const figure = given(naming, material.moisture, material.by?.moisture ?? asStated, figureSources.moisture);
  return withRange(figure, material.ranges?.moisture);
}

/** What a product holds of a salt, % of the product; at a moisture of its own it holds as much of it in its dry matter. */
export function contentFigure(product: Product, salt: SpeciesName): Figure {
  const { id, name, material } = product;
  const { composition, composedAt } = material;
  const naming = percent(`${id}.${salt}`, `${salt} in ${name}`);
  const source = material.figureSources.composition;
  const before = composedAt?.species[salt];
  return before === undefined || composedAt === undefined
    ? given(naming, composition?.species[salt] ?? 0, "composition of the product", source)
    : toAsIs(naming, { value: before, basis: composedAt.water }, product, [source]);
}

/** A share that is stated on a moisture, brought to that of the material. */
export function toAsIs(
  naming: Naming,
  { value: stated, basis, assumed }: Omit<Stated, "basis"> & { readonly basis: string },
  product: Product,
  sources: readonly Source[],
): Figure {
  const what = naming.label.replace(/ as is$/u, "");
  const onBasis = given(
    { ...naming, id: `${naming.id}-stated`, label: `${what} at ${basis} % mb` },
    stated,
    asStated,
    ...sources,
  );
  const statedOn = given(
    percent(`${naming.id}-basis`, `moisture that the ${what} is stated on`),
    basis,
    assumed ? flourBasis.by : asStated,
    ...(assumed ? [flourBasis.source] : sources),
  );
  return worked(
    naming,
    `stated * ${dryRatio("basis", "moisture")}`,
    { stated: onBasis, moisture: moistureFigure(product), basis: statedOn },
    ...sources,
    basisRule,
  );
}
