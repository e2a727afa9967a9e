/** Which sentences hold for the snouts of a visit, in the order in which they are read. */
import { reachOf } from "../herd/index.ts";
import { snoutReadingRules as rules, type Source } from "../knowledge/index.ts";
import { decimalsInClass, rounded } from "../score/index.ts";
import { summarise } from "../statistics/index.ts";
import { count, listing } from "../words/listing.ts";
import { hasSigns, type Snout, type SnoutFacts } from "./snout-facts.ts";

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
 * The sentences for these facts. That it *is* the progressive form is said only with a positive test for the toxin gene and
 * badly wasted conchae.
 * @param facts of a visit with one examined snout or more, or with the toxin gene found
 */
export function statementsOf(facts: SnoutFacts): SnoutStatement[] {
  const { snouts } = facts;
  const results = facts.tests.flatMap(({ result, unused }) => (unused === undefined ? [result] : []));
  const positive = results.filter((result) => result === "positive").length;
  const tested = results.filter((result) => result !== "pending").length;
  const found = positive > 0;
  const tests = count(tested, "test");
  return [
    ...(found ? [say("toxin-found", { positive, tests })] : []),
    ...(snouts.length === 0 ? [say("not-graded", {})] : lossStatements(snouts, found)),
    ...meanStatement(snouts),
    ...chosenStatements(snouts),
    ...airStatements(facts),
    ...facts.tests.flatMap(({ result, unused: why }) =>
      why === undefined ? [] : [say("test-not-used", { result, why })],
    ),
    ...(results.includes("pending") ? [say("pending", {})] : []),
    ...(found || tested === 0 ? [] : [say("toxin-not-found", { tests }), ...notFound(snouts)]),
    ...(found || tested > 0 ? [] : [say("test", {})]),
  ];
}

function lossStatements(snouts: readonly Snout[], found: boolean): SnoutStatement[] {
  const young = snouts.filter(
    ({ ageDays }) => ageDays !== undefined && ageDays < rules.young_below.value,
  ).length;
  const signs = signStatements(snouts, found);
  const looksNormal = snouts.some((snout) => !hasSigns(snout) && !snout.loss);
  return [
    ...signs,
    ...(signs.some(({ id }) => nameTheForm.includes(id))
      ? []
      : [say(snouts.some(({ loss }) => loss) ? "loss-below-severe" : "no-loss", pigsOf(snouts))]),
    ...(looksNormal && !snouts.some(hasSigns) ? [say("normal-does-not-exclude", {})] : []),
    ...(young > 0 ? [say("young", { young })] : []),
  ];
}

/** Sentences after which the degree of loss needs no sentence of its own. */
const nameTheForm: readonly string[] = ["consistent", "progressive"];

/**
 * What the signs of severe loss say. With the toxin gene found, the progressive form is named by the conchae only; a
 * shortened jaw is a clue. Without it either is consistent with that form.
 */
function signStatements(snouts: readonly Snout[], found: boolean): SnoutStatement[] {
  const wasted = snouts.filter(({ severe }) => severe.length > 0);
  const any = snouts.filter(hasSigns);
  if (any.length === 0) return [];
  if (!found) return [say("consistent", signsOf(snouts, any, true))];
  return wasted.length > 0
    ? [say("progressive", signsOf(snouts, wasted, false))]
    : [say("jaw-and-toxin", signsOf(snouts, any, true))];
}

const pigsOf = (snouts: readonly Snout[]): Values => ({ pigs: count(snouts.length, "pig") });

function signsOf(snouts: readonly Snout[], such: readonly Snout[], withOutside: boolean): Values {
  const words = such.flatMap(({ severe, outside }) => [...severe, ...(withOutside ? outside : [])]);
  return { ...pigsOf(snouts), severe: such.length, signs: listing([...new Set(words)], "or") };
}

function notFound(snouts: readonly Snout[]): SnoutStatement[] {
  if (snouts.some(hasSigns)) return [say("toxin-not-found-severe", {})];
  return snouts.some(({ loss }) => loss) ? [say("toxin-not-found-mild", {})] : [];
}

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
            words: `${meanText(mean)} in ${count(grades.length, "pig")} (${reachOf(basis).title})`,
          },
        ];
  });
  return means.some(({ mean }) => mean > rules.mean_above.value)
    ? [say("mean-alone", { means: listing(means.map(({ words }) => words)) })]
    : [];
}

/** Two decimals, and more where the mean would else seem not to be raised. */
const meanText = (mean: number): string =>
  String(rounded(mean, decimalsInClass(mean, [{ name: "raised", above: rules.mean_above.value }], 2)));

const basesOf = (snouts: readonly Snout[]): (string | null)[] => [
  ...new Set(snouts.map(({ basis }) => basis)),
];

/** How the pigs were chosen, and what their numbers may be said to mean. */
function chosenStatements(snouts: readonly Snout[]): SnoutStatement[] {
  return basesOf(snouts).flatMap((basis) => {
    const { title, wording, prevalence } = reachOf(basis);
    // Drawn pigs may stand for a group or not; the numbers of herd say which.
    if (prevalence) return [];
    const chosen = count(snouts.filter((one) => one.basis === basis).length, "snout");
    return [say("chosen", { chosen, title, wording })];
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
