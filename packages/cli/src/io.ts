/** The outside world as commands see it, so that a test can stand in for it. */
export interface Io {
  /** Reads a whole file. */
  readonly readFile: (path: string) => Promise<Uint8Array>;
  /** Writes a new file; fails where there is one already. */
  readonly writeNewFile: (path: string, text: string) => Promise<void>;
  readonly readStdin: () => Promise<Uint8Array>;
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
