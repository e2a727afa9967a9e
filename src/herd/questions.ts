/** Which indicators are asked of a stratum, and of which of its pigs. */
import { type Case, unknownName } from "../cases/index.ts";
import type { Indicator } from "../knowledge/index.ts";
import type { StratumOfCases } from "./strata.ts";

export interface Question {
  readonly id: string;
  readonly indicator: Indicator;
  /** The cases whose settings have it in the same form. */
  readonly cases: Case[];
}

/** @throws RangeError when an id names no indicator of any case */
export function checkIndicators(cases: readonly Case[], asked: readonly string[] | undefined): void {
  const known = new Set(cases.flatMap((one) => [...one.settings.indicators.keys()]));
  const unknown = asked?.find((id) => !known.has(id));
  if (unknown !== undefined && cases.length > 0)
    throw new RangeError(unknownName(unknown, [...known], "indicator"));
}

/** The indicators of a stratum, each with the cases whose settings have it in the same form. */
export function questionsOf({ cases }: StratumOfCases, asked: readonly string[] | undefined): Question[] {
  const questions = new Map<string, Question>();
  for (const one of cases)
    for (const [id, indicator] of one.settings.indicators) {
      if (asked !== undefined && !asked.includes(id)) continue;
      const key = questionKey(id, indicator, one);
      const known = questions.get(key);
      if (known === undefined) questions.set(key, { id, indicator, cases: [one] });
      else known.cases.push(one);
    }
  const found = [...questions.values()];
  return asked === undefined ? found : asked.flatMap((id) => found.filter((question) => question.id === id));
}

/** The same for cases that mean the same by an indicator: its form, and the scale of the practice that it reads. */
export function questionKey(id: string, indicator: Indicator, one: Case): string {
  const own = indicator.score && one.settings.houseScales.get(indicator.score.scale);
  return JSON.stringify([id, indicator, own]);
}
