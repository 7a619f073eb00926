import { answer, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";

/** Most values that a spec may have in all, and most levels that they may lie deep. */
const mostValues = 10_000;
const mostLevels = 20;

/**
 * A copy of what should be plain data: lists and keyed values as they are when they are read, once. What is too much or too
 * deep is refused before anybody looks at it closer, and so is what cannot be read at all.
 *
 * Problems: `spec.too-large`, `spec.too-deep`, `spec.not-data`, `spec.unknown-key`.
 */
export function plainData(input: unknown): Outcome<unknown> {
  let left = mostValues;
  let found: Problem | undefined;
  const path: (string | number)[] = [];
  const copyAt = (place: string | number, value: unknown): unknown => {
    path.push(place);
    const copied = copy(value);
    path.pop();
    return copied;
  };
  const copy = (value: unknown): unknown => {
    left -= 1;
    if (left < 0) found ??= problem("spec.too-large", [], { most: mostValues });
    if (found !== undefined || typeof value !== "object" || value === null) return value;
    if (path.length > mostLevels) {
      found = problem("spec.too-deep", [...path], {});
      return undefined;
    }
    if (Array.isArray(value)) {
      if (value.length > left) found = problem("spec.too-large", [], { most: mostValues });
      return found === undefined ? Array.from(value, (one: unknown, index) => copyAt(index, one)) : undefined;
    }
    // Of a map, a date or bytes, keys with values tell nothing.
    if (Object.prototype.toString.call(value) !== "[object Object]") {
      found = problem("spec.not-data", [...path], {});
      return undefined;
    }
    const parts: Record<string, unknown> = {};
    for (const key in value) {
      if (!Object.hasOwn(value, key)) continue;
      // The schema tells it at the root; the lists of names within would pass it over.
      if (key === "__proto__" && path.length > 0) {
        found ??= problem("spec.unknown-key", [...path, key], { key, allowed: [], nearest: [] });
      }
      if (found !== undefined) return undefined;
      const part = copyAt(key, (value as Readonly<Record<string, unknown>>)[key]);
      if (key !== "__proto__") parts[key] = part;
      else Object.defineProperty(parts, key, { value: part, enumerable: true, configurable: true, writable: true });
    }
    return parts;
  };
  try {
    const data = copy(input);
    return found === undefined ? answer(data) : refuse(found);
  } catch {
    return refuse(problem("spec.not-data", [], {}));
  }
}
