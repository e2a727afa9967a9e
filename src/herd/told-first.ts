/** What is told before the rest: one indicator and one scale an organ, and what the visits asked. */
import { type Case, questionOf } from "../cases/index.ts";
import type { Indicator } from "../knowledge/index.ts";
import { preferredScales, scaleNamed, type UsedScale } from "../score/index.ts";
import { grouped } from "../words/grouped.ts";
import type { Estimate } from "./estimate.ts";
import type { HerdOptions } from "./options.ts";

/** Ids, in the order of the settings or as asked. */
export interface ToldFirst {
  readonly indicators: readonly string[];
  readonly scales: readonly string[];
}

/** What was named is told, all of it. */
export function toldFirst(
  cases: readonly Case[],
  estimates: readonly Estimate[],
  used: readonly UsedScale[],
  { indicators, scales }: Pick<HerdOptions, "indicators" | "scales">,
): ToldFirst {
  const asked = [...new Set(cases.map(({ visit }) => visit))].flatMap(
    (visit) => questionOf(visit)?.indicator ?? [],
  );
  const preferred = preferredScales(cases, used, indicators ?? asked);
  const read = organsRead(cases);
  const organs = new Set(indicators?.flatMap((id) => read.get(id)?.organ ?? []));
  return {
    indicators: indicators ?? oneAnOrgan(estimates, read, [...asked, ...preferred.map(({ id }) => id)]),
    scales:
      scales ??
      preferred.flatMap(({ id, organ }) => (indicators === undefined || organs.has(organ) ? [id] : [])),
  };
}

/** What an indicator reads. */
interface Read {
  readonly organ: string;
  readonly scale: string | undefined;
}

/** By the id of the indicator. */
function organsRead(cases: readonly Case[]): ReadonlyMap<string, Read> {
  const settings = [...grouped(cases, (one) => one.settings).values()];
  return new Map(
    settings.flatMap(([one]) =>
      [...one.settings.indicators].flatMap(([id, indicator]) => {
        const organ = organOf(one, indicator);
        return organ === undefined ? [] : [[id, { organ, scale: indicator.score?.scale }] as const];
      }),
    ),
  );
}

const organOf = (one: Case, { score, finding }: Indicator): string | undefined =>
  finding?.organ ?? (score && scaleNamed(one, score.scale)?.organ);

/**
 * Of each organ that was read in some pig the indicator that was asked about, or reads the preferred scale, or was answered by
 * the most pigs.
 * @param before ids of indicators and scales that go before others
 */
function oneAnOrgan(
  estimates: readonly Estimate[],
  read: ReadonlyMap<string, Read>,
  before: readonly string[],
): string[] {
  const answered = [...grouped(estimates, ({ indicator }) => indicator)].flatMap(([id, some]) => {
    const pigs = some.reduce((sum, { examined }) => sum + examined, 0);
    return pigs === 0 ? [] : [{ id, pigs, organ: read.get(id)?.organ ?? id }];
  });
  const goesBefore = (id: string): boolean =>
    before.includes(id) || before.includes(read.get(id)?.scale ?? id);
  const chosen = [...grouped(answered, ({ organ }) => organ).values()].map((some) => {
    const most = some.toSorted((a, b) => b.pigs - a.pigs)[0] ?? some[0];
    return (some.find(({ id }) => before.includes(id)) ?? some.find(({ id }) => goesBefore(id)) ?? most).id;
  });
  return answered.flatMap(({ id }) => (chosen.includes(id) ? [id] : []));
}
