/** A command shown in a document, and the output shown under it. */
export interface ConsoleBlock {
  readonly command: string;
  readonly output: string;
}

const fence = /```console\n\$ (?<command>[^\n]+)\n(?<output>[\s\S]*?)```/gu;

/** The commands of a document with their outputs. */
export function consoleBlocks(markdown: string): readonly ConsoleBlock[] {
  return [...markdown.matchAll(fence)].map(({ groups }) => ({
    command: groups?.["command"] ?? "",
    output: groups?.["output"] ?? "",
  }));
}

/** The document with the outputs put in anew. */
export function withOutputs(markdown: string, outputOf: (command: string) => string): string {
  return markdown.replace(
    fence,
    (_block, command: string) => `\`\`\`console\n$ ${command}\n${outputOf(command)}\`\`\``,
  );
}

/** Splits a command line into words; single quotes keep words together. */
export function splitWords(command: string): readonly string[] {
  return [...command.matchAll(/'([^']*)'|(\S+)/gu)].map((match) => match[1] ?? match[2] ?? "");
}
