import { dirname, isAbsolute, join } from "node:path";
import { type OwnMaterials, type Problem, readMaterialsFile } from "@noodlewright/core";
import type { Io } from "../io.ts";
import { type ParsedFile, type PlacedProblem, parseFile } from "./document.ts";
import { readTextFile } from "./read-file.ts";

/** A spec as plain data, with the flags merged in and the included materials read. */
export interface LoadedSpec {
  readonly data: unknown;
  readonly included: OwnMaterials;
  readonly place: (problem: Problem) => PlacedProblem;
}

export type Loading =
  | { readonly ok: true; readonly spec: LoadedSpec }
  | { readonly ok: false; readonly problems: readonly PlacedProblem[] };

/** A value that a flag puts into the spec. */
export interface Override {
  readonly flag: string;
  readonly path: readonly string[];
  readonly value: unknown;
  /** Keys beside it that the flag takes the place of. */
  readonly instead?: readonly string[];
}

/** Reads the file of a spec and the materials files that it includes. */
export async function loadSpec(path: string, overrides: readonly Override[], io: Io): Promise<Loading> {
  const reading = await readTextFile(path, io);
  if (!reading.ok) return { ok: false, problems: [reading.problem] };
  const parsing = parseFile(reading.file);
  if (!parsing.ok) return parsing;
  const { parsed } = parsing;
  const included = await includeMaterials(parsed, path, io);
  if (!included.ok) return included;
  const data = overrides.reduce(applyOverride, parsed.data);
  return {
    ok: true,
    spec: { data, included: included.materials, place: (problem) => placeProblem(problem, parsed, overrides) },
  };
}

function placeProblem(problem: Problem, parsed: ParsedFile, overrides: readonly Override[]): PlacedProblem {
  const said = overrides.find(({ path }) => path.every((step, index) => problem.path[index] === step));
  return said === undefined ? parsed.place(problem) : { ...problem, flag: said.flag };
}

function applyOverride(data: unknown, override: Override): unknown {
  const [key, ...rest] = override.path;
  if (key === undefined) return override.value;
  const section = isSection(data) ? data : {};
  const kept = rest.length > 0 ? section : without(section, override.instead ?? []);
  return { ...kept, [key]: applyOverride(kept[key], { ...override, path: rest }) };
}

function without(
  section: Readonly<Record<string, unknown>>,
  keys: readonly string[],
): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(section).filter(([key]) => !keys.includes(key)));
}

function isSection(data: unknown): data is Readonly<Record<string, unknown>> {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}

type Inclusion =
  | { readonly ok: true; readonly materials: OwnMaterials }
  | { readonly ok: false; readonly problems: readonly PlacedProblem[] };

async function includeMaterials(parsed: ParsedFile, specPath: string, io: Io): Promise<Inclusion> {
  const names = isSection(parsed.data) ? parsed.data["include"] : undefined;
  if (!Array.isArray(names)) return { ok: true, materials: {} };
  const folder = specPath === "-" ? "." : dirname(specPath);
  const problems: PlacedProblem[] = [];
  let materials: OwnMaterials = {};
  for (const [index, name] of names.slice(0, 20).entries()) {
    if (typeof name !== "string") continue;
    const reading = await readTextFile(isAbsolute(name) ? name : join(folder, name), io);
    if (!reading.ok) {
      problems.push(parsed.place({ ...reading.problem, path: ["include", index] }));
      continue;
    }
    const parsing = parseFile(reading.file);
    const outcome = parsing.ok ? readMaterialsFile(parsing.parsed.data) : undefined;
    if (!parsing.ok) problems.push(...parsing.problems);
    else if (outcome?.ok === false) problems.push(...outcome.problems.map(parsing.parsed.place));
    else if (outcome?.ok) materials = { ...materials, ...outcome.value };
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, materials };
}
