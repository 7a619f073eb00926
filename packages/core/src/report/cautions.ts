import { sharesOf } from "../chemistry/composition.ts";
import { burns, irritates, unclassed, unclassedSalts } from "../chemistry/hazard.ts";
import type { Formula } from "../formula/formula.ts";
import { type FormulaLine, inUse } from "../formula/line.ts";
import { dec, HUNDRED } from "../number/decimal.ts";

/**
 * The usual cautions for what a formula contains. They defer to the label, the safety data sheet and local codes.
 *
 * Source: hazard statements H319 of sodium carbonate, H315, H319 and H335 of potassium carbonate and of the neutral
 * phosphates, and H314 of the hydroxides, as suppliers print them; public advice of food authorities on raw flour and
 * raw egg.
 */
export function formulaCautions(formula: Formula): readonly string[] {
  const lines = inUse(formula.lines);
  const species = lines.flatMap((line) =>
    line.role !== "alkali" || line.material.composition === undefined
      ? []
      : sharesOf(line.material.composition).map(([name]) => name),
  );
  const egg = lines.some((line) => line.material.kind === "egg");
  return [
    ...(species.some(irritates) ? [irritating] : []),
    ...(species.some(burns) ? [burning] : []),
    ...unclassedSalts([...new Set(species.filter(unclassed))]),
    ...lines.flatMap(({ material }) => material.cautions ?? []),
    ...lines.flatMap(saltOfItsOwn),
    ...(egg
      ? ["Raw egg can carry Salmonella: keep the dough cold, cook the noodles through, wash hands and tools."]
      : []),
    "Raw flour can carry pathogens: do not taste raw dough, and cook the noodles. Local food codes apply.",
  ];
}

const irritating =
  "Alkaline salts irritate eyes, skin and airways: keep dust down, wear eye protection, rinse splashes with much water. Use food grade only, and follow the label and the safety data sheet.";
const burning =
  "Hydroxides burn skin and eyes: goggles and gloves, add them to water and never water to them, no aluminium. Follow the safety data sheet; local codes may not allow them in noodles.";

/** Sodium in mg on 100 g of dry matter that plain flours and plain eggs of the tables stay below. */
const plainSodium = { flour: 200, egg: 2000 } as const;

/** A leavened flour, a protein isolate and a salted yolk bring what the salt and the alkali of the formula do not count. */
function saltOfItsOwn({ name, material: { kind, sodium, moisture } }: FormulaLine): readonly string[] {
  if ((kind !== "flour" && kind !== "egg") || sodium === undefined) return [];
  if (dec(sodium).times(100).lte(HUNDRED.minus(moisture).times(plainSodium[kind]))) return [];
  const acid = kind === "flour" ? " If it is leavened, its acid uses up part of the alkali: take a plain flour." : "";
  return [
    `${name} brings ${sodium} mg of sodium in 100 g, which the salt of the formula does not count: salt that much less.${acid}`,
  ];
}
