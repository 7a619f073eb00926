import { type Path, pathText } from "@noodlewright/core/figure";
import { keysInstead } from "@noodlewright/core/spec";

/** A value at a place of a spec; nothing where the key is to be taken out. */
export interface Put {
  readonly path: Path;
  readonly value: unknown;
}

/** Puts values into a spec. One that says the same in another way goes, unless it is put in as well. */
export function withValues(data: unknown, puts: readonly Put[]): unknown {
  const way = (path: Path): string => pathText(path.slice(0, 2));
  const kept = new Set(puts.map(({ path }) => way(path)));
  return puts.reduce<unknown>((before, { path, value }) => {
    const section = path.slice(0, 1);
    const gone = keysInstead(path.slice(0, 2)).filter((key) => !kept.has(way([...section, key])));
    return put(without(before, section, gone), path, value);
  }, data);
}

/** What stands at a place of plain data. */
export function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>((here, key) => {
    if (Array.isArray(here)) return here[Number(key)];
    return isSection(here) && Object.hasOwn(here, key) ? here[key] : undefined;
  }, data);
}

/** The words at a place of plain data; none where something else stands there. */
export function textAt(data: unknown, path: Path): string {
  const value = valueAt(data, path);
  return typeof value === "string" ? value : "";
}

/**
 * Plain data with a value at a place, without what stands there where there is none; sections on the way are made where they
 * are missing.
 *
 * @param before - the value goes in before the entry of a list that stands there
 */
export function put(data: unknown, [key, ...rest]: Path, value: unknown, before = false): unknown {
  if (key === undefined) return value;
  if (Array.isArray(data) || (data === undefined && key === 0)) {
    const list: readonly unknown[] = data ?? [];
    const at = Number(key);
    if (before && rest.length === 0) return list.toSpliced(at, 0, value);
    const entry = put(list[at], rest, value, before);
    return list.toSpliced(at, 1, ...(entry === undefined ? [] : [entry]));
  }
  const section = isSection(data) ? data : {};
  const fresh = put(section[key], rest, value, before);
  return fresh === undefined ? omit(section, [String(key)]) : { ...section, [key]: fresh };
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
