import { type Case, formatPath, type Path, valueAt } from "../../../cases/index.ts";
import { type CaseRule, practice, type RuleRow } from "../../rule.ts";

interface NoneAndMore extends RuleRow {
  /** Lists of words of which `none` is one. */
  readonly lists: readonly Path[];
}

const rows: readonly NoneAndMore[] = [
  {
    id: "pleurisy-none-and-more",
    level: "error",
    summary: "A side has no pleurisy, or some; not both in one list.",
    protects: "The score takes one of the two, and it may be the wrong one.",
    lookAlike:
      "Nothing: a side with any pleurisy has some; an old thread that is not worth scoring is none, with a note.",
    source: practice("meaning of the words"),
    bad: { case: "respiratory: {pleura: {pleurisy: {left: [none, cranioventral], right: none}}}" },
    good: {
      case: "respiratory: {pleura: {pleurisy: {left: [cranioventral, dorsocaudal-focal], right: none}}}",
    },
    lists: [
      ["respiratory", "pleura", "pleurisy", "left"],
      ["respiratory", "pleura", "pleurisy", "right"],
    ],
  },
  {
    id: "signs-none-and-more",
    level: "error",
    summary: "A pig has no signs, or some; not both in one list.",
    protects:
      "Which organs are due follows from the signs, and none among them hides the rest from the reader.",
    lookAlike:
      "A pig with no signs of its own in a coughing group: [none] here, and the cough of the group under signs in visit.yaml.",
    source: practice("meaning of the words"),
    bad: { case: "selection: {signs: [none, cough]}" },
    good: { case: "selection: {signs: [cough]}" },
    lists: [["selection", "signs"]],
  },
];

/** Lists that say none and something. */
export const noneAndMore: readonly CaseRule[] = rows.map(({ lists, ...rule }) => ({
  ...rule,
  scope: "case",
  family: "consistency",
  check(one, report) {
    for (const path of lists) {
      const others = besideNone(one, path);
      if (others.length > 0)
        report(`${formatPath(path)}: none stands beside ${others.join(" and ")}. Keep one.`, path);
    }
  },
}));

function besideNone({ record }: Case, path: Path): unknown[] {
  const words = valueAt(record, path);
  return Array.isArray(words) && words.includes("none") ? words.filter((word) => word !== "none") : [];
}
