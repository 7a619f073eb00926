/** The outside world as commands see it, so that a test can stand in for it. */
export interface Io {
  /**
   * Reads a file, and no more of it than it takes to know that it is longer than `most` bytes. What is no file, such as
   * a named pipe, fails with `NOFILE`.
   */
  readonly readFile: (path: string, most: number) => Promise<Uint8Array>;
  /** Writes files whole or not at all, and none over what this run has read. */
  readonly writeFiles: (files: readonly OutFile[], over: WriteOver) => Promise<WriteFault | undefined>;
  /** Names in a folder. */
  readonly listFolder: (path: string) => Promise<readonly string[]>;
  /** Makes a folder and those above it. */
  readonly makeFolder: (path: string) => Promise<void>;
  /** Today, as `2026-11-25`. */
  readonly today: () => string;
  readonly readStdin: (most: number) => Promise<Uint8Array>;
  readonly stdinIsTerminal: () => boolean;
  /** Somebody who answers questions: only where both questions and answers go by a terminal. */
  readonly asker: () => Promise<Asker | undefined>;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Columns of the terminal, or 100 where the output goes elsewhere. */
  readonly width: number;
  readonly colour: () => boolean;
  readonly colourOfErrors: () => boolean;
}

/** Somebody at a terminal. What they say ends with undefined. */
export interface Asker {
  /** One line. */
  readonly line: (prompt: string) => Promise<string | undefined>;
  /** Lines up to an empty one with nothing behind it, so that a text with empty lines can be pasted. */
  readonly lines: (prompt: string) => Promise<string | undefined>;
  readonly close: () => void;
}

/** A file to write. */
export interface OutFile {
  readonly path: string;
  /** A text, or the bytes of a file that is none. */
  readonly text: string | Uint8Array;
}

/** What may be written over: no file, those that were written here, any, or the spec that was read. */
export type WriteOver = "nothing" | "own" | "any" | "input";

/** Why nothing was written. */
export interface WriteFault {
  readonly path: string;
  readonly why: "there" | "input" | "foreign" | "no-file" | "failed";
  /** What the system says. */
  readonly code?: string;
}

/** Exit statuses. */
export const exit = {
  done: 0,
  /** The question is right and has no answer. */
  noAnswer: 1,
  /** The spec or the flags are wrong. */
  wrongInput: 2,
  bug: 70,
} as const;

export type ExitStatus = (typeof exit)[keyof typeof exit];
