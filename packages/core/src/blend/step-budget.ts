/**
 * How much work a question may take, so that an answer comes within a second; the core has no clock.
 *
 * One unit is about a multiplication in the innermost loops of the search. The whole question shares one budget; a part
 * of it can be set aside, so that what comes first does not leave nothing for what follows.
 */
export class Budget {
  #left: number;
  readonly #parent: Budget | undefined;

  constructor(left: number, parent?: Budget) {
    this.#left = left;
    this.#parent = parent;
  }

  /** Takes work out, here and in what this is a part of. */
  spend(work: number): void {
    this.#left -= work;
    this.#parent?.spend(work);
  }

  get isSpent(): boolean {
    return this.#left <= 0 || this.#parent?.isSpent === true;
  }

  /** A part of what is left, by its share. @example new Budget(100).part(0.5).isSpent // => false */
  part(share: number): Budget {
    return new Budget(Math.max(0, this.#left) * share, this);
  }
}

/** The work of a whole question. */
export function wholeQuestion(): Budget {
  return new Budget(workOfQuestion);
}

/** Counted so that a common machine needs well below a second for it. */
const workOfQuestion = 60_000_000;
