import { createInterface } from "node:readline";
import type { Asker } from "./io.ts";

/** How long an empty line waits for more of a pasted text, ms. */
const pasteWait = 60;

/** Asks at a terminal. Lines that come before they are asked for, as those of a pasted text do, are kept. */
export function terminalAsker(input: NodeJS.ReadableStream, output: NodeJS.WritableStream): Asker {
  const reader = createInterface({ input, output, terminal: true });
  const waiting: string[] = [];
  let ended = false;
  let wake = (): void => undefined;
  reader.on("line", (line) => {
    waiting.push(line);
    wake();
  });
  reader.on("close", () => {
    ended = true;
    wake();
  });
  const come = async (most?: number): Promise<void> => {
    if (waiting.length > 0 || ended) return;
    await new Promise<void>((resolve) => {
      wake = resolve;
      if (most !== undefined) setTimeout(resolve, most);
    });
  };
  const next = async (): Promise<string | undefined> => {
    await come();
    return waiting.shift();
  };
  const ask = (prompt: string): void => {
    reader.setPrompt(prompt);
    reader.prompt();
  };
  return {
    line: async (prompt) => {
      ask(prompt);
      return next();
    },
    lines: async (prompt) => {
      ask(prompt);
      reader.setPrompt("");
      const lines: string[] = [];
      for (let line = await next(); line !== undefined; line = await next()) {
        if (line.trim() === "") await come(pasteWait);
        if (line.trim() === "" && waiting.length === 0) return lines.join("\n");
        lines.push(line);
      }
      return lines.length === 0 ? undefined : lines.join("\n");
    },
    close: () => reader.close(),
  };
}
