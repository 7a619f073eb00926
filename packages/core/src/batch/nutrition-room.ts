import { type Figure, worked } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
import type { ContentName, Contents } from "./composition.ts";
import { mainFigure } from "./composition-food.ts";
import { naming } from "./composition-naming.ts";
import type { NutritionRules } from "./nutrition-rules.ts";

/** The most that 100 g of an ingredient can hold of a content that nobody states, in the unit of the content. */
export type RoomOf = (one: Contents, content: ContentName) => Figure;

/**
 * What the other figures of an ingredient leave room for: water, ash, protein, fat and carbohydrate fill 100 g together.
 * Sodium and potassium lie within the ash, or within that room where the ash is not stated.
 */
export function roomBy(rules: NutritionRules): RoomOf {
  const fibreApart = rules.carbohydrate === "availableCarbohydrate";
  return (one, content) => {
    if (content === "sodium" || content === "potassium") return mineralRoom(one, room(one, false));
    return room(one, content === "fibre" && !fibreApart);
  };

  function room(one: Contents, withCarbohydrate: boolean): Figure {
    const { line } = one;
    const counted = [
      mainFigure(line, "moisture"),
      line.material.ash === undefined ? undefined : mainFigure(line, "ash"),
      one[rules.protein],
      one.fat,
      withCarbohydrate ? undefined : one[rules.carbohydrate],
      fibreApart ? one.fibre : undefined,
    ];
    const known = counted.filter((figure) => figure !== undefined);
    return worked({
      ...naming(line, withCarbohydrate ? "room-with-carbohydrate" : "room", "what is not otherwise stated"),
      formula: "max(100 - sum(known), 0)",
      from: { known },
      sources: [definition],
    });
  }
}

function mineralRoom({ line }: Contents, room: Figure): Figure {
  return worked({
    ...naming(line, "mineral-room", "the most sodium or potassium", "mg/100 g"),
    formula: "1000 * most",
    from: { most: line.material.ash === undefined ? room : mainFigure(line, "ash") },
    sources: [definition],
  });
}
