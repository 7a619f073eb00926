/** The outside world as commands see it, so that a test can stand in for it. */
export interface Io {
  /** Reads a file, and no more of it than it takes to know that it is longer than `most` bytes. */
  readonly readFile: (path: string, most: number) => Promise<Uint8Array>;
  /** Writes a file, over one that is there. */
  readonly writeFile: (path: string, text: string) => Promise<void>;
  /** Names in a folder. */
  readonly listFolder: (path: string) => Promise<readonly string[]>;
  /** Makes a folder and those above it. */
  readonly makeFolder: (path: string) => Promise<void>;
  /** Today, as `2026-11-25`. */
  readonly today: () => string;
  /** Writes a new file; fails where there is one already. */
  readonly writeNewFile: (path: string, text: string) => Promise<void>;
  readonly readStdin: (most: number) => Promise<Uint8Array>;
  readonly stdinIsTerminal: () => boolean;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Columns of the terminal, or 100 where the output goes elsewhere. */
  readonly width: number;
  readonly colour: () => boolean;
  readonly colourOfErrors: () => boolean;
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
