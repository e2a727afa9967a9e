/** Two visits with pens, with several groups, with grades, or with a number that is fixed: simulated where no formula is exact. */
import { ruleFor } from "../statistics/index.ts";
import { percent } from "../words/percent.ts";
import { type Asked, askedOf, formulaOf, limitsOf } from "./compare-asked.ts";
import {
  answerSentence,
  formulaSentences,
  gradesSentence,
  groupsSentence,
  hasFormula,
  simulationSentences,
} from "./compare-sentences.ts";
import type { CompareQuestion } from "./comparison-question.ts";
import { ascending, type Cell, cautionsOf, type Plan, type PlanColumn } from "./plan.ts";
import {
  type GroupChances,
  type Numbers,
  type Power,
  powerOf,
  sameMix,
  smallestNumber,
  sumOf,
} from "./simulate.ts";
import {
  byPensSource,
  designEffectSource,
  rankFormulaSource,
  ranksSource,
  sharesTests,
  simulationSource,
  strataSource,
} from "./sources.ts";

const usualPens = [5, 6, 8, 10, 15, 20, 30];
const usualPigs = [10, 20, 30, 50, 75, 100];
const times = [1, 2, 3, 4];

/**
 * Plans a comparison that is described in more than two shares.
 *
 * @throws RangeError when a number is out of its range, or numbers do not go together.
 */
export function planDrawn(question: CompareQuestion): Plan {
  const asked = askedOf(question);
  const { power, pens, scored, fixed, counts, groups } = asked;
  const known = new Map<number, Power>();
  const at = (n: number): Power => {
    const found = known.get(n) ?? powerOf(asked, asked.numbers(n));
    known.set(n, found);
    return found;
  };
  const { least, largest } = limitsOf(asked);
  const formula = formulaOf(asked);
  const guess = Math.ceil(Math.min(largest, formula.n / groups.length));
  const n = fixed ?? smallestNumber(at, { guess, least, most: largest, wanted: power });
  const used = n ?? largest;
  const found = at(used);
  const numbers = asked.numbers(used);
  const unchanged = groups.map(({ now }) => ({ now, later: now }));
  const wrong = powerOf({ ...asked, groups: unchanged }, numbers);
  const test = testOf(asked, numbers);
  const usual = question.over ?? (counts === "times" ? times : pens ? usualPens : usualPigs);
  const rows = ascending(...usual, ...(n === null ? [] : [n])).filter(
    (one) => one >= least && one <= largest,
  );
  const simulated = found.runs !== null;
  return {
    plan: "compare",
    title: scored ? "Number to compare the grades of two visits" : "Number to compare two visits",
    asked: repeated(asked),
    answer: {
      n,
      ...pigsOf(asked, n),
      power: found.power,
      power_lower: found.lower,
      power_upper: found.upper,
      claimed_without_change: wrong.power,
      runs: found.runs,
      n_formula: Number.isFinite(formula.n) ? formula.n : null,
    },
    sentences: [
      answerSentence(asked, n, used, found, test.name),
      `If there is no change, a difference is claimed with a probability of ${percent(wrong.power)}; if there is one, it is missed with a probability of ${percent(1 - found.power)}.`,
      ...(scored ? [gradesSentence(asked, formula.superiority)] : []),
      ...simulationSentences(asked, used, found),
      ...(groups.length > 1 ? [groupsSentence(sameMix(numbers))] : []),
      ...formulaSentences(asked, formula.n),
    ],
    table: {
      title: `What ${counts === "times" ? "more" : "other numbers"} would see`,
      columns: columnsOf(asked, simulated),
      rows: rows.map((one) => {
        const { power: share, lower, upper } = at(one);
        return { n: one, ...pigsOf(asked, one), power: share, lower, upper };
      }),
    },
    cautions: cautionsOf("two-visits", "random-only", pens ? "correlation-guess" : "pens-alike"),
    sources: [
      test.source,
      ...(simulated ? [simulationSource] : []),
      ...(hasFormula(asked, formula.n) ? [rankFormulaSource, ...(pens ? [designEffectSource] : [])] : []),
    ],
  };
}

function repeated({
  groups,
  scored,
  fromEachPen,
  correlation,
  power,
  alpha,
  rule,
  seed,
}: Asked): Record<string, Cell> {
  const list = (visit: keyof GroupChances): string =>
    groups.map((group) => (scored ? group[visit].join(" ") : String(group[visit][1] ?? 0))).join(", ");
  return {
    ...(scored
      ? { grades: list("now"), then_grades: list("later") }
      : { from: list("now"), to: list("later") }),
    from_each_pen: fromEachPen,
    correlation,
    power,
    alpha,
    test: rule,
    seed,
  };
}

/** Pigs (and pens) on each visit, all groups together. */
function pigsOf({ numbers, fromEachPen, pens }: Asked, n: number | null): Record<string, Cell> {
  if (n === null)
    return { ...(pens && { pens_now: null, pens_then: null }), pigs_now: null, pigs_then: null };
  const [now, later] = [sumOf(numbers(n).now), sumOf(numbers(n).later)];
  return {
    ...(pens && { pens_now: now, pens_then: later }),
    pigs_now: now * fromEachPen,
    pigs_then: later * fromEachPen,
  };
}

const both = (unit: string): PlanColumn[] =>
  ["now", "then"].map((visit) => ({ key: `${unit}_${visit}`, head: `${unit} ${visit}`, as: "count" }));

function columnsOf({ pens, groups, counts }: Asked, simulated: boolean): PlanColumn[] {
  const unit = pens ? "pens" : "pigs";
  const each = groups.length > 1 ? `${unit} of each group` : `${unit} each visit`;
  return [
    { key: "n", head: counts === "times" ? "times" : each, as: "count" },
    ...(counts === "times" && pens ? both("pens") : []),
    ...(counts === "times" ? both("pigs") : []),
    ...(counts === "each" && (pens || groups.length > 1)
      ? [{ key: "pigs_now", head: "pigs each visit", as: "count" as const }]
      : []),
    { key: "power", head: "power", as: "share" },
    ...(simulated
      ? [
          { key: "lower", head: "between", as: "share" as const },
          { key: "upper", head: "and", as: "share" as const },
        ]
      : []),
  ];
}

/** The test that compare will make. */
function testOf({ scored, rule, pens }: Asked, numbers: Numbers): (typeof sharesTests)[typeof rule] {
  if (scored)
    return { name: `Mann & Whitney's test${pens ? " of the means of the pens" : ""}`, source: ranksSource };
  if (pens) return { name: "the test by pens (Rao & Scott)", source: byPensSource };
  if (sameMix(numbers)) return sharesTests[ruleFor(Math.max(sumOf(numbers.now), sumOf(numbers.later)), rule)];
  const midP = rule === "mid-p" ? " with mid-p" : "";
  return { name: `Mantel & Haenszel's exact test${midP}, like against like by group,`, source: strataSource };
}
