/** Which sentences hold for the snouts of a visit, in the order in which they are read. */
import { reachOf } from "../herd/index.ts";
import { snoutReadingRules as rules, type Source } from "../knowledge/index.ts";
import { summarise } from "../statistics/index.ts";
import { count, listing } from "../words/listing.ts";
import type { Snout, SnoutFacts } from "./snout-facts.ts";

export interface SnoutStatement {
  /** Stable name of the sentence. */
  readonly id: string;
  readonly text: string;
  /** Citation. */
  readonly source: string;
  readonly confidence: Source["confidence"];
}

type Values = Readonly<Record<string, string | number>>;

/**
 * The sentences for these facts. That it *is* the progressive form is said only with a positive test for the toxin gene.
 * @param facts of a visit with one examined snout or more
 */
export function statementsOf(facts: SnoutFacts): SnoutStatement[] {
  const { snouts, tests } = facts;
  const severe = snouts.filter((snout) => snout.severe.length > 0);
  const positive = tests.filter((result) => result === "positive").length;
  const tested = tests.filter((result) => result !== "pending").length;
  const signs = listing([...new Set(severe.flatMap((snout) => snout.severe))], "or");
  const pigs = count(snouts.length, "pig");
  const values = {
    snouts: snouts.length,
    pigs,
    severe: severe.length,
    signs,
    positive,
    tests: count(tested, "test"),
  };
  const found = positive > 0;
  return [
    ...(found ? [say("toxin-found", values)] : []),
    ...lossStatements(facts, severe.length, found, values),
    ...meanStatement(snouts),
    ...chosenStatements(snouts),
    ...airStatements(facts),
    ...(tests.includes("pending") ? [say("pending", values)] : []),
    ...(found || tested === 0
      ? []
      : [
          say("toxin-not-found", values),
          ...notFound(
            severe.length > 0,
            snouts.some(({ loss }) => loss),
            values,
          ),
        ]),
    ...(found || tested > 0 ? [] : [say("test", values)]),
  ];
}

function lossStatements(
  { snouts }: SnoutFacts,
  severe: number,
  found: boolean,
  values: Values,
): SnoutStatement[] {
  const young = snouts.filter(
    ({ ageDays }) => ageDays !== undefined && ageDays < rules.young_below.value,
  ).length;
  const late =
    severe === 0 &&
    snouts.some(({ slaughtered, severe: signs, loss }) => slaughtered && signs.length === 0 && !loss);
  return [
    ...(severe > 0
      ? [say(found ? "progressive" : "consistent", values)]
      : [say(snouts.some(({ loss }) => loss) ? "loss-below-severe" : "no-loss", values)]),
    ...(late ? [say("normal-does-not-exclude", values)] : []),
    ...(young > 0 ? [say("young", { young })] : []),
  ];
}

const notFound = (severe: boolean, loss: boolean, values: Values): SnoutStatement[] => {
  if (severe) return [say("toxin-not-found-severe", values)];
  return loss ? [say("toxin-not-found-mild", values)] : [];
};

/** Means by selection basis: pigs that were chosen in different ways are never taken together. */
function meanStatement(snouts: readonly Snout[]): SnoutStatement[] {
  const means = basesOf(snouts).flatMap((basis) => {
    const grades = snouts.filter((one) => one.basis === basis).flatMap(({ grade }) => grade ?? []);
    const { mean } = summarise(grades);
    return mean === null
      ? []
      : [
          {
            mean,
            words: `${Number(mean.toFixed(2))} in ${count(grades.length, "pig")} (${reachOf(basis).title})`,
          },
        ];
  });
  return means.some(({ mean }) => mean > rules.mean_above.value)
    ? [say("mean-alone", { means: listing(means.map(({ words }) => words)) })]
    : [];
}

const basesOf = (snouts: readonly Snout[]): (string | null)[] => [
  ...new Set(snouts.map(({ basis }) => basis)),
];

/** How the pigs were chosen, and what their numbers may be said to mean. */
function chosenStatements(snouts: readonly Snout[]): SnoutStatement[] {
  return basesOf(snouts).map((basis) => {
    const { title, wording } = reachOf(basis);
    return say("chosen", {
      chosen: count(snouts.filter((one) => one.basis === basis).length, "snout"),
      title,
      wording,
    });
  });
}

function airStatements({ ammonia, dust }: SnoutFacts): SnoutStatement[] {
  if (ammonia === undefined && dust === undefined) return [say("air-unread", {})];
  return [
    ...(ammonia === undefined
      ? []
      : [say(ammonia >= rules.ammonia_from.value ? "ammonia" : "ammonia-low", { ammonia })]),
    ...(ammonia !== undefined && ammonia >= rules.ammonia_limit.value
      ? [say("ammonia-limit", { ammonia })]
      : []),
    ...(dust === undefined ? [] : [say("dust", { dust })]),
    ...(dust !== undefined && dust >= rules.dust_from.value ? [say("dust-high", { dust })] : []),
  ];
}

function say(id: string, values: Values): SnoutStatement {
  const statement = rules.statements[id];
  if (statement === undefined) throw new RangeError(`the reading of snouts has no statement "${id}"`);
  const { text, source } = statement;
  return {
    id,
    text: text.replaceAll(/\{(\w+)\}/g, (_, key: string) => String(values[key] ?? "")),
    source: source.cite,
    confidence: source.confidence,
  };
}
