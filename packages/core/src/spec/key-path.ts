import { answer, type Outcome, type Path, pathText, problem, refuse } from "../figure/problem.ts";
import { nearestNames, plainName } from "../materials/nearest.ts";
import { keysAt, kindAt, unknownKey } from "./read-spec.ts";
import { specSchema } from "./spec.ts";
import { describeAt } from "./walk.ts";

/**
 * The keys beside one that say the same in another way, so that one takes the place of the others.
 *
 * @example keysInstead(["water", "tap"]) // => ["added", "dough"]
 */
export function keysInstead(path: Path): readonly string[] {
  const key = path.at(-1);
  const { ways = [] } = describeAt(specSchema, path.slice(0, -1));
  const way = ways.find(({ keys }) => keys.some((one) => one === key));
  return way?.keys.filter((one) => one !== key) ?? [];
}

const step = /(?:^|\.)(?:"(?<quoted>[^"]+)"|(?<plain>[^."[\]]+))|\[(?<index>\d{1,4})\]/uy;

/**
 * Reads where in a spec a value stands: `water.added`, `flours[0].amount`, `flours.bread flour.amount`. A name with a dot
 * or a bracket in it stands in double quotes.
 *
 * @example readKeyPath('prices."flour T.55"') // => ["prices", "flour T.55"]
 */
export function readKeyPath(text: string): Path | undefined {
  const path: (string | number)[] = [];
  step.lastIndex = 0;
  while (step.lastIndex < text.length) {
    const groups = step.exec(text)?.groups;
    if (groups === undefined) return undefined;
    const { quoted, plain = "", index } = groups;
    path.push(index === undefined ? (quoted ?? plain.trim()) : Number(index));
  }
  return path.length === 0 || path.includes("") ? undefined : path;
}

/**
 * The same place with the number of each entry that is named in a list, and names as the spec writes them.
 *
 * @param spec - plain data of a spec, which need not be right
 * Problems: `spec.unknown-key`, `path.no-entry`, `path.several`, `path.deeper`.
 * @example keyPathIn({ flours: [{ name: "rye flour" }] }, ["flours", "Rye flour", "amount"]).value // => ["flours", 0, "amount"]
 */
export function keyPathIn(spec: unknown, path: Path): Outcome<Path> {
  const known: (string | number)[] = [];
  let here: unknown = spec;
  for (const asked of path) {
    const found = stepIn(here, known, asked);
    if (!found.ok) return found;
    known.push(found.value);
    here = partOf(here, found.value);
  }
  return answer(known);
}

function stepIn(here: unknown, known: Path, asked: string | number): Outcome<string | number> {
  const kind = kindAt(specSchema, known);
  if (kind === "list") return entryIn(here, known, asked);
  if (kind === "names") return answer(keyOf(here, String(asked)) ?? String(asked));
  const keys = keysAt(specSchema, known);
  if (keys.length === 0) return refuse(problem("path.deeper", [...known, asked], {}));
  return keys.includes(String(asked)) ? answer(String(asked)) : refuse(unknownKey(String(asked), known, specSchema));
}

function entryIn(here: unknown, known: Path, asked: string | number): Outcome<number> {
  const entries: readonly unknown[] = Array.isArray(here) ? here : [];
  const names = entries.map((entry) => {
    const name = partOf(entry, "name");
    return typeof name === "string" ? name : "";
  });
  const named = names.flatMap((name, index) => (plainName(name) === plainName(String(asked)) ? [index] : []));
  const [index, ...others] = typeof asked === "number" ? [asked] : named;
  const path = [...known, asked];
  if (others.length > 0) {
    const entries = named.map((one) => pathText([...known, one]));
    return refuse(problem("path.several", path, { name: String(asked), entries }));
  }
  if (index !== undefined && index < entries.length) return answer(index);
  const nearest = nearestNames(String(asked), names, 1);
  return refuse(problem("path.no-entry", path, { entry: String(asked), names, nearest }));
}

/** The key of a section that means a name, as it is written there. */
function keyOf(here: unknown, name: string): string | undefined {
  const keys = typeof here === "object" && here !== null ? Object.keys(here) : [];
  return keys.find((key) => plainName(key) === plainName(name));
}

function partOf(here: unknown, key: string | number): unknown {
  if (typeof here !== "object" || here === null || !Object.hasOwn(here, key)) return undefined;
  return (here as Readonly<Record<string | number, unknown>>)[key];
}
