import { printable } from "@noodlewright/core/render";
import { isFlag, readWords, type Wrong } from "./command-line.ts";
import { commandHelp, groupHelp, mainHelp } from "./help.ts";
import { type ExitStatus, exit, type Io } from "./io.ts";
import type { Command, Flag, Listed } from "./shared/command.ts";
import { withNearest } from "./suggest.ts";
import { version } from "./version.ts";

/** Flags that stand beside those of every command. */
const everywhere: Readonly<Record<string, Flag>> = {
  help: { describe: "Show help", kind: "switch", letter: "h" },
  version: { describe: "Show the version", kind: "switch" },
};

/**
 * Runs one command line.
 *
 * @param args - words after `noodlewright`
 */
export function run(args: readonly string[], commands: readonly Listed[], io: Io): Promise<ExitStatus> {
  return runAmong(args, commands, undefined, io);
}

/** Runs that of some commands which the first word names. */
async function runAmong(
  [word, ...rest]: readonly string[],
  commands: readonly Listed[],
  group: Listed | undefined,
  io: Io,
): Promise<ExitStatus> {
  const listed = commands.find(({ usage }) => firstWord(usage) === word);
  const loaded = await listed?.load();
  const before = group === undefined ? "" : `${group.usage} `;
  if (listed !== undefined && loaded !== undefined) {
    const { usage, describe } = listed;
    if ("run" in loaded) return runCommand(rest, { usage: before + usage, describe }, loaded, io);
    const members = loaded.commands.map(({ command, ...words }) => ({ ...words, load: async () => command }));
    return runAmong(rest, members, listed, io);
  }
  if (word === undefined && group === undefined) {
    const { nextSteps } = await import("./next-steps.ts");
    return say(await nextSteps(io), io);
  }
  const { asked, wrong } = readWords(word === undefined ? [] : [word, ...rest], { usage: "", flags: everywhere });
  if (asked.on("version")) return say(version, io);
  if (asked.on("help")) {
    return say(group === undefined ? mainHelp(commands, io.width) : groupHelp(group, commands, io.width), io);
  }
  if (word !== undefined && !isFlag(word)) {
    const names = commands.map(({ usage }) => firstWord(usage));
    return refuse([withNearest(`there is no command "${before}${word}"`, word, names)], io);
  }
  const unknown = wrong.flatMap((one) =>
    one.kind === "unknown-flag" ? [`${one.flag} stands before the command`] : [],
  );
  return refuse([...unknown, group === undefined ? "name a command first" : `name what to do with ${group.usage}`], io);
}

async function runCommand(
  words: readonly string[],
  { usage, describe }: Pick<Listed, "usage" | "describe">,
  command: Command,
  io: Io,
): Promise<ExitStatus> {
  const { asked, wrong } = readWords(words, { usage, flags: { ...command.flags, ...everywhere } });
  if (asked.on("version")) return say(version, io);
  if (asked.on("help")) return say(commandHelp(usage, describe, command, io.width), io);
  if (wrong.length > 0) return refuse(await messagesOf(wrong, command), io);
  return command.run(asked, io);
}

function firstWord(usage: string): string {
  return usage.split(" ")[0] ?? usage;
}

function say(text: string, io: Io): ExitStatus {
  io.out(`${text}\n`);
  return exit.done;
}

function refuse(messages: readonly string[], io: Io): ExitStatus {
  io.err(messages.map((message) => `${printable(`noodlewright: ${message}`)}\n`).join(""));
  io.err("See `noodlewright --help`.\n");
  return exit.wrongInput;
}

/** What is wrong with the words of a command, with the names that were most likely meant. */
async function messagesOf(wrong: readonly Wrong[], command: Command): Promise<readonly string[]> {
  const flags = Object.keys(command.flags).map((flag) => `--${flag}`);
  const messages = wrong.flatMap((one) => {
    if (one.kind === "said") return [one.message];
    return one.kind === "unknown-flag" ? [withNearest(`there is no flag ${one.flag}`, one.flag, flags)] : [];
  });
  if (messages.length > 0) return messages;
  const names = Object.entries(command.positionals).map(([word, meaning]) => `${word} (${meaning})`);
  return [`a word is missing; the command takes ${names.join(", then ")}`];
}
