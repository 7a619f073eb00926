import { type Figure, given } from "../figure/figure.ts";
import { fromSpec } from "../figure/source.ts";
import type { Quantity } from "../number/quantity.ts";

/** A mass that the spec states, g. */
export function statedMass(id: string, label: string, quantity: Quantity): Figure {
  const { value, text } = quantity;
  return given({ id, label, unit: "g", places: 1, value, by: `spec, ${text}`, sources: [fromSpec] });
}
