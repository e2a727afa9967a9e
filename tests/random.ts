/**
 * How long random tests search, and from which seed. `npm test` takes a share of the runs that each of them asks for,
 * `npm run test:long` a multiple; both print the seed, and a failure is repeated by giving it back.
 */
import fc from "fast-check";

export const seedName = "CARCASE_TEST_SEED";
export const shareName = "CARCASE_TEST_SHARE";

const numberOf = (name: string, otherwise: number): number => {
  const value = Number(process.env[name] ?? otherwise);
  if (!Number.isFinite(value) || value < 0) throw new Error(`${name} must be a number from 0`);
  return value;
};

export const seed = Math.trunc(numberOf(seedName, 1));

/** How many of so many runs are made. */
export const runs = (asked: number): number => Math.max(1, Math.ceil(asked * numberOf(shareName, 1)));

/** What holds for every property; a property that asks for no number of runs asks for a hundred. */
export const setUpRandomTests = (): void => fc.configureGlobal({ seed, numRuns: runs(100) });
