/**
 * How long random tests search, and from which seed. `npm test` takes a share of the runs that a long search asks for,
 * `npm run test:long` ten times as many; both print the seed, and giving it back repeats a failure.
 */
import fc from "fast-check";

export const seedName = "CARCASE_TEST_SEED";
export const shareName = "CARCASE_TEST_SHARE";
/** One changed file of tests/hostile. */
export const singleName = "CARCASE_TEST_FILE";

function numberOf(name: string, otherwise: number): number {
  const value = Number(process.env[name] ?? otherwise);
  if (!Number.isFinite(value) || value < 0) throw new Error(`${name} must be a number from 0`);
  return value;
}

export const seed = Math.trunc(numberOf(seedName, 1));

/** How many of so many runs are made; a share leaves a search a hundred, if it asks for as many. */
export const runs = (asked: number): number =>
  Math.ceil(Math.max(Math.min(asked, 100), asked * numberOf(shareName, 1)));

/** What holds for every property; one that asks for no number of runs asks for a hundred. */
export const setUpRandomTests = (): void => fc.configureGlobal({ seed, numRuns: runs(100) });

/** Whether a search is to leave nothing out that a shorter one may. */
export const isWhole = numberOf(shareName, 1) >= 1;

/** Every second of some slow examples, beginning where the seed says; a long run takes all. */
export const byTurns = <Example>(examples: readonly Example[]): readonly Example[] =>
  isWhole ? examples : examples.filter((_, index) => index % 2 === seed % 2);
