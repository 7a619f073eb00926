import { type Figure, worked } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
import { shareAsIs } from "../formula/flour-figures.ts";
import { moistureFigure } from "../formula/made-of.ts";
import { contentOf, type NutrientName, nutrients } from "../materials/nutrients.ts";
import type { RuleBookName } from "../materials/rounding-rules.ts";
import type { Contents } from "./composition.ts";
import { naming } from "./composition-naming.ts";

/** The most that 100 g of an ingredient can hold of a nutrient that nobody states, in the unit of its content. */
type RoomOf = (one: Contents, nutrient: NutrientName) => Figure;

/**
 * What the other figures of an ingredient leave room for: water, ash, protein, fat and carbohydrate fill 100 g together.
 * Sodium and potassium lie within the ash, or within that room where the ash is not stated.
 */
export function roomBy(book: RuleBookName): RoomOf {
  const held = (one: Contents, name: NutrientName): Figure | undefined => {
    const content = contentOf(name, book);
    return content && one[content];
  };
  const fibreApart = contentOf("carbohydrate", book) === "availableCarbohydrate";
  return (one, nutrient) => {
    const { within } = nutrients[nutrient];
    if (within === "ash") return mineralRoom(one, room(one, false));
    return room(one, within === "carbohydrate" && !fibreApart);
  };

  function room(one: Contents, withCarbohydrate: boolean): Figure {
    const { line } = one;
    const counted = [
      moistureFigure(line),
      shareAsIs(line, "ash"),
      held(one, "protein"),
      one.fat,
      withCarbohydrate ? undefined : held(one, "carbohydrate"),
      fibreApart ? one.fibre : undefined,
    ];
    const known = counted.filter((figure) => figure !== undefined);
    return worked(
      naming(line, withCarbohydrate ? "room-with-carbohydrate" : "room", "what is not otherwise stated"),
      "max(100 - sum(known), 0)",
      { known },
      definition,
    );
  }
}

function mineralRoom({ line }: Contents, room: Figure): Figure {
  return worked(
    naming(line, "mineral-room", "the most sodium or potassium", "mg/100 g"),
    "1000 * most",
    { most: shareAsIs(line, "ash") ?? room },
    definition,
  );
}
