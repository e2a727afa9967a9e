/** How an archive and its tools stand, for people, on one screen. */
import { count } from "../../words/listing.ts";
import { type Block, list, table } from "../page/blocks.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

/** One thing that was looked at. */
export interface Checked {
  readonly about: string;
  /** How it stands, in words. */
  readonly says: string;
  /** Files that are meant; the first of them are named. */
  readonly files?: readonly string[];
  /** What to do about it; left out where nothing is amiss. */
  readonly todo?: string;
}

/** Files that are named of many. */
const named = 3;

/** @param quiet only what is amiss */
export const doctorText = (
  checked: readonly Checked[],
  style: Style,
  { width, quiet }: { readonly width: number; readonly quiet: boolean },
): string => textOf(blocksOf(checked, quiet), style, width);

function blocksOf(checked: readonly Checked[], quiet: boolean): Block[] {
  const amiss = checked.filter(({ todo }) => todo !== undefined);
  return [
    ...table(
      [{ head: "" }, { head: "" }],
      (quiet ? amiss : checked).map((one) => [one.about, saysOf(one)]),
      { indent: 0 },
    ),
    ...list(
      "To do",
      amiss.map(({ about, todo }) => `${about}: ${todo}`),
    ),
  ];
}

function saysOf({ says, files = [] }: Checked): string {
  if (files.length === 0) return says;
  const more = files.length - named;
  const shown = files.slice(0, named).join(", ");
  return `${says}: ${shown}${more > 0 ? ` and ${count(more, "other")}` : ""}`;
}
