import { placed, type ResultEntry } from "../../../record/index.ts";
import { practice, type ResultsRule } from "../../rule.ts";
import { resultName } from "../../shared/result-words.ts";

export const interpretationAgainstCutOff: ResultsRule = {
  id: "interpretation-against-cut-off",
  scope: "results",
  family: "results",
  level: "error",
  summary:
    "What is called positive lies on the positive side of the cut-off, and what is called negative on the other.",
  protects: "A slip between the columns turns a negative into a positive, and the herd is treated for it.",
  lookAlike:
    "Inconclusive is passed on either side; of a blocking ELISA less is positive: positive_is: below says so.",
  source: practice("the laboratory's own limit, as its report gives it; common practice"),
  bad: {
    results:
      "entries: [{sample: 01-B, test: pcr, agent: prrsv, ct: 41, cut_off: 37, interpretation: positive}]",
  },
  good: {
    results:
      "entries: [{sample: 01-B, test: pcr, agent: prrsv, ct: 31, cut_off: 37, interpretation: positive}]",
  },
  check(results, _visit, report) {
    for (const result of placed(results)) {
      const { entry, index, path } = result;
      const said = entry.interpretation;
      if (said !== "positive" && said !== "negative") continue;
      const read = sideOf(entry);
      if (read === undefined || read.is === said) continue;
      const { what, measured, side } = read;
      report(
        `entries[${index}].interpretation: ${resultName(result)} is called ${said}, and ${what} ${measured} against the cut-off ${entry.cut_off} is ${read.is} (${side} is positive). Correct one of the three, or write positive_is: ${side === "above" ? "below" : "above"}.`,
        [...path, "interpretation"],
      );
    }
  },
};

/** What a number says by itself; nothing exactly at the cut-off, which laboratories call either way. */
function sideOf({ ct, value, cut_off: limit, positive_is: written }: ResultEntry) {
  if (limit === undefined) return undefined;
  const what = ct === undefined ? "the value" : "Ct";
  const measured = ct ?? value;
  const number = typeof measured === "number" ? measured : bounded(measured, limit);
  if (number === undefined || number === limit) return undefined;
  const side = written ?? (ct === undefined ? "above" : "below");
  const is = number > limit === (side === "above") ? "positive" : "negative";
  return { what, measured, side, is } as const;
}

/** `< 0.2` is below a limit of 0.4; whether `< 0.6` is, nobody knows. */
function bounded(text: string | undefined, limit: number): number | undefined {
  const [, sign = "", digits = ""] = /^([<>≤≥])\s*(\S.*)$/.exec(text ?? "") ?? [];
  if (digits === "") return undefined;
  const isBelow = sign === "<" || sign === "≤";
  const bound = Number(digits);
  if (isBelow) return bound <= limit ? Math.min(bound, limit) - Number.EPSILON - 1e-9 : undefined;
  return bound >= limit ? bound + 1e-9 : undefined;
}
