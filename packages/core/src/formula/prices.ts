import { type Figure, given } from "../figure/figure.ts";
import { fromSpec } from "../figure/source.ts";
import { materialName } from "../materials/catalogue.ts";
import { minorPlaces } from "../materials/currencies.ts";
import type { KitchenMaterial } from "../materials/own.ts";
import type { Spec } from "../spec/spec.ts";
import type { FormulaLine } from "./line.ts";

/** What a spec states by the names of its materials. */
type Bought = Partial<Pick<Spec, "prices" | "stock">>;

/** A material with its price and what there is of it: those that the spec states by its name come before its own. */
export function bought(name: string, material: KitchenMaterial, { prices, stock }: Bought): KitchenMaterial {
  return overlaid(material, { price: byName(prices, name), stock: byName(stock, name) });
}

function byName<Value>(stated: Readonly<Record<string, Value>> = {}, name: string): Value | undefined {
  const sought = materialName(name);
  return Object.entries(stated).find(([key]) => materialName(key) === sought)?.[1];
}

function overlaid(
  material: KitchenMaterial,
  { price, stock }: { readonly [Key in "price" | "stock"]: KitchenMaterial[Key] | undefined },
): KitchenMaterial {
  return price === undefined && stock === undefined
    ? material
    : { ...material, ...(price && { price }), ...(stock && { stock }) };
}

/** The lines of a formula, each as it is bought; what is stated nowhere else is that of another line of the same material. */
export function boughtLines(lines: readonly FormulaLine[], spec: Bought): readonly FormulaLine[] {
  const own = lines.map((line) => ({ ...line, material: bought(line.name, line.material, spec) }));
  return own.map((line) => {
    const { material } = line;
    const alike = sameMaterial(line, own);
    const first = <Key extends "price" | "stock">(key: Key) =>
      material[key] ?? alike.find((one) => one.material[key] !== undefined)?.material[key];
    return { ...line, material: overlaid(material, { price: first("price"), stock: first("stock") }) };
  });
}

/** The lines of the same material, whatever name each has. */
export function sameMaterial({ name }: FormulaLine, lines: readonly FormulaLine[]): readonly FormulaLine[] {
  const sought = materialName(name);
  return lines.filter((one) => materialName(one.name) === sought);
}

/** Decimal places that a price by weight, and what a bowl costs, are told to beyond those of the currency. */
export const finerPlaces = 2;

/** The price of a material, one figure for all of its lines; nothing where none is stated. */
export function priceFigure(line: FormulaLine, lines: readonly FormulaLine[]): Figure | undefined {
  const { price } = line.material;
  if (price === undefined) return undefined;
  const { id, name } = sameMaterial(line, lines).find(({ material }) => material.price?.text === price.text) ?? line;
  const places = (minorPlaces(price.currency) ?? 2) + finerPlaces;
  const naming = { id: `${id}.price`, label: `price of ${name}`, unit: `${price.currency}/kg`, places };
  return given(naming, price.perKilogram, `stated, ${price.text}`, fromSpec);
}
