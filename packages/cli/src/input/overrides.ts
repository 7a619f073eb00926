import { keyPathIn, keysInstead, readKeyPath } from "@noodlewright/core";
import { type Path, pathText } from "@noodlewright/core/figure";
import { parseDocument } from "yaml";
import type { PlacedProblem } from "./placed-problem.ts";
import { ownProblem } from "./problem.ts";

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
      problems.push({ ...ownProblem("path.unreadable", { said: text }), flag: setFlagName });
    } else if (place.ok) overrides.push({ ...set, path: place.value });
    else problems.push(...place.problems.map((one) => ({ ...one, flag: setFlagName })));
  }
  const kept = new Set(overrides.map(({ path }) => pathText(path)));
  const changed = overrides.reduce<unknown>((before, override) => {
    const section = override.path.slice(0, -1);
    const gone = keysInstead(override.path).filter((key) => !kept.has(pathText([...section, key])));
    return put(without(before, section, gone), override.path, override.value);
  }, data);
  return { data: changed, overrides, problems };
}

/** Plain data with a value at a place; sections on the way are made where they are missing. */
function put(data: unknown, [key, ...rest]: Path, value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(data))
    return data.map((entry: unknown, index) => (index === key ? put(entry, rest, value) : entry));
  const section = isSection(data) ? data : {};
  if (rest.length === 0 && value === undefined) return omit(section, [String(key)]);
  return { ...section, [key]: put(section[key], rest, value) };
}

function without(data: unknown, section: Path, keys: readonly string[]): unknown {
  if (keys.length === 0) return data;
  const [key, ...rest] = section;
  if (!isSection(data)) return data;
  return key === undefined ? omit(data, keys) : { ...data, [key]: without(data[key], rest, keys) };
}

function omit(section: Section, keys: readonly string[]): Section {
  return Object.fromEntries(Object.entries(section).filter(([key]) => !keys.includes(key)));
}

type Section = Readonly<Record<string | number, unknown>>;

/** Whether plain data is a section with keys. */
export function isSection(data: unknown): data is Section {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}
