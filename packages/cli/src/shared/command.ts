import type { ExitStatus, Io } from "../io.ts";

/** A flag of a command. Every value arrives as text, so that no number loses its digits or its unit on the way. */
export interface Flag {
  readonly describe: string;
  /** A switch is there or not; any other says a text. */
  readonly kind?: "switch";
  readonly choices?: readonly string[];
  readonly placeholder?: string;
  readonly fallback?: string;
  /** What it is about, where that is not the question: how much is made, or what the answer looks like. */
  readonly about?: "batch" | "answer";
  /** One letter that stands for it. */
  readonly letter?: string;
}

/** What was asked on the command line. */
export interface Asked {
  readonly text: (name: string) => string | undefined;
  readonly list: (name: string) => readonly string[];
  readonly on: (name: string) => boolean;
  /** What the help says of a flag. */
  readonly flag: (name: string) => Flag | undefined;
}

/** One command: its words, its flags, its examples, and what it does. */
export interface Command {
  readonly positionals: Readonly<Record<string, string>>;
  readonly flags: Readonly<Record<string, Flag>>;
  /** What its lines mean. */
  readonly examples: Readonly<Record<string, string>>;
  readonly run: (asked: Asked, io: Io) => Promise<ExitStatus>;
}

/** Commands under one word, such as `alkali convert` and `alkali strength`. */
export interface Group {
  readonly commands: readonly Member[];
}

export interface Member {
  /** Words after that of the group. */
  readonly usage: string;
  readonly describe: string;
  readonly command: Command;
}

/** What commands are for, in the order of the help. */
export const jobs = ["start", "adapt", "make", "shop", "measure"] as const;
export type Job = (typeof jobs)[number];

/** A command as the help lists it; the rest of it is loaded when it is asked for. */
export interface Listed {
  /** Words after `noodlewright`, such as `formula <spec>`. */
  readonly usage: string;
  readonly describe: string;
  /** What it is for; commands of a group have none. */
  readonly job?: Job;
  readonly load: () => Promise<Command | Group>;
}
