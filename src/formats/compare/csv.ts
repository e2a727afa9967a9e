/** A comparison as one tidy table: a line for each indicator or scale and side, the result repeated on each. */
import type { CompareReport, Comparison, Limited } from "../../compare/index.ts";
import { type CsvCell, csv } from "../page/csv.ts";

const head = [
  ..."farm,visit,basis,kind,question,side,examined,not_examined,affected,proportion,mean,median".split(","),
  ..."comparable,reasons,although,test,effect,value,lower,upper,level,p,p_adjusted,comparisons".split(","),
  ..."questions,claim_on,no_claim".split(","),
];

/** Values are not rounded; numbers have a point. A comparison that was refused has one line and no numbers. */
export function compareCsv({ blocks, level }: CompareReport): string {
  return csv(
    head,
    blocks.flatMap(({ farm, visit, basis, adjustment, comparisons }) =>
      comparisons.flatMap((one) => {
        const { kind, question, comparable, reasons, caveats, result, p, p_adjusted, claim_on, no_claim } =
          one;
        const [effect, limited] = effectOf(one);
        const start: CsvCell[] = [farm, visit ?? null, basis, kind, question];
        const end: CsvCell[] = [
          comparable ? "yes" : "no",
          reasons.map(({ factor }) => factor).join(" "),
          caveats.flatMap(({ although }) => although ?? []).join(" "),
          result?.test ?? null,
          effect,
          limited?.value ?? null,
          limited?.lower ?? null,
          limited?.upper ?? null,
          level,
          p,
          p_adjusted,
          adjustment.comparisons,
          adjustment.questions,
          claim_on,
          no_claim,
        ];
        if (one.sides.length === 0) return [[...start, ...Array<null>(7).fill(null), ...end]];
        return one.sides.map((side) => [
          ...start,
          side.side,
          side.examined,
          side.not_examined,
          side.affected ?? null,
          side.proportion ?? null,
          side.mean ?? null,
          side.median ?? null,
          ...end,
        ]);
      }),
    ),
  );
}

/** The leading effect: difference of shares, or shift of scores; over visits from the first to the last. */
function effectOf({ result }: Comparison): [string | null, Limited | null] {
  if (result?.test === "fisher-exact" || result?.test === "unit-means")
    return ["difference", result.difference];
  if (result?.test === "mann-whitney") return ["shift", result.shift];
  if (result?.test === "cochran-armitage" || result?.test === "cuzick")
    return result.penned === null
      ? ["first-to-last", result.first_to_last]
      : ["slope", result.penned.difference];
  return [null, null];
}
