import { readFileSync, writeFileSync } from "node:fs";
import { styleText } from "node:util";
import type { Io } from "./io.ts";

/** Width of tables that go to a file or a pipe. */
const pipedWidth = 100;

/** The real world. */
export function systemIo(): Io {
  const { stdout, stderr } = process;
  return {
    readFile: async (path) => readFileSync(path),
    writeNewFile: async (path, text) => writeFileSync(path, text, { flag: "wx" }),
    readStdin: async () => {
      const chunks: Uint8Array[] = [];
      for await (const chunk of process.stdin) chunks.push(chunk as Uint8Array);
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

function colourOn(stream: NodeJS.WriteStream): boolean {
  return styleText("bold", "x", { stream }) !== "x";
}
