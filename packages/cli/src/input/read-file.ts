import type { Io } from "../io.ts";
import type { Placed } from "./placed-problem.ts";
import { type AnyProblem, ownProblem } from "./problem.ts";

/** Most that a spec and what it includes may hold, bytes. */
export const largest = 250_000;

/** Most that a workbook may hold, packed, bytes: pictures that are not read count. */
export const largestWorkbook = 20_000_000;

/** Text of a file and how to call it in messages. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
  /** As they lie in the file. */
  readonly bytes: Uint8Array;
}

/** A text, why there is none, or nothing where the bytes are no text. */
export type TextOrNot = string | AnyProblem | undefined;

export type FileReading = Placed<{ file: TextFile }>;

/**
 * Reads a text file, or standard input for `-`.
 *
 * @param most - bytes that it may have, where other files have had theirs
 * @param textOf - the text in its bytes, where it may be more than a text in UTF-8
 */
export async function readTextFile(
  path: string,
  io: Io,
  most: number = largest,
  textOf: (bytes: Uint8Array, name: string) => TextOrNot | Promise<TextOrNot> = plainText,
): Promise<FileReading> {
  const name = path === "-" ? "standard input" : path;
  const refuse = (problem: AnyProblem): FileReading => ({ ok: false, problems: [{ ...problem, file: name }] });
  if (path === "-" && io.stdinIsTerminal()) return refuse(ownProblem("file.no-input", {}));
  let bytes: Uint8Array;
  try {
    bytes = path === "-" ? await io.readStdin(most) : await io.readFile(path, most);
  } catch (error) {
    return refuse(ownProblem("file.unreadable", { error: codeOf(error) }));
  }
  if (bytes.length > most) return refuse(tooLarge(most < largest));
  const text = await textOf(bytes, name);
  if (text === undefined) return refuse(ownProblem("file.not-text", { packed: isPacked(bytes) }));
  if (typeof text !== "string") return refuse(text);
  return { ok: true, file: { name, text, bytes } };
}

/** More in a file than a text may hold, or than the files before it left. */
export function tooLarge(left = false): AnyProblem {
  return ownProblem("file.too-large", { of: left ? "bytes left" : "bytes", most: "250 kB" });
}

/** The text of bytes in UTF-8; undefined where they are none. */
export function plainText(bytes: Uint8Array): string | undefined {
  if (bytes.includes(0)) return undefined;
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** What the system calls a failure; nothing where it is none of its own. */
export function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "";
}

/** Whether bytes begin as packed files do, workbooks among them. */
export function isPacked([first, second]: Uint8Array): boolean {
  return first === 0x50 && second === 0x4b;
}
