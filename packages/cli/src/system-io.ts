import { mkdirSync, readdirSync } from "node:fs";
import { styleText } from "node:util";
import type { Io } from "./io.ts";
import { systemFiles } from "./system-files.ts";

/** Width of tables that go to a file or a pipe. */
const pipedWidth = 100;

/** The real world. */
export function systemIo(): Io {
  const { stdout, stderr } = process;
  return {
    ...systemFiles(),
    listFolder: async (path) => readdirSync(path),
    makeFolder: async (path) => void mkdirSync(path, { recursive: true }),
    today: () => {
      const now = new Date();
      const two = (value: number): string => String(value).padStart(2, "0");
      return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
    },
    stdinIsTerminal: () => process.stdin.isTTY === true,
    asker: async () => {
      if (process.stdin.isTTY !== true || stderr.isTTY !== true) return undefined;
      const { terminalAsker } = await import("./terminal-asker.ts");
      return terminalAsker(process.stdin, stderr);
    },
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
