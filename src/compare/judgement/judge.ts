/** The second stage: the tests of every comparison, what may be claimed of it, and the correction for how many they are. */
import { summarise } from "../../statistics/index.ts";
import type { Adjustment, Asked, Comparison, SideNumbers } from "../comparison.ts";
import type { ComparedSides } from "../sides/comparability.ts";
import { type AnsweredSide, countOf, valuesOf } from "../sides/outcomes.ts";
import { claimOf, makeUpCaveats } from "./claims.ts";
import { adjustedTogether, type Claimable, permutations } from "./dealt-anew.ts";
import { resultOf } from "./tests.ts";

/** A comparison before it has its sentence. */
export type Judgement = Omit<Comparison, "sentence" | "note">;

/** The comparisons of a block. */
export interface Judged {
  readonly judgements: readonly Judgement[];
  /** Of how many something could be claimed. */
  readonly claimable: number;
  readonly adjustment: Adjustment;
  /** Whether no test of them could have shown anything with so few pigs. */
  readonly tooFew: boolean;
}

/** @param question id of the indicator that the visit asked about before its result */
export function judge(compared: readonly ComparedSides[], question: string | null, asked: Asked): Judged {
  const alpha = 1 - asked.level;
  const alone = compared.map((one) => ({ compared: one, judged: judgeAlone(one, asked) }));
  const claimable = alone.filter(({ judged }) => judged.p !== null);
  const isFirst = ({ judged }: (typeof alone)[number]): boolean =>
    judged.kind === "indicator" && judged.question === question;
  const others = claimable.filter((one) => !isFirst(one));
  const several = others.length > 1;
  const adjusted = several ? adjustedTogether(others.map(claimableOf), asked) : [];
  return {
    judgements: alone.map((one) => {
      const { p } = one.judged;
      const p_adjusted = p === null ? null : Math.max(p, adjusted[others.indexOf(one)] ?? 0);
      return { ...one.judged, p_adjusted, shown: p_adjusted !== null && p_adjusted < alpha };
    }),
    claimable: claimable.length,
    adjustment: {
      method: "smallest-p",
      comparisons: others.length,
      questions: new Set(others.map(({ judged }) => judged.organ)).size,
      without: claimable.some(isFirst) ? question : null,
      permutations: several ? permutations : 0,
      seed: asked.seed,
    },
    tooFew: claimable.length > 0 && claimable.every(({ judged }) => (judged.least_p ?? 0) >= alpha),
  };
}

type Alone = Omit<Judgement, "p_adjusted" | "shown">;

const claimableOf = ({ compared, judged }: { compared: ComparedSides; judged: Alone }): Claimable => ({
  compared,
  claim_on: judged.claim_on,
  test: judged.result?.test ?? "fisher-exact",
});

/** A comparison as if it were the only one. */
function judgeAlone(compared: ComparedSides, asked: Asked): Alone {
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
