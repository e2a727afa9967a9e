/** The rounds in which the published outbreaks were typed, and what was counted of each before anybody looked. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parse } from "yaml";

/** Alarms raised, and outbreaks. */
type Counted = readonly [number, number];

interface Round {
  readonly round: number;
  readonly half: "work" | "untouched";
  readonly before_looking?: { readonly must: Counted; readonly need_not: Counted };
}

const file = fileURLToPath(new URL("../fixtures/outbreaks/rounds.yaml", import.meta.url));
const { rounds } = parse(readFileSync(file, "utf8")) as { readonly rounds: readonly Round[] };

export const beforeLooking: ReadonlyMap<number, Round> = new Map(rounds.map((one) => [one.round, one]));
