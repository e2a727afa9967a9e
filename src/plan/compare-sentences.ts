/** The answer about two visits that are drawn in pens, of several groups, or graded, in words. */
import { normalQuantile } from "../statistics/index.ts";
import { count, listing } from "../words/listing.ts";
import { levelPercent, percent } from "../words/percent.ts";
import { type Asked, designEffect } from "./compare-asked.ts";
import type { GroupChances, Power } from "./simulate.ts";

export function answerSentence(
  asked: Asked,
  n: number | null,
  used: number,
  { power }: Power,
  test: string,
): string {
  const { fixed, alpha } = asked;
  const change = changeWords(asked);
  const drawn = `${drawnWords(asked, used)}, ${asked.pens ? "pens and pigs " : ""}drawn at random`;
  if (n === null)
    return `${drawn}, are not enough to see ${change}: the probability is ${percent(power)}. Look for a larger difference${asked.scored ? "" : ", or grade instead of counting"}.`;
  const sees = `${test} sees it at ${levelPercent(alpha)} with a probability (power) of ${percent(power)}.`;
  return fixed === null
    ? `Examine ${drawn}. If there is ${change}, ${sees}`
    : `With ${drawn}: if there is ${change}, ${sees}`;
}

/** `4 pigs from each of 19 pens on each visit (76 pigs)`. */
function drawnWords({ numbers, counts, groups, pens, fromEachPen }: Asked, n: number): string {
  const { now, later } = numbers(n);
  const unit = pens ? "pen" : "pig";
  const prefix = pens ? `${count(fromEachPen, "pig")} from each of ` : "";
  if (counts === "times") {
    const of = groups.length > 1 ? ` of the ${groups.length} groups` : "";
    return `${prefix}${listing(now.map(String))} ${unit}s${of} now, ${listing(later.map(String))} then`;
  }
  const total = n * groups.length * fromEachPen;
  const each = groups.length > 1 ? ` of each of the ${groups.length} groups` : "";
  const all = pens || groups.length > 1 ? ` (${count(total, "pig")})` : "";
  return `${prefix}${count(n, unit)}${each} on each visit${all}`;
}

function changeWords({ groups, scored }: Asked): string {
  if (scored) {
    const mean = (visit: keyof GroupChances): number =>
      (groups[0]?.[visit] ?? []).reduce((sum, chance, grade) => sum + grade * chance, 0);
    return `a change of the mean grade from ${Number(mean("now").toFixed(2))} to ${Number(mean("later").toFixed(2))}`;
  }
  const shares = groups.map(({ now, later }) => [now[1] ?? 0, later[1] ?? 0] as const);
  const ways = new Set(shares.map(([now, later]) => Math.sign(later - now)));
  const way = ways.size > 1 ? "a change" : ways.has(1) ? "a rise" : "a fall";
  return `${way} ${listing(shares.map(([now, later]) => `from ${levelPercent(now)} to ${levelPercent(later)}`))}`;
}

export function gradesSentence({ groups: [group] }: Asked, superiority: number): string {
  const list = (chances: readonly number[] = []): string =>
    listing(chances.map((chance) => String(Number((chance * 100).toFixed(1)))));
  const grades = listing((group?.now ?? []).map((_, grade) => String(grade)));
  return `Taken are ${list(group?.now)} of 100 pigs with grade ${grades} now, ${list(group?.later)} then: a pig of the second visit has the higher grade in ${(superiority * 100).toFixed(1)} of 100 pairs, ties half.`;
}

/** How sure the simulation is; of the number by how steeply the normal formula's power rises. */
export function simulationSentences(
  { seed, fixed, alpha, power, pens, groups }: Asked,
  n: number,
  { runs, lower, upper }: Power,
): string[] {
  if (runs === null || lower === null || upper === null) return [];
  const distance = (share: number): number =>
    normalQuantile(alpha / 2, "upper") + normalQuantile(share, "lower");
  const needed = (share: number): number => Math.ceil(n * (distance(power) / distance(share)) ** 2);
  const unit = `${pens ? "pens" : "pigs"}${groups.length > 1 ? " of each group" : ""}`;
  const number =
    fixed === null && lower > alpha && upper < 1
      ? `, and the number needed between ${needed(upper)} and ${needed(lower)} ${unit}`
      : "";
  return [
    `Simulated ${runs} times with seed ${seed}: with 95 % confidence the true probability (power) lies between ${percent(lower)} and ${percent(upper)}${number}.`,
  ];
}

export const groupsSentence = (sameMix: boolean): string =>
  sameMix
    ? "Both visits have the groups in the same mix, so compare takes them together."
    : "The two visits mix the groups differently, so compare sets like against like, group by group.";

export const hasFormula = ({ fixed, groups }: Asked, n: number): boolean =>
  fixed === null && groups.length === 1 && Number.isFinite(n);

export function formulaSentences(asked: Asked, n: number): string[] {
  if (!hasFormula(asked, n)) return [];
  const { pens, scored, fromEachPen, correlation } = asked;
  const effect = designEffect({ fromEachPen, correlation });
  if (!pens) return [`The ${scored ? "formula of Noether" : "normal formula"} would say ${Math.ceil(n)}.`];
  const singly = Math.ceil((n * fromEachPen) / effect);
  return [
    `By formula it would be ${count(singly, "pig")} drawn singly; times the design effect 1 + (${fromEachPen} - 1) x ${correlation} = ${Number(effect.toPrecision(6))} that is ${count(Math.ceil(n), "pen")}. ${scored ? "Ranks of" : "The test by"} pens must allow for how few they are as well.`,
    ...(correlation === 0
      ? [
          "Pigs of one pen are taken to be no more alike than others; if they are, say how much with --correlation.",
        ]
      : []),
  ];
}
