/** One scale an organ, for what is told first: the one that was recorded. */
import type { Case } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { grouped } from "../words/grouped.ts";
import { scaleNamed } from "./score-cases.ts";

/** A scale, and how many pigs have a value on it. */
export interface UsedScale {
  readonly scale: Scale;
  readonly pigs: number;
}

/**
 * Of each organ the scale to tell first, in the order of the list; organs of which nobody recorded anything have none.
 *
 * It is the first that the settings name and that has values. Else it is the one that has the most; of several the one that
 * an indicator reads, in the order of the indicators, because its limits are asked about as well.
 * @param used in the order of the settings
 * @param asked indicators that go before the others
 */
export function preferredScales(
  cases: readonly Case[],
  used: readonly UsedScale[],
  asked: readonly string[] = [],
): Scale[] {
  const named = new Set(cases.flatMap((one) => (one.settings.scales ?? []).map((id) => scaleNamed(one, id))));
  const read = readByIndicators(cases, asked);
  const place = (scale: Scale): number => (read.includes(scale) ? read.indexOf(scale) : read.length);
  const first = [...grouped(used, ({ scale }) => scale.organ).values()].flatMap((some) => {
    const recorded = some.filter(({ pigs }) => pigs > 0);
    const [most] = recorded.toSorted((a, b) => b.pigs - a.pigs || place(a.scale) - place(b.scale));
    const one = recorded.find(({ scale }) => named.has(scale)) ?? most;
    return one === undefined ? [] : [one.scale];
  });
  return used.flatMap(({ scale }) => (first.includes(scale) ? [scale] : []));
}

/** The scales that indicators read, those asked about first. */
function readByIndicators(cases: readonly Case[], asked: readonly string[]): Scale[] {
  const first = cases.flatMap((one) =>
    asked.flatMap((id) => one.settings.indicators.get(id)?.score ?? []).map(({ scale }) => ({ one, scale })),
  );
  const settings = grouped(cases, (one) => one.settings).values();
  const others = [...settings].flatMap(([one]) =>
    [...one.settings.indicators.values()].flatMap(({ score }) =>
      score === undefined ? [] : [{ one, scale: score.scale }],
    ),
  );
  return [...new Set([...first, ...others].flatMap(({ one, scale }) => scaleNamed(one, scale) ?? []))];
}
