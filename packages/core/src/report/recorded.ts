import type { Formula } from "../formula/formula.ts";
import { plainName } from "../materials/nearest.ts";
import { recordedNames, recordedOnly, recordedTexts } from "../materials/recorded.ts";
import type { Lot } from "../spec/blend-schema.ts";
import { listing, section, wordColumn } from "./build.ts";
import type { Section } from "./schema.ts";

/** What the certificates of the materials of a formula say beside the figures it is worked out from, a line each. */
export function recordedLines({ lines, dusting }: Formula): readonly string[] {
  return [...lines, ...(dusting ? [dusting] : [])].flatMap(({ name, material }) => {
    const texts = recordedTexts(material.recorded ?? {}).map((pair) => pair.join(" "));
    return texts.length === 0 ? [] : [`${name}: ${texts.join(", ")}`];
  });
}

/** The recorded figures of a formula. */
export function recordedSection(formula: Formula): Section {
  const lines = recordedLines(formula);
  return section(
    "recorded",
    "On record, from the certificates",
    lines.length === 0 ? [] : [...lines.map((line) => `${line}.`), recordedOnly],
  );
}

/** The recorded figures of a new lot beside those of the lot before. */
export function lotsSection(formula: Formula, lot: Lot): Section {
  const old = formula.lines.find(({ role, name }) => role === "flour" && plainName(name) === plainName(lot.of));
  const before = new Map(recordedTexts(old?.material.recorded ?? {}));
  const now = new Map(recordedTexts(lot.figures.recorded ?? {}));
  const names = Object.values(recordedNames).filter((name) => before.has(name) || now.has(name));
  const lots = listing("lots", names, [
    [wordColumn("what", "on record"), (name) => name],
    [wordColumn("before", "lot before"), (name) => before.get(name) ?? "–"],
    [wordColumn("now", "new lot"), (name) => now.get(name) ?? "–"],
  ]);
  return section("lots", "The lots beside each other", lots, names.length === 0 ? [] : [recordedOnly]);
}
