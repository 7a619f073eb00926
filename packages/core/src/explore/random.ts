const multiplier = 48_271;
const modulus = 2_147_483_647;

/**
 * A seeded row of evenly spread whole numbers from 1 to 2^31 - 2: each is 48271 times the one before, modulo 2^31 - 1.
 *
 * All products stay below 2^53, so the row is exact and the same everywhere.
 * Source: S. K. Park, K. W. Miller, P. K. Stockmeyer, Communications of the ACM 36(7):105-110, 1993; ISO/IEC 14882 [rand.predef] minstd_rand.
 *
 * @param seed - a whole number from 1 to 2^31 - 2
 * @throws {RangeError} on another seed: a bug of the caller.
 */
export class Spread {
  #state: number;

  constructor(seed: number) {
    if (!Number.isInteger(seed) || seed < 1 || seed >= modulus) throw new RangeError(`no seed: ${seed}`);
    this.#state = seed;
  }

  next(): number {
    this.#state = (this.#state * multiplier) % modulus;
    return this.#state;
  }

  /** An evenly spread number above 0 and below 1. */
  fraction(): number {
    return this.next() / modulus;
  }
}
