/** One mark a pig and column, which grows with the value as a share of the highest. */
import type { Case } from "../cases/index.ts";
import { organById, type Scale, type ScalePart } from "../knowledge/index.ts";
import type { CaseScore } from "../score/index.ts";

/** A value as a share of the highest (0 to 1), or why there is none. */
export type Mark = number | "not recorded" | "not assessable" | "no score";

const heights = { unicode: "▁▂▃▄▅▆▇█", ascii: ":=+*#@" } as const;
export type Alphabet = keyof typeof heights;

/** The character of a mark: all of them can be told apart without colour. */
export function markCharacter(mark: Mark, alphabet: Alphabet): string {
  if (mark === "not recorded") return "-";
  if (mark === "not assessable") return "x";
  if (mark === "no score") return "?";
  if (mark <= 0) return ".";
  const steps = heights[alphabet];
  return steps[Math.min(steps.length, Math.ceil(mark * steps.length)) - 1] ?? "?";
}

export const markLegend = (alphabet: Alphabet): string =>
  `${alphabet === "unicode" ? "▁ to █" : ": = + * # @"} rising share of the highest value   . 0   - not recorded   x not assessable   ? recorded, but no score`;

/** The mark of a whole score. */
export function scoreMark(score: CaseScore | undefined, scale: Scale, one: Case): Mark {
  if (score === undefined) return "not recorded";
  if (score.value !== null) return share(score.value, scale.range[1]);
  return why(score, scale, one);
}

/** The mark of one part of a score. */
export function partMark(name: string, score: CaseScore | undefined, scale: Scale, one: Case): Mark {
  const part = scale.parts[name];
  const value = score?.parts[name] ?? null;
  if (score === undefined || part === undefined) return "not recorded";
  if (value !== null) return share(value, highestOf(scale, part));
  if (stateOf(scale, one) === "not_assessable") return "not assessable";
  const missing = score.missing.some(
    (path) => path === scale.organ || path === `${scale.organ}.${part.read}`,
  );
  return missing || score.reason === undefined ? "not recorded" : why(score, scale, one);
}

const share = (value: number, highest: number): number => (highest > 0 ? Math.min(1, value / highest) : 0);

function why({ missing, reason }: CaseScore, scale: Scale, one: Case): Mark {
  const status = stateOf(scale, one);
  if (status === "not_assessable") return "not assessable";
  if (status === "not_examined" || status === "blank") return "not recorded";
  const nothing = Object.values(scale.parts).every(({ read }) => missing.includes(`${scale.organ}.${read}`));
  return nothing || (reason === undefined && missing.length > 0) ? "not recorded" : "no score";
}

function stateOf(scale: Scale, one: Case): string | undefined {
  const organ = organById(scale.organ);
  return organ === undefined ? undefined : one.organ(organ).status;
}

/** The most that a part can add. */
function highestOf(scale: Scale, { weight, max, steps, map }: ScalePart): number {
  if (weight !== undefined && scale.combine === "weighted-sum") return weight;
  if (max !== undefined) return max;
  const values = [
    ...(steps ?? scale.steps ?? []).map(({ value }) => value),
    ...Object.values(map ?? scale.map ?? {}),
  ];
  return Math.max(0, ...values.flatMap((value) => value ?? [])) || scale.range[1];
}
