import type { Problem } from "@noodlewright/core";
import type { Io } from "../io.ts";
import { fileProblem } from "./file-problems.ts";
import type { PlacedProblem } from "./placed-problem.ts";

/** Most that a spec and what it includes may hold, bytes. */
export const largest = 250_000;

/** Text of a file and how to call it in messages. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
  /** As they lie in the file. */
  readonly bytes: Uint8Array;
}

export type FileReading =
  | { readonly ok: true; readonly file: TextFile }
  | { readonly ok: false; readonly problem: PlacedProblem };

/**
 * Reads a text file, or standard input for `-`.
 *
 * @param most - bytes that it may have, where other files have had theirs
 */
export async function readTextFile(path: string, io: Io, most: number = largest): Promise<FileReading> {
  const name = path === "-" ? "standard input" : path;
  const refuse = (problem: Problem): FileReading => ({ ok: false, problem: { ...problem, file: name } });
  if (path === "-" && io.stdinIsTerminal()) {
    return refuse(fileProblem("file.no-input", "a terminal", "a spec", "pipe a spec in, or name its file"));
  }
  let bytes: Uint8Array;
  try {
    bytes = path === "-" ? await io.readStdin(most) : await io.readFile(path, most);
  } catch (error) {
    return refuse(unreadable(error));
  }
  const advice = "check that this is the spec";
  if (bytes.length > most) {
    const found = most < largest ? "more than 250 kB, with the files before it" : "more than 250 kB";
    return refuse(fileProblem("file.too-large", found, "at most 250 kB", advice));
  }
  const text = decode(bytes);
  if (text === undefined) {
    return refuse(fileProblem("file.not-text", "bytes that are no text", "YAML or JSON in UTF-8", advice));
  }
  return { ok: true, file: { name, text, bytes } };
}

function decode(bytes: Uint8Array): string | undefined {
  if (bytes.includes(0)) return undefined;
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function unreadable(error: unknown): Problem {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const reasons: Readonly<Record<string, readonly [found: string, advice: string]>> = {
    ENOENT: ["no file of this name", "check the name and the folder"],
    ENOTDIR: ["no file of this name", "check the name and the folder"],
    NOFILE: ["a pipe or a device", "name a file, or pipe it in and name it -"],
    EISDIR: ["a folder", "name the file in it"],
    EACCES: ["a file that may not be read", "check its permissions"],
  };
  const [found, advice] = reasons[code] ?? [`a file that cannot be read (${code})`, "check the file"];
  return fileProblem("file.unreadable", found, "a file that can be read", advice);
}
