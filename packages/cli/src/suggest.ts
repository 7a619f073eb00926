import { nearestNames } from "@noodlewright/core/chemistry";

/** A message about an unknown word, with the name that was most likely meant. */
export function withNearest(message: string, word: string, names: readonly string[]): string {
  const nearest = nearestNames(word, names, 1)[0];
  return nearest === undefined ? message : `${message}; did you mean ${nearest}?`;
}
