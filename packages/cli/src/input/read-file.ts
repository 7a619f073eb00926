import type { Problem } from "@noodlewright/core";
import type { Io } from "../io.ts";

/** Largest file taken for a spec, bytes. */
const largest = 1_000_000;

/** Text of a file and how to call it in messages. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

export type FileReading =
  | { readonly ok: true; readonly file: TextFile }
  | { readonly ok: false; readonly problem: Problem };

/** Reads a text file, or standard input for `-`. */
export async function readTextFile(path: string, io: Io): Promise<FileReading> {
  const name = path === "-" ? "standard input" : path;
  if (path === "-" && io.stdinIsTerminal()) {
    return wrong("file.no-input", "a terminal as standard input", "a spec", "pipe a spec in, or name its file");
  }
  let bytes: Uint8Array;
  try {
    bytes = path === "-" ? await io.readStdin() : await io.readFile(path);
  } catch (error) {
    return { ok: false, problem: unreadable(path, error) };
  }
  if (bytes.length > largest) {
    const size = `${(bytes.length / 1e6).toFixed(1)} MB in ${name}`;
    return wrong("file.too-large", size, "a spec of at most 1 MB", "check that this is the spec");
  }
  const text = decode(bytes);
  if (text === undefined) {
    return wrong(
      "file.not-text",
      `${name}, which is no text`,
      "a YAML or JSON file in UTF-8",
      "check that this is the spec",
    );
  }
  if (text.trim() === "") {
    return wrong("file.empty", `nothing in ${name}`, "a spec", "start from `noodlewright new`");
  }
  return { ok: true, file: { name, text } };
}

function decode(bytes: Uint8Array): string | undefined {
  if (bytes.includes(0)) return undefined;
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function unreadable(path: string, error: unknown): Problem {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const reasons: Readonly<Record<string, readonly [found: string, advice: string]>> = {
    ENOENT: [`no file ${path}`, "check the name and the folder"],
    ENOTDIR: [`no file ${path}`, "check the name and the folder"],
    EISDIR: [`${path}, which is a folder`, "name the file in it"],
    EACCES: [`${path}, which may not be read`, "check its permissions"],
  };
  const [found, advice] = reasons[code] ?? [
    `${path}, which cannot be read${code === "" ? "" : ` (${code})`}`,
    "check the file",
  ];
  return { code: "file.unreadable", kind: "input", path: [], found, expected: "a file that can be read", advice };
}

function wrong(code: string, found: string, expected: string, advice: string): FileReading {
  return { ok: false, problem: { code, kind: "input", path: [], found, expected, advice } };
}
