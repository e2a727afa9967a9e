/** How many pigs on each of two visits, to see a change? */
import { detectableShares, fisherPower, fisherSampleSize, largestGroup } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { levelPercent, percent } from "../words/percent.ts";
import { planDrawn } from "./compare-drawn.ts";
import type { CompareQuestion } from "./comparison-question.ts";
import { ascending, type Cell, cautionsOf, type Plan } from "./plan.ts";
import { sharesTests } from "./sources.ts";

/** A question whose answer is a formula: two shares of pigs drawn singly, the number wanted. */
type Plain = CompareQuestion & { readonly from: number; readonly to: number };

const isPlain = (question: CompareQuestion): question is Plain =>
  typeof question.from === "number" &&
  typeof question.to === "number" &&
  [
    question.pigs,
    question.thenPigs,
    question.fromEachPen,
    question.correlation,
    question.pens,
    question.thenPens,
  ].every((one) => one === undefined);

const usualNumbers = [10, 20, 30, 50, 75, 100, 150, 200];

/**
 * Plans the number per visit for a test of two shares with a wanted power, and shows what other numbers would do.
 *
 * @throws RangeError when a number is out of its range or the shares are equal.
 */
export function planCompare(question: CompareQuestion): Plan {
  const { from, to, grades, thenGrades } = question;
  if ((from ?? to) !== undefined && (grades ?? thenGrades) !== undefined)
    throw new RangeError(
      "write --from and --to for shares, or --grades and --then-grades for grades, not both",
    );
  if ((from === undefined || to === undefined) && (grades === undefined || thenGrades === undefined))
    throw new RangeError(
      "write how it is now and then: shares (--from 40% --to 15%), or of 100 pigs those with grade 0, 1, 2 and so on (--grades 40,30,20,10 --then-grades 60,25,10,5)",
    );
  return isPlain(question) ? planPlain(question) : planDrawn(question);
}

function planPlain(question: Plain): Plan {
  const { from, to, power = 0.8, alpha = 0.05, test: rule = "fisher" } = question;
  if (from === to) throw new RangeError("the two shares are the same, so there is no change to see");
  const found = fisherSampleSize({ p1: from, p2: to }, { power, alpha, rule });
  const most = largestGroup(rule);
  const asked = [...(question.over ?? usualNumbers), ...(found.n === null ? [] : [found.n])];
  const numbers = ascending(...asked.filter((n) => n <= most));
  const change = `${to < from ? "a fall" : "a rise"} from ${levelPercent(from)} to ${levelPercent(to)}`;
  return {
    plan: "compare",
    title: "Number to compare two visits",
    asked: { from, to, power, alpha, test: rule },
    answer: { n: found.n, power: found.power, first: found.first },
    sentences: [
      found.n === null
        ? `${most} pigs on each visit are not enough to see ${change}: the probability is ${percent(found.power)}. Look for a larger difference, or grade instead of counting.`
        : `Examine ${count(found.n, "pig")} on each visit, drawn at random. If there is ${change}, ${sharesTests[rule].name} sees it at ${levelPercent(alpha)} with a probability (power) of ${percent(found.power)}.`,
      `If there is no change, a difference is claimed with a probability of ${rule === "mid-p" ? "about" : "at most"} ${levelPercent(alpha)}; if there is one, it is missed with a probability of ${percent(1 - found.power)}.`,
      ...(found.n !== null && found.first !== null && found.first < found.n
        ? [
            `Some smaller numbers from ${found.first} on reach the power too, but not every number above them does: the exact power has steps.`,
          ]
        : []),
    ],
    table: {
      title: `What a number on each visit would see, starting from ${levelPercent(from)}`,
      columns: [
        { key: "n", head: "each visit", as: "count" },
        { key: "power", head: `power for ${levelPercent(to)}`, as: "share" },
        { key: "below", head: "least fall seen: to", as: "share" },
        { key: "above", head: "least rise seen: to", as: "share" },
      ],
      rows: numbers.map((n) => row(n, question)),
    },
    cautions: cautionsOf("two-visits", "random-only", "pens-alike"),
    sources: [sharesTests[rule].source],
  };
}

function row(
  n: number,
  { from, to, power = 0.8, alpha = 0.05, test: rule = "fisher" }: Plain,
): Record<string, Cell> {
  return {
    n,
    power: fisherPower(n, n, { p1: from, p2: to }, alpha, rule),
    ...detectableShares(n, n, from, { power, alpha, rule }),
  };
}
