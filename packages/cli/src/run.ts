import { printable } from "@noodlewright/core/render";
import yargs from "yargs";
import { type ExitStatus, exit, type Io } from "./io.ts";
import type { Asked, Command, Flag, Group } from "./shared/command.ts";
import { version } from "./version.ts";

/** A command as the help lists it; the rest of it is loaded when it is asked for. */
export interface Listed {
  /** Words after `noodlewright`, such as `formula <spec>`. */
  readonly usage: string;
  readonly describe: string;
  readonly load: () => Promise<Command | Group>;
}

/** Widest that help is printed. */
const widestHelp = 100;

/**
 * Runs one command line.
 *
 * @param args - words after `noodlewright`
 */
export async function run(args: readonly string[], commands: readonly Listed[], io: Io): Promise<ExitStatus> {
  const wrong = new Set<string>();
  let shown = "";
  let work = async (): Promise<ExitStatus> => exit.done;
  const separate = withoutDoubleDash(args);
  const plain = separate.filter((word) => !isInherited(word));
  for (const word of separate.filter(isInherited)) wrong.add(`Unknown argument: ${flagName(word)}`);
  const words = plain.filter((word) => !word.startsWith("-"));
  const asked = commands.find(({ usage }) => firstWord(usage) === words[0]);
  const loaded = await asked?.load();
  const member =
    loaded !== undefined && "commands" in loaded
      ? loaded.commands.find(({ usage }) => firstWord(usage) === words[1])?.command
      : undefined;
  const command = loaded !== undefined && "run" in loaded ? loaded : member;
  const handle =
    (one: Command) =>
    (asked: Asked): void => {
      work = () => one.run(asked, io);
    };
  const parser = base(io);
  for (const listed of commands) {
    if (listed === asked && loaded !== undefined) addLoaded(parser, listed, loaded, handle);
    else parser.command(listed.usage, listed.describe);
  }
  parser.fail((message, error) => {
    if (error && error.name !== "YError") throw error;
    wrong.add((message ?? error.message).replace(/\s*\n\s*/gu, " "));
  });
  await parser.parseAsync(plain.map(dashAsEmpty), {}, (_error, _argv, output) => {
    shown = output;
  });
  if (wrong.size > 0) {
    const messages = await helpful([...wrong], commands, words[0], loaded, command);
    io.err(messages.map((message) => printable(`noodlewright: ${message}`)).join("\n"));
    io.err("\nSee `noodlewright --help`.\n");
    return exit.wrongInput;
  }
  if (shown !== "") {
    io.out(`${shown}\n`);
    return exit.done;
  }
  return work();
}

function base(io: Io) {
  return yargs()
    .scriptName("noodlewright")
    .usage("noodlewright: from a noodle spec to weights on the bench\n\nUsage: $0 <command>")
    .parserConfiguration({
      "parse-numbers": false,
      "parse-positional-numbers": false,
      "duplicate-arguments-array": true,
      "boolean-negation": false,
      "dot-notation": false,
    })
    .locale("en")
    .detectLocale(false)
    .exitProcess(false)
    .strict()
    .demandCommand(1, 1, "name a command", "name one command")
    .help("help", "Show help")
    .alias("help", "h")
    .version(version)
    .wrap(Math.min(io.width, widestHelp))
    .epilogue("Exit status: 0 done; 1 there is no such answer; 2 the spec or the flags are wrong; 70 a bug.");
}

type Parser = ReturnType<typeof base>;

function firstWord(usage: string): string {
  return usage.split(" ")[0] ?? usage;
}

/** Words after a lone `--` are no flags, however they begin; yargs does not take them for positionals. */
function withoutDoubleDash(args: readonly string[]): readonly string[] {
  const at = args.indexOf("--");
  if (at < 0) return args;
  const after = args.slice(at + 1).map((word) => (/^-./u.test(word) ? `./${word}` : word));
  return [...args.slice(0, at), ...after];
}

function flagName(word: string): string {
  return /^-+([^=]*)/u.exec(word)?.[1] ?? "";
}

