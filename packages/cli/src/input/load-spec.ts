import { dirname, isAbsolute, join } from "node:path";
import { type Problem, readStatedNoodle } from "@noodlewright/core";
import type { Path } from "@noodlewright/core/figure";
import { type Kitchen, keyPathIn, readKitchenFile, readSpec } from "@noodlewright/core/spec";
import type { Io } from "../io.ts";
import { beyond } from "./beyond.ts";
import { type ParsedFile, parseFile } from "./document.ts";
import { atSet, type Override, setFlagName, withOverrides } from "./overrides.ts";
import type { Placed, PlacedProblem } from "./placed-problem.ts";
import { type AnyProblem, ownProblem } from "./problem.ts";
import { isSection, type Put, valueAt, withValues } from "./put.ts";
import { type FileReading, largest, readTextFile, type TextFile } from "./read-file.ts";

/** A spec as plain data, with the flags merged in and the included kitchen files read. */
export interface LoadedSpec {
  readonly data: unknown;
  /** What flags say, and where. */
  readonly overrides: readonly Override[];
  /** The spec, then the files it includes. */
  readonly files: readonly TextFile[];
  /** Those of the included files. */
  readonly kitchens: readonly Kitchen[];
  readonly place: (problem: Problem) => PlacedProblem;
}

/** What flags say about a spec. */
export interface Said {
  readonly overrides: readonly Override[];
  /** What `--set` says, as it was said. */
  readonly sets: readonly string[];
}

/** Reads the file of a spec and the kitchen files that it includes; their machines only for what needs them. */
export async function loadSpec(
  path: string,
  said: Said,
  io: Io,
  needs: "materials" | "machines" = "materials",
): Promise<Placed<{ spec: LoadedSpec }>> {
  const reading = await readTextFile(path, io);
  if (!reading.ok) return reading;
  const parsing = parseFile(reading.file);
  if (!parsing.ok) return parsing;
  const { parsed } = parsing;
  const before = withOverrides(parsed.data, said.overrides, said.sets);
  const room = largest - reading.file.bytes.length;
  const included = await includeKitchen(before.data, path, io, {
    needs,
    room,
    place: (problem) => placeProblem(problem, parsed, before.overrides),
  });
  const changed = changedEntries(before.overrides, parsed.data, included.data);
  const { data, overrides, problems } =
    changed.length === 0 ? before : withOverrides(withValues(parsed.data, changed), said.overrides, said.sets);
  const place = (problem: AnyProblem): PlacedProblem => placeProblem(problem, parsed, overrides);
  const faults = [...parsed.duplicates, ...problems, ...included.problems];
  if (faults.length > 0) {
    const rest =
      included.problems.length > 0
        ? readSpec(data)
        : readStatedNoodle(data, { kitchens: included.kitchens }, await beyond(data));
    return { ok: false, problems: [...faults, ...(rest.ok ? [] : rest.problems.map(place))] };
  }
  const { kitchens, files } = included;
  return { ok: true, spec: { data, overrides, files: [reading.file, ...files], kitchens, place } };
}

function placeProblem(problem: AnyProblem, parsed: ParsedFile, overrides: readonly Override[]): PlacedProblem {
  const said = overrides.find(({ path }) => path.every((step, index) => problem.path[index] === step));
  if (said === undefined) {
    const made = overrides.find(({ path }) => makes(path, problem.path, parsed.data));
    if (made !== undefined) return { ...problem, flag: made.flag };
    const counted = overrides.find(({ path }) => countsIn(path, problem.path));
    return counted === undefined ? parsed.place(problem) : { ...problem, path: counted.path, flag: counted.flag };
  }
  if (said.flag === setFlagName) return atSet(problem, said);
  return { ...problem, flag: said.flag, ...(said.example !== undefined && { example: said.example }) };
}

/** Whether a flag says an amount of the list that a problem is about, such as of shares that do not come to 100 %. */
function countsIn(path: Path, list: Path): boolean {
  return path.at(-1) === "amount" && path.length === list.length + 2 && list.every((step, at) => path[at] === step);
}

/** Whether a flag made the entry that a problem lies in: the value is within it, and the file has no such entry. */
function makes(path: Path, entry: Path, data: unknown): boolean {
  if (entry.length === 0 || !entry.every((step, index) => path[index] === step)) return false;
  let here = data;
  for (const step of entry) here = isSection(here) ? here[String(step)] : undefined;
  return here === undefined;
}

/** The entries of included files of which a flag changes a part, as they stand there: the spec then has its own. */
function changedEntries(overrides: readonly Override[], spec: unknown, included: readonly unknown[]): readonly Put[] {
  return overrides.flatMap(({ path }) => {
    const entry = path.slice(0, 2);
    if (path.length < 3 || !["materials", "machines"].includes(String(path[0])) || valueAt(spec, entry)) return [];
    const entries = included.flatMap((one) => {
      const place = keyPathIn(one, entry);
      return place.ok ? [{ path: place.value, value: valueAt(one, place.value) }] : [];
    });
    return entries.filter(({ value }) => value !== undefined).slice(-1);
  });
}

/** A spec from elsewhere may name any file: of what is no kitchen file, nothing is quoted. */
async function readKitchenText(path: string, io: Io, most: number): Promise<FileReading> {
  const reading = await readTextFile(path, io, most);
  if (!reading.ok || /^[\s{]*["']?(?:materials|machines)["']?\s*:/mu.test(reading.file.text)) return reading;
  return { ok: false, problems: [{ ...ownProblem("file.no-kitchen", {}), file: path }] };
}

interface Inclusion {
  readonly kitchens: readonly Kitchen[];
  readonly files: readonly TextFile[];
  /** What they say, where all of it can be read. */
  readonly data: readonly unknown[];
  readonly problems: readonly PlacedProblem[];
}

interface Inclusive {
  readonly needs: "materials" | "machines";
  /** Bytes that the included files may have together. */
  readonly room: number;
  /** Where a problem of the spec lies. */
  readonly place: (problem: AnyProblem) => PlacedProblem;
}

async function includeKitchen(
  data: unknown,
  specPath: string,
  io: Io,
  { needs, room, place }: Inclusive,
): Promise<Inclusion> {
  const names = isSection(data) ? data["include"] : undefined;
  if (!Array.isArray(names)) return { kitchens: [], files: [], data: [], problems: [] };
  const folder = specPath === "-" ? "." : dirname(specPath);
  const problems: PlacedProblem[] = [];
  const kitchens: Kitchen[] = [];
  const files: TextFile[] = [];
  const said: unknown[] = [];
  let left = room;
  for (const [index, name] of names.slice(0, 20).entries()) {
    if (typeof name !== "string") continue;
    const reading = await readKitchenText(isAbsolute(name) ? name : join(folder, name), io, left);
    if (!reading.ok) {
      for (const { file: named, ...problem } of reading.problems)
        problems.push({ ...place({ ...problem, path: ["include", index] }), ...(named !== undefined && { named }) });
      continue;
    }
    files.push(reading.file);
    left -= reading.file.bytes.length;
    const parsing = parseFile(reading.file);
    if (!parsing.ok) {
      problems.push(...parsing.problems);
      continue;
    }
    const outcome = readKitchenFile(parsing.parsed.data, needs === "materials" ? needs : undefined);
    problems.push(...parsing.parsed.duplicates);
    if (outcome.ok) {
      kitchens.push(outcome.value);
      said.push(parsing.parsed.data);
    } else problems.push(...outcome.problems.map(parsing.parsed.place));
  }
  return { kitchens, files, data: said, problems };
}
