import { type Figure, given } from "../figure/figure.ts";
import { fromSpec } from "../figure/source.ts";
import type { Quantity } from "../number/quantity.ts";

/** A mass that the spec states, g. */
export function statedMass(id: string, label: string, quantity: Quantity): Figure {
  const { value, text } = quantity;
  return given({ id, label, unit: "g", places: 1, value, by: `spec, ${text}`, sources: [fromSpec] });
}

/** The largest or the smallest load that the spec states for the mixer, g of dough or of flour. */
export function mixerLimit(size: "largest" | "smallest", { value, text }: Quantity, of: string | undefined): Figure {
  const naming = { id: `mixer.${size}`, label: `${size} load`, unit: "g", places: 0 };
  return given({ ...naming, value, by: `spec, ${text} of ${of ?? "dough"}`, sources: [fromSpec] });
}
