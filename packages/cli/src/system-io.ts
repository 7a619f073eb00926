import { closeSync, mkdirSync, openSync, readdirSync, readSync, writeFileSync } from "node:fs";
import { styleText } from "node:util";
import type { Io } from "./io.ts";

/** Width of tables that go to a file or a pipe. */
const pipedWidth = 100;

/** The real world. */
export function systemIo(): Io {
  const { stdout, stderr } = process;
  return {
    readFile: async (path, most) => readStart(path, most + 1),
    writeNewFile: async (path, text) => writeFileSync(path, text, { flag: "wx" }),
    writeFile: async (path, text) => writeFileSync(path, text),
    listFolder: async (path) => readdirSync(path),
    makeFolder: async (path) => void mkdirSync(path, { recursive: true }),
    today: () => {
      const now = new Date();
      const two = (value: number): string => String(value).padStart(2, "0");
      return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
    },
    readStdin: async (most) => {
      const chunks: Uint8Array[] = [];
      let length = 0;
      for await (const chunk of process.stdin as AsyncIterable<Uint8Array>) {
        chunks.push(chunk);
        length += chunk.length;
        if (length > most) break;
      }
      return Buffer.concat(chunks);
    },
    stdinIsTerminal: () => process.stdin.isTTY === true,
    out: (text) => void stdout.write(text),
    err: (text) => void stderr.write(text),
    width: stdout.isTTY ? stdout.columns || 80 : pipedWidth,
    colour: () => colourOn(stdout),
    colourOfErrors: () => colourOn(stderr),
  };
}

/** The first bytes of a file, which may be a pipe or a device without an end. */
function readStart(path: string, most: number): Uint8Array {
  const bytes = Buffer.alloc(most);
  const file = openSync(path, "r");
  try {
    let length = 0;
    for (let read = -1; read !== 0 && length < most; length += read) {
      read = readSync(file, bytes, length, most - length, null);
    }
    return bytes.subarray(0, length);
  } finally {
    closeSync(file);
  }
}

function colourOn(stream: NodeJS.WriteStream): boolean {
  return styleText("bold", "x", { stream }) !== "x";
}
