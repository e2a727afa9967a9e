/** The indicators and scales of a stratum, each with the cases whose settings have it in the same form. */
import { type Case, unknownName } from "../cases/index.ts";
import type { Indicator, Scale } from "../knowledge/index.ts";
import { scalesOf } from "../score/index.ts";
import { grouped } from "../words/grouped.ts";
import { resultIndicators } from "./result-counts.ts";
import type { StratumOfCases } from "./strata.ts";

export interface IndicatorInStratum {
  readonly id: string;
  readonly indicator: Indicator;
  /** The same for cases that mean the same by it: its form, and the scale of the practice that it reads. */
  readonly form: string;
  readonly cell: StratumOfCases;
}

/** @throws RangeError when an id names no indicator of any case */
export function checkIndicators(cases: readonly Case[], asked: readonly string[] | undefined): void {
  const known = new Set(
    cases.flatMap((one) => [...one.settings.indicators.keys(), ...resultIndicators(one).keys()]),
  );
  const unknown = asked?.find((id) => !known.has(id));
  if (unknown !== undefined && cases.length > 0)
    throw new RangeError(unknownName(unknown, [...known], "indicator"));
}

/** The indicators of a stratum, in the order of the settings or as asked; questions of results only when they are asked. */
export function indicatorsIn(
  cell: StratumOfCases,
  asked: readonly string[] | undefined,
): IndicatorInStratum[] {
  const known = cell.cases.flatMap((one) =>
    [...(asked === undefined ? [] : resultIndicators(one)), ...one.settings.indicators]
      .filter(([id]) => asked?.includes(id) ?? true)
      .map(([id, indicator]) => {
        const own = indicator.score && one.settings.houseScales.get(indicator.score.scale);
        return { id, indicator, form: JSON.stringify([id, indicator, own]), one };
      }),
  );
  const found = [...grouped(known, ({ form }) => form).values()].map((some) => {
    const [{ id, indicator, form }] = some;
    return { id, indicator, form, cell: { ...cell, cases: some.map(({ one }) => one) } };
  });
  return asked?.flatMap((id) => found.filter((one) => one.id === id)) ?? found;
}

/** The scales of a stratum. */
export function scalesIn(
  cell: StratumOfCases,
  inUse: (one: Case) => readonly Scale[],
  asked: readonly string[] | undefined,
) {
  const uses = cell.cases.flatMap((one) => scalesOf(one, inUse, asked).map((scale) => ({ scale, one })));
  return [...grouped(uses, ({ scale }) => scale)].map(([scale, some]) => {
    const scored = new Set(some.map(({ one }) => one));
    // A shipped scale that is in use for one pig is asked of all that name no scales, so that the others count as not examined.
    const optional = asked === undefined && scale.by_default === "when-recorded";
    const cases = cell.cases.filter(
      (one) => scored.has(one) || (optional && one.settings.scales === undefined),
    );
    return { scale, cell: { ...cell, cases } };
  });
}
