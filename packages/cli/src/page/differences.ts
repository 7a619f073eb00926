import { type Path, pathText } from "@noodlewright/core/figure";
import { printable } from "@noodlewright/core/render";
import { textAt, valueAt } from "../input/put.ts";
import { splitTyped } from "./numbers.ts";
import { type Entry, type State, sameNumber, splitQuantity } from "./state.ts";
import { words } from "./words.ts";

/** The entries with another value than the spec has there. @param spec - as it is written */
export function others(spec: unknown, { entries }: Pick<State, "entries">): readonly Entry[] {
  return entries.filter((entry) => {
    const written = splitQuantity(valueAt(spec, entry.path));
    const { number, unit } = splitTyped(entry.text);
    const stands = valueAt(spec, entry.path);
    if (typeof stands === "string" && entry.text.trim() === stands.trim()) return false;
    const isSame = entry.text.trim() === written.text || sameNumber(number, written.text);
    return !isSame || (unit || entry.unit.replace("number", "")) !== written.unit;
  });
}

/** What was entered in place of the spec's, in words. @param today - the spec with what was entered in it */
export function differences(spec: unknown, today: unknown, state: Pick<State, "entries">): readonly string[] {
  return others(spec, state).map(({ path, text, unit }) =>
    `${placeName(today, spec, path)}: ${text} ${unit === "number" ? "" : unit}`.trim(),
  );
}

/** A place of the spec as the fields of the page name it. */
export function placeName(spec: unknown, written: unknown, path: Path): string {
  const { size, today, roll } = words;
  const named: Readonly<Record<string, string>> = {
    "batch.bowls": size.bowls,
    "batch.rawWeight": size.raw,
    "batch.cookedWeight": size.cooked,
    "batch.dough": size.dough,
    "batch.flour": size.flour,
    "batch.have.name": size.haveName,
    "batch.have.amount": size.haveAmount,
    "losses.mixing": size.lost(size.mixing),
    "losses.sheeting": size.lost(size.sheeting),
    "losses.cutting": size.lost(size.cutting),
    "temperature.flour": today.warm(today.flour),
    "temperature.room": today.warm(today.room),
    "temperature.tap": today.warm(today.tap),
    "temperature.dough": today.warm(today.dough),
    "plan.serve": roll.serve,
  };
  const nameAt = (place: Path): string => textAt(spec, [...place, "name"]);
  switch (path.at(-1) ?? "") {
    case "moisture":
      return `${nameAt(path.slice(0, -2))}, ${today.moisture}`;
    case "protein":
      return `${nameAt(path.slice(0, -2))}, ${today.protein(textAt(spec, [...path.slice(0, -1), "proteinBasis"]))}`;
    case "name":
      return path[0] === "alkali" ? today.product(textAt(written, path)) : (named[pathText(path)] ?? pathText(path));
    case "strength":
      return today.strength(path[0] === "materials" ? String(path[1]) : nameAt(path.slice(0, -3)));
    case "replaceWith":
      return today.product(nameAt(path.slice(0, -1)));
    case "division":
      return today.division(scaleName(nameAt(path.slice(0, -1)), Number(path.at(-2))));
    default:
      return named[pathText(path)] ?? pathText(path);
  }
}

/** The name of a scale; its number where the spec gives it none. */
export function scaleName(name: string, index: number): string {
  return name === "" ? `${words.today.assumedScale} ${index + 1}` : printable(name);
}
