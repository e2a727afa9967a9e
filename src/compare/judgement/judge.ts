/** The second stage: the tests of every comparison, what may be claimed of it, and Holm's correction over the block. */
import { holm, summarise } from "../../statistics/index.ts";
import type { Asked, Comparison, SideNumbers } from "../comparison.ts";
import type { ComparedSides } from "../sides/comparability.ts";
import { type AnsweredSide, countOf, valuesOf } from "../sides/outcomes.ts";
import { claimOf, makeUpCaveats } from "./claims.ts";
import { resultOf } from "./tests.ts";

/** A comparison before it has its sentence. */
export type Judgement = Omit<Comparison, "sentence">;

/** The comparisons of a block. */
export interface Judged {
  readonly judgements: readonly Judgement[];
  /** Of how many something could be claimed. */
  readonly claimable: number;
  /** Whether no test of them could have shown anything with so few pigs. */
  readonly tooFew: boolean;
}

export function judge(compared: readonly ComparedSides[], asked: Asked): Judged {
  const alpha = 1 - asked.level;
  const alone = compared.map((one) => judgeAlone(one, asked));
  const claimable = alone.filter(({ p }) => p !== null);
  const adjusted = holm(claimable.map(({ p }) => p ?? 1));
  return {
    judgements: alone.map((one) => {
      const p_holm = one.p === null ? null : (adjusted[claimable.indexOf(one)] ?? 1);
      return { ...one, p_holm, shown: p_holm !== null && p_holm < alpha };
    }),
    claimable: claimable.length,
    tooFew: claimable.length > 0 && claimable.every(({ least_p }) => (least_p ?? 0) >= alpha),
  };
}

/** A comparison as if it were the only one. */
function judgeAlone(compared: ComparedSides, asked: Asked): Omit<Judgement, "p_holm" | "shown"> {
  const { label, sides, reasons, caveats, stratification } = compared;
  if (reasons.length > 0)
    return { ...label, comparable: false, reasons, caveats: [], sides: [], ...unjudged };
  const result = resultOf(compared, asked);
  return {
    ...label,
    comparable: true,
    reasons,
    caveats: [...caveats, ...makeUpCaveats(result, stratification)],
    sides: sides.map((side) => numbersOf(label.kind, side)),
    result,
    ...claimOf(result, compared, asked),
  };
}

const unjudged = { result: null, claim_on: null, no_claim: null, p: null, least_p: null };

function numbersOf(kind: Comparison["kind"], { side, answers, not_examined }: AnsweredSide): SideNumbers {
  const { affected, examined } = countOf(answers);
  const counted = { side: side.side, title: side.title, examined, not_examined };
  if (kind === "indicator") return { ...counted, affected, proportion: affected / examined };
  const { mean, median } = summarise(valuesOf(answers));
  return { ...counted, mean, median };
}
