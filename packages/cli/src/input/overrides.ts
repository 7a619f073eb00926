import { type Path, pathText } from "@noodlewright/core/figure";
import { type KeySample, keyPathIn, keySamples, readKeyPath, valueMeant } from "@noodlewright/core/spec";
import { parseDocument } from "yaml";
import type { PlacedProblem } from "./placed-problem.ts";
import { type AnyProblem, ownProblem } from "./problem.ts";
import { isSection, withValues } from "./put.ts";

/** A value that a flag puts into the spec. */
export interface Override {
  readonly flag: string;
  readonly path: Path;
  /** Nothing where the key is to be taken out. */
  readonly value: unknown;
  /** A right value, for the advice. */
  readonly example?: string;
}

/** What the flag says that takes any key of the spec. */
export const setFlagName = "--set";

/** Reads `water.added=38 %`, the value as it would be read in a spec; nothing after the sign takes the key out. */
export function readSet(said: string): Override | undefined {
  const sign = said.indexOf("=");
  const path = sign < 0 ? undefined : readKeyPath(said.slice(0, sign).trim());
  return path && { flag: setFlagName, path, value: readValue(said.slice(sign + 1).trim()) };
}

function readValue(text: string): unknown {
  if (text === "") return undefined;
  try {
    const document = parseDocument(text, { prettyErrors: false });
    return document.errors.length > 0 ? text : document.toJS();
  } catch {
    return text;
  }
}

/** A problem of what `--set` says, and what would be right there: for a name that is not there, with the nearest one. */
export function atSet(problem: AnyProblem, { path, value }: Pick<Override, "path" | "value">): PlacedProblem {
  const { code, path: at, facts } = problem;
  const [nearest] = "nearest" in facts && Array.isArray(facts.nearest) ? facts.nearest : [];
  const below = path.slice(at.length);
  const meant = [...at.slice(0, -1), ...(typeof nearest === "string" ? [nearest] : []), ...below];
  const entries = problem.code === "path.several" ? problem.facts.entries : [];
  const right = valueMeant(problem) ?? value;
  const place =
    problem.code === "spec.unknown-key" && problem.facts.elsewhere !== undefined
      ? problem.facts.elsewhere
      : code === "path.unreadable"
        ? path
        : at;
  const own = code === "path.no-entry" ? [] : keySamples(place, right);
  const beside =
    code === "spec.unknown-key" && nearest === undefined && at.length > 1 ? keySamples(at.slice(0, -1), right) : [];
  const fitting = beside.filter((line) => line.value === String(value)).slice(0, 2);
  const all = own.length > 0 || nearest === undefined ? [...fitting, ...own] : keySamples(meant, right);
  // A value that was refused at a key that is right is no example of what would be right there.
  const isOfKey = code.startsWith("spec.") || code.startsWith("path.");
  const samples = isOfKey ? all : all.filter((line) => line.value !== String(value));
  const each = entries.map(
    (entry): KeySample => ({ path: [...(readKeyPath(entry) ?? []), ...below], value: String(value) }),
  );
  const lines = (each.length > 0 ? each : samples).map((one) => `${setFlagName} '${pathText(one.path)}=${one.value}'`);
  return { ...problem, flag: setFlagName, ...(lines.length > 0 && { lines }) };
}

/** A spec with what flags say in it, and where each of them stands. */
export interface Overridden {
  readonly data: unknown;
  readonly overrides: readonly Override[];
  readonly problems: readonly PlacedProblem[];
}

/** Puts what flags say into a spec. A flag takes the place of what the spec says, not of what another flag says. */
export function withOverrides(data: unknown, said: readonly Override[], sets: readonly string[]): Overridden {
  if (!isSection(data)) return { data, overrides: said, problems: [] };
  const problems: PlacedProblem[] = [];
  const overrides = [...said];
  for (const text of sets) {
    const set = readSet(text);
    const place = set && keyPathIn(data, set.path);
    if (set === undefined || place === undefined) {
      const [key = ""] = text.split("=");
      const path = readKeyPath(key.trim()) ?? [];
      problems.push(atSet(ownProblem("path.unreadable", { said: text }), { path, value: undefined }));
    } else if (place.ok) overrides.push({ ...set, path: place.value });
    else problems.push(...place.problems.map((one) => atSet(one, set)));
  }
  return { data: withValues(data, overrides), overrides, problems };
}
