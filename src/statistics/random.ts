import { requireWhole } from "./checks.ts";

/** A source of random whole numbers that gives the same ones for the same seed, on every machine. */
export interface SeededRandom {
  /** The next 32 random bits, 0 to 4 294 967 295. */
  bits(): number;
  /** A whole number from 0 to `bound - 1`, each equally likely; `bound` from 1 to 4 294 967 296. */
  below(bound: number): number;
}

const WORD = 2 ** 32;
const MASK = (1n << 64n) - 1n;

/** The first `count` outputs of SplitMix64 (Steele, Lea & Flood 2014, OOPSLA), as pairs of 32-bit words, low first. */
function splitMix64(seed: bigint, count: number): number[] {
  const words: number[] = [];
  let state = seed;
  for (let i = 0; i < count; i++) {
    state = (state + 0x9e3779b97f4a7c15n) & MASK;
    let z = state;
    z = ((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n) & MASK;
    z = ((z ^ (z >> 27n)) * 0x94d049bb133111ebn) & MASK;
    z ^= z >> 31n;
    words.push(Number(z & 0xffffffffn), Number(z >> 32n));
  }
  return words;
}

const rotate = (word: number, by: number) => (word << by) | (word >>> (32 - by));

/** The generator xoshiro128** from a state of four 32-bit words, not all zero. */
export function xoshiro128(a: number, b: number, c: number, d: number): () => number {
  let [s0, s1, s2, s3] = [a | 0, b | 0, c | 0, d | 0];
  return () => {
    const result = Math.imul(rotate(Math.imul(s1, 5), 7), 9) >>> 0;
    const shifted = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= shifted;
    s3 = rotate(s3, 11);
    return result;
  };
}

/**
 * Random numbers from a seed: xoshiro128**, its state filled by SplitMix64 as its authors advise. Not for secrets.
 *
 * @param seed whole number from 0 to 9 007 199 254 740 991.
 * @throws RangeError when the seed is not such a number.
 *
 * Source: Blackman & Vigna 2021, ACM Trans Math Softw 47:36. `below` rejects the uneven rest, so it has no bias.
 */
export function seededRandom(seed: number): SeededRandom {
  requireWhole("seed", seed, 0, Number.MAX_SAFE_INTEGER);
  const [a = 0, b = 0, c = 0, d = 0] = splitMix64(BigInt(seed), 2);
  const bits = xoshiro128(a, b, c, d);
  const below = (bound: number): number => {
    requireWhole("bound", bound, 1, WORD);
    const even = WORD - (WORD % bound);
    for (;;) {
      const drawn = bits();
      if (drawn < even) return drawn % bound;
    }
  };
  return { bits, below };
}