/** Flags such as `--constructor` and `--to-string`, which every object has: the parser takes them for flags that it knows. */
function isInherited(word: string): boolean {
  const name = flagName(word).replaceAll("-", "").toLowerCase();
  return Object.getOwnPropertyNames(Object.prototype).some((inherited) => inherited.toLowerCase() === name);
}

type Handler = (command: Command) => (asked: Asked) => void;
type Words = Pick<Listed, "usage" | "describe">;

/** The parser collects commands, flags and examples as they are added to it. */
function addLoaded(parser: Parser, listed: Words, loaded: Command | Group, handle: Handler): void {
  if ("run" in loaded) {
    addCommand(parser, listed, loaded, handle(loaded));
    return;
  }
  const name = firstWord(listed.usage);
  parser.command(listed.usage, listed.describe, (builder) => {
    for (const { command, ...words } of loaded.commands) addCommand(builder, words, command, handle(command));
    return builder
      .usage(`Usage: $0 ${name} <what>`)
      .demandCommand(1, 1, `name what to do with ${name}`, "name one thing to do");
  });
}

function addCommand(
  parser: Pick<Parser, "command">,
  listed: Words,
  command: Command,
  handle: (asked: Asked) => void,
): void {
  parser.command(
    listed.usage,
    listed.describe,
    (builder) => {
      for (const [name, describe] of Object.entries(command.positionals)) {
        builder.positional(name, { describe, type: "string", coerce: dash });
      }
      for (const [name, flag] of Object.entries(command.flags)) builder.option(name, optionOf(flag));
      for (const [line, meaning] of command.examples) builder.example(line, meaning);
      return builder;
    },
    (argv) => handle(askedOf(argv)),
  );
}

/** The parser takes a lone dash among several words for none at all; after a flag it may be the value. */
function dashAsEmpty(word: string, index: number, all: readonly string[]): string {
  return word === "-" && all[index - 1]?.startsWith("-") !== true ? "" : word;
}

/** A lone dash arrives as an empty text, and means standard input. */
function dash(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(dash);
  return value === "" ? "-" : value;
}

function optionOf(flag: Flag) {
  if (flag.kind === "switch") return { describe: flag.describe, type: "boolean" as const };
  const example = flag.placeholder === undefined ? "" : `, such as "${flag.placeholder}"`;
  return {
    describe: `${flag.describe}${example}`,
    type: "string" as const,
    requiresArg: true,
    ...(flag.letter !== undefined && { alias: flag.letter }),
    ...(flag.choices && { choices: flag.choices }),
    ...(flag.fallback !== undefined && { default: flag.fallback }),
  };
}

function askedOf(argv: Readonly<Record<string, unknown>>): Asked {
  const list = (name: string): readonly string[] => {
    const value = argv[name];
    if (Array.isArray(value)) return value.map(String);
    return typeof value === "string" ? [value] : [];
  };
  return { text: (name) => list(name).at(-1), list, on: (name) => argv[name] === true };
}

/** What the parser says is wrong, with the names that were most likely meant. */
async function helpful(
  wrong: readonly string[],
  commands: readonly Listed[],
  name: string | undefined,
  loaded: Command | Group | undefined,
  command: Command | undefined,
): Promise<readonly string[]> {
  const { withNearest } = await import("./suggest.ts");
  if (loaded === undefined && name !== undefined) {
    const names = commands.map(({ usage }) => firstWord(usage));
    return [withNearest(`there is no command "${name}"`, name, names)];
  }
  const flags = Object.keys(command?.flags ?? {}).map((flag) => `--${flag}`);
  const told = wrong.length > 1 ? wrong.filter((message) => !message.startsWith("Missing required argument")) : wrong;
  return told.map((message) => {
    if (message.startsWith("Not enough non-option arguments") && command !== undefined) {
      const names = Object.entries(command.positionals).map(([word, meaning]) => `${word} (${meaning})`);
      return `a word is missing; the command takes ${names.join(", then ")}`;
    }
    const unknown = /^Unknown arguments?: ([^\s,]+)/u.exec(message)?.[1];
    return unknown === undefined ? message : withNearest(message, unknown, flags);
  });
}
