/** The answer first: a sentence for each visit and question, then how bad it is on one scale an organ. */
import type { HerdScores, Stratum } from "../../herd/index.ts";
import { reachOf } from "../../herd/index.ts";
import { rangeDecimals } from "../../score/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count } from "../../words/listing.ts";
import { type Block, heading, remarks, table, text } from "../page/blocks.ts";
import { marked } from "../page/memory-mark.ts";
import { number } from "../page/numbers.ts";
import { markOf, remarksOf } from "./prevalence.ts";
import { groupWords, type HerdNumbers, placeWords } from "./strata.ts";

/** @param scales whether the scales are told as well */
export function answerBlocks(
  { answers = [], scores, told_first: first }: HerdNumbers,
  { scales }: { readonly scales: boolean },
): Block[] {
  const keys = answers[0] === undefined ? visitKeys : keysOf(answers[0].stratum);
  const placeOf = (stratum: Stratum): string => JSON.stringify(keys.map((key) => stratum[key] ?? null));
  const shown = scales
    ? scores.filter(({ scale, n }) => n > 0 && (first?.scales.includes(scale) ?? true))
    : [];
  const byPlace = <Row extends { readonly stratum: Stratum }>(rows: readonly Row[]) =>
    grouped(rows, ({ stratum }) => placeOf(stratum));
  const [toldOf, gradedOf] = [byPlace(answers), byPlace(shown)];
  return [...new Set([...toldOf.keys(), ...gradedOf.keys()])].flatMap((place) => {
    const told = toldOf.get(place) ?? [];
    const graded = gradedOf.get(place) ?? [];
    const [one] = told;
    const stratum = (one ?? graded[0])?.stratum ?? {};
    const words = [...placeWords(stratum), ...(one === undefined ? [] : groupWords(stratum))];
    const title = words.length === 0 ? "All pigs" : words.join(" · ");
    return [
      heading(one === undefined ? title : `${title} (${count(one.pigs, "pig")})`),
      ...told.map((answer) =>
        text(
          `${answer.asked === null ? "" : "Asked: "}${marked(answer.title, markOf(answer))}: ${answer.text}`,
          {
            hang: 2,
          },
        ),
      ),
      ...remarks(remarksOf(told)),
      ...gradedTable(graded, keys),
    ];
  });
}

const visitKeys: readonly (keyof Stratum)[] = ["farm", "visit", "folder"];

const keysOf = ({ farm, visit, folder, group, age_class }: Stratum): (keyof Stratum)[] => [
  ...(farm === undefined ? [] : (["farm"] as const)),
  ...(visit === undefined && folder === undefined ? [] : (["visit", "folder"] as const)),
  ...(group === undefined ? [] : (["group"] as const)),
  ...(age_class === undefined ? [] : (["age_class"] as const)),
];

/** A row a stratum, a column a scale. */
function gradedTable(scores: readonly HerdScores[], keys: readonly (keyof Stratum)[]): Block[] {
  const columns = [...grouped(scores, ({ scale, title }) => JSON.stringify([scale, title])).values()];
  const rows = [...grouped(scores, ({ stratum, basis }) => JSON.stringify([stratum, basis])).values()];
  if (columns.length === 0) return [];
  const inTitle = (key: keyof Stratum): boolean => keys.includes(key);
  return [
    text("Median (least to greatest) of the pigs graded:", { quiet: true }),
    ...table(
      [
        { head: "" },
        ...columns.map(([one]) => ({ head: marked(one.short.join(" "), one.confidence), right: true })),
      ],
      rows.map((some) => {
        const [{ stratum, basis }] = some;
        const { group, age_class } = stratum;
        const rest: Stratum = {
          ...(group !== undefined && !inTitle("group") && { group }),
          ...(age_class !== undefined && !inTitle("age_class") && { age_class }),
        };
        const pigs = Math.max(
          ...some.map(({ n, not_graded, not_examined }) => n + not_graded + not_examined),
        );
        const label = [groupWords(rest).join(" "), reachOf(basis).title]
          .filter((part) => part !== "")
          .join(", ");
        return [
          `${label} (${pigs})`,
          ...columns.map(([{ scale, title }]) => {
            const one = some.find((found) => found.scale === scale && found.title === title);
            return one === undefined ? "–" : middle(one, pigs);
          }),
        ];
      }),
      { parts: true },
    ),
  ];
}

/** `2 (1 to 3)`; how many were graded where that is not all. */
function middle({ n, nominal, median, min, max, range, distribution }: HerdScores, pigs: number): string {
  const decimals = rangeDecimals(range);
  const spread = min === max ? "" : ` (${number(min, decimals)} to ${number(max, decimals)})`;
  const value = nominal
    ? distribution.map(({ value: grade, count: some }) => `${number(grade, decimals)}:${some}`).join(" ")
    : `${number(median, decimals)}${spread}`;
  return n === pigs ? value : `${value}, n ${n}`;
}
