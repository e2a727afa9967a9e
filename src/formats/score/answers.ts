/** What the pigs of a visit make of a scale, in a sentence, and why some have no score. */
import { withoutScore } from "../../herd/index.ts";
import type { Scale } from "../../knowledge/index.ts";
import { type CaseScore, printedScore } from "../../score/index.ts";
import { summarise } from "../../statistics/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count, listing } from "../../words/listing.ts";
import { marked } from "../page/memory-mark.ts";
import type { ScoredRow, ScoredVisit } from "./visits.ts";

/** `Snout grade 0-5*: graded in 28 of 30 pigs, median 1 (0 to 4): 12 normal, 8 suspicious, 8 obvious atrophy.` */
export function scaleSentence(scale: Scale, rows: readonly ScoredRow[]): string {
  const all = rows.flatMap(({ scores: some }) => some.get(scale) ?? []);
  const scores = all.filter(({ value }) => value !== null);
  const ranges = all.filter(({ bounds }) => bounds !== undefined).length;
  const inRange = ranges === 0 ? "" : ` (${ranges} more within a range)`;
  const { n, median, min, max } = summarise(scores.flatMap(({ value }) => value ?? []));
  const shown = (value: number | null): string => (value === null ? "" : printedScore(scale, value));
  const spread =
    min === max ? `all ${shown(min)}` : `median ${shown(median)} (${shown(min)} to ${shown(max)})`;
  const middle = n === 1 ? `, ${shown(min)}` : scale.nominal ? "" : `, ${spread}`;
  const classes = classCounts(scores);
  const memory = scores.some(({ confidence }) => confidence === "from-memory");
  return `${marked(scale.title, memory ? "from-memory" : null)}: graded in ${n} of ${count(rows.length, "pig")}${inRange}${middle}${classes === "" ? "" : `: ${classes}`}.`;
}

const classCounts = (scores: readonly CaseScore[]): string =>
  listing(
    [...grouped(scores, ({ class: named }) => named)]
      .flatMap(([named, some]) =>
        named === null ? [] : [{ named, value: some[0].value ?? 0, pigs: some.length }],
      )
      .toSorted((a, b) => a.value - b.value)
      .map(({ named, pigs }) => `${pigs} ${named}`),
  );

/** Pigs without a score for the same reason share a line. @param told scales that are told; of others nothing is said */
export function missingLines(visits: readonly ScoredVisit[], told: readonly Scale[]): string[] {
  const without = visits.flatMap(({ rows }) =>
    rows.flatMap(({ one, scores }) =>
      [...scores].flatMap(([scale, score]) =>
        score.value === null && told.includes(scale) ? [{ one, scale, why: whyNone(score) }] : [],
      ),
    ),
  );
  const all = visits.reduce((sum, { rows }) => sum + rows.length, 0);
  const byScale = [...grouped(without, ({ scale, why }) => JSON.stringify([scale.id, why])).values()].map(
    (some) => ({ ...some[0], ids: some.map(({ one }) => one.id) }),
  );
  return [...grouped(byScale, ({ why, ids }) => JSON.stringify([why, ids])).values()].map((some) => {
    const [{ why, ids }] = some;
    return `${pigsOf(ids, all)}, ${listing(some.map(({ scale }) => scale.id))}: ${why}`;
  });
}

/** Some by name, more by number. */
function pigsOf(ids: readonly string[], all: number): string {
  if (ids.length > 1 && ids.length === all) return `all ${ids.length} pigs`;
  return ids.length > mostNamed
    ? `${listing([...ids.slice(0, mostNamed - 1), `${ids.length - mostNamed + 1} more`])}`
    : listing(ids);
}

const mostNamed = 6;

function whyNone({ missing, reason }: CaseScore): string {
  const lacks = missing.length === 0 ? "" : `missing ${listing(missing)}`;
  return [lacks, reason ?? ""].filter((part) => part !== "").join("; ");
}

/** Scales with a score in some pig, or with an organ that was looked at. */
export const wasLookedAt = (scale: Scale, visits: readonly ScoredVisit[]): boolean =>
  visits.some(({ rows }) =>
    rows.some(({ one, scores }) => {
      const score = scores.get(scale);
      return score !== undefined && (score.value !== null || withoutScore(one, scale) === "not graded");
    }),
  );
