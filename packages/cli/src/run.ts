import { nearestNames } from "@noodlewright/core/chemistry";
import { isFlag, readWords } from "./command-line.ts";
import { commandHelp, groupHelp, mainHelp } from "./help.ts";
import type { PlacedProblem } from "./input/placed-problem.ts";
import { ownProblem } from "./input/problem.ts";
import { type ExitStatus, exit, type Io } from "./io.ts";
import type { Asked, Command, Flag, Listed } from "./shared/command.ts";
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
  const words = word === undefined ? [] : [word, ...rest];
  const { asked } = readWords(words, { usage: "", flags: { ...everywhere, format: { describe: "" } } });
  if (asked.on("version")) return say(version, io);
  if (asked.on("help")) {
    return say(group === undefined ? mainHelp(commands, io.width) : groupHelp(group, commands, io.width), io);
  }
  if (word !== undefined && !isFlag(word)) {
    const names = commands.map(({ usage }) => firstWord(usage));
    const facts = { command: before + word, nearest: nearestNames(word, names, 1), group: before };
    return refuse([ownProblem("command.unknown", facts)], asked, io);
  }
  const early = word === undefined ? undefined : { ...ownProblem("flag.early", {}), flag: word.replace(/=.*/su, "") };
  return refuse([early ?? ownProblem("command.missing", { group: before })], asked, io);
}

async function runCommand(
  words: readonly string[],
  { usage, describe }: Pick<Listed, "usage" | "describe">,
  command: Command,
  io: Io,
): Promise<ExitStatus> {
  const { asked, wrong, missing } = readWords(words, { usage, flags: { ...command.flags, ...everywhere } });
  if (asked.on("version")) return say(version, io);
  if (asked.on("help")) return say(commandHelp(usage, describe, command, io.width), io);
  if (wrong.length > 0) return refuse(wrong, asked, io);
  if (missing) {
    const words = Object.entries(command.positionals).map(([word, meaning]) => `${word} (${meaning})`);
    return refuse([ownProblem("word.missing", { words })], asked, io);
  }
  return command.run(asked, io);
}

function firstWord(usage: string): string {
  return usage.split(" ")[0] ?? usage;
}

function say(text: string, io: Io): ExitStatus {
  io.out(`${text}\n`);
  return exit.done;
}

/** What prints problems is loaded when there are any. */
async function refuse(problems: readonly PlacedProblem[], asked: Asked, io: Io): Promise<ExitStatus> {
  const { printProblems } = await import("./shared/answer.ts");
  return printProblems(problems, asked, io);
}
