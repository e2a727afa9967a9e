/** One mark a pig and column, which grows from the healthy end of the scale to the worst. */
import type { Case } from "../../cases/index.ts";
import { organById, type Scale, type ScalePart } from "../../knowledge/index.ts";
import { between, type CaseScore, type MarkShare, markShare } from "../../score/index.ts";

/** How far a value lies from the healthy end (0) to the worst (1), or why that cannot be said. */
export type Mark = MarkShare | "not recorded" | "not assessable" | "no score";

const heights = { unicode: "▁▂▃▄▅▆▇█", ascii: ":=+*#@" } as const;
export type Alphabet = keyof typeof heights;

/** The character of a mark: all of them can be told apart without colour. */
export function markCharacter(mark: Mark, alphabet: Alphabet): string {
  if (mark === "not recorded") return "-";
  if (mark === "not assessable") return "x";
  if (mark === "no score") return "?";
  if (mark === "no order") return "o";
  if (mark <= 0) return ".";
  const steps = heights[alphabet];
  return steps[Math.min(steps.length, Math.ceil(mark * steps.length)) - 1] ?? "?";
}

export const markLegend = (alphabet: Alphabet): string =>
  `${alphabet === "unicode" ? "▁ to █" : ": = + * # @"} from the healthy end of the scale to the worst   . healthy end (mostly 0)   o a value without better or worse   - not recorded   x not assessable   ? recorded, but no score`;

/** The mark of a whole score. */
export function scoreMark(score: CaseScore | undefined, scale: Scale, one: Case): Mark {
  if (score === undefined) return "not recorded";
  if (score.value !== null) return markShare(scale, score.value);
  return why(score, scale, one);
}

/** The mark of one part of a score. */
export function partMark(name: string, score: CaseScore | undefined, scale: Scale, one: Case): Mark {
  const part = scale.parts[name];
  const value = score?.parts[name] ?? null;
  if (score === undefined || part === undefined) return "not recorded";
  if (value !== null) return partShare(scale, part, value);
  if (stateOf(scale, one) === "not_assessable") return "not assessable";
  const missing = score.missing.some(
    (path) => path === scale.organ || path === `${scale.organ}.${part.read}`,
  );
  return missing || score.reason === undefined ? "not recorded" : why(score, scale, one);
}

/** Parts grow from what a normal organ counts to the most that they can add. */
function partShare(scale: Scale, part: ScalePart, value: number): Mark {
  const normal = scale.when_normal ?? part.min ?? 0;
  if (scale.nominal) return value <= normal ? 0 : "no order";
  return between(value, normal, highestOf(scale, part));
}

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
