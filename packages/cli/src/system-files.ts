import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  fchmodSync,
  fstatSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  readlinkSync,
  readSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, join, resolve } from "node:path";
import { ownMark } from "@noodlewright/core/render";
import { codeOf } from "./input/read-file.ts";
import type { Io, OutFile, WriteFault, WriteOver } from "./io.ts";

/** As much of a file as has to hold the mark. */
const headLength = 512;

/** The files of one run: what was read is never written over, by whatever name or link. */
export function systemFiles(): Pick<Io, "readFile" | "readStdin" | "writeFiles"> {
  const read = new Set<string>();
  return {
    readFile: async (path, most) => {
      // Without a wait: the opening of a named pipe waits for a writer.
      const file = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
      try {
        remember(file, read);
        return readStart(file, most + 1);
      } finally {
        closeSync(file);
      }
    },
    readStdin: async (most) => {
      const chunks: Uint8Array[] = [];
      let length = 0;
      for await (const chunk of process.stdin as AsyncIterable<Uint8Array>) {
        chunks.push(chunk);
        length += chunk.length;
        if (length > most) break;
      }
      const { dev, ino } = fstatSync(0, { bigint: true });
      read.add(`${dev}:${ino}`);
      return Buffer.concat(chunks);
    },
    writeFiles: async (files, over) => writeWhole(files, over, read),
  };
}

/** Refuses what is no file, such as a pipe or a device without an end. */
function remember(file: number, read: Set<string>): void {
  const stats = fstatSync(file, { bigint: true });
  if (stats.isDirectory()) throw Object.assign(new Error("a folder"), { code: "EISDIR" });
  if (!stats.isFile()) throw Object.assign(new Error("no file"), { code: "NOFILE" });
  read.add(`${stats.dev}:${stats.ino}`);
}

function readStart(file: number, most: number): Uint8Array {
  const bytes = Buffer.alloc(most);
  let length = 0;
  for (let part = -1; part !== 0 && length < most; length += part) {
    part = readSync(file, bytes, length, most - length, null);
  }
  return bytes.subarray(0, length);
}

/** Every file is written under another name beside its place, and takes it when all of them are on the disk. */
function writeWhole(files: readonly OutFile[], over: WriteOver, read: ReadonlySet<string>): WriteFault | undefined {
  const staged: { readonly path: string; readonly part: string; readonly target: string }[] = [];
  let path = "";
  try {
    for (const file of files) {
      path = file.path;
      const target = over === "nothing" ? path : behindLinks(path);
      const why = refusal(target, over, read);
      if (why !== undefined) return { path, why };
      const part = join(dirname(target), `.noodlewright-${process.pid}-${Math.random().toString(36).slice(2)}.part`);
      staged.push({ path, part, target });
      stage(part, file.text, statSync(target, { throwIfNoEntry: false })?.mode);
    }
    for (const one of staged) {
      path = one.path;
      place(one.part, one.target, over);
    }
    return undefined;
  } catch (error) {
    const code = codeOf(error);
    return { path, why: over === "nothing" && code === "EEXIST" ? "there" : "failed", code };
  } finally {
    for (const { part } of staged) rmSync(part, { force: true });
  }
}

/** Where a path leads, so that a link stays one. */
function behindLinks(path: string): string {
  const link = lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true;
  if (!link) return path;
  return existsSync(path) ? realpathSync(path) : behindLinks(resolve(dirname(path), readlinkSync(path)));
}

function refusal(target: string, over: WriteOver, read: ReadonlySet<string>): WriteFault["why"] | undefined {
  const stats = statSync(target, { bigint: true, throwIfNoEntry: false });
  if (stats === undefined) return undefined;
  if (over === "nothing") return "there";
  if (!stats.isFile()) return "no-file";
  // A new file takes its place, which its folder alone would allow.
  accessSync(target, constants.W_OK);
  if (read.has(`${stats.dev}:${stats.ino}`)) return over === "input" ? undefined : "input";
  return over === "own" && !isOwn(target) ? "foreign" : undefined;
}

function isOwn(path: string): boolean {
  const file = openSync(path, "r");
  try {
    return Buffer.from(readStart(file, headLength)).toString("utf8").includes(ownMark);
  } finally {
    closeSync(file);
  }
}

function stage(part: string, text: string | Uint8Array, mode: number | undefined): void {
  const file = openSync(part, "wx");
  try {
    if (mode !== undefined) fchmodSync(file, mode & 0o777);
    writeFileSync(file, text);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** A new name is given by a link, which fails where there is one of this name; some disks have no links. */
function place(part: string, target: string, over: WriteOver): void {
  if (over === "nothing") {
    try {
      linkSync(part, target);
      return;
    } catch (error) {
      if (existsSync(target)) throw error;
    }
  }
  renameSync(part, target);
}
