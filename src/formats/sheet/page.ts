/** Pages of paper: blocks one below the other, so many on a page as there is room for. */
import { type Paper, paperSizes as sizes } from "../../knowledge/paper.ts";
import type { Words } from "../../sheet/index.ts";
import { type Html, html } from "../page/html.ts";
import { htmlFile } from "../page/html-file.ts";
import { style } from "./style.ts";

export const papers = Object.keys(sizes) as readonly Paper[];
export const isPaper = (name: string): name is Paper => Object.hasOwn(sizes, name);

const margin = 7;
/** Head and foot of each page, with the head of a list. */
const around = 22.5;
/** Between two blocks. */
const gap = 1.6;

/** Room between the margins, in mm. */
export const widthOf = (paper: Paper): number => sizes[paper][0] - 2 * margin;

/** What must not be torn apart. */
export interface Block {
  readonly body: Html;
  /** The least that it needs, in mm. */
  readonly height: number;
  /** A row of a list, by the title of its part: rows that follow each other on a page stand without a gap, below one head. */
  readonly part?: string;
  /** Left out where it would need a page of its own. */
  readonly spare?: true;
}

/** Rows of a list under one title. */
export interface Part {
  readonly title: string;
  readonly rows: readonly Html[];
}

/**
 * Blocks on as few pages as they need.
 * @param list puts the rows of a list together
 */
export function paged(
  blocks: readonly Block[],
  paper: Paper,
  list: (parts: readonly Part[]) => Html,
): Html[][] {
  const room = sizes[paper][1] - 2 * margin - around;
  const pages: Block[][] = [];
  let left = 0;
  for (const block of blocks) {
    const needs = block.height + (block.part === undefined ? gap : 0);
    const last = pages.at(-1);
    if (needs > left && block.spare) continue;
    if (last === undefined || needs > left) {
      pages.push([block]);
      left = room - needs;
    } else {
      last.push(block);
      left -= needs;
    }
  }
  return pages.map((page) =>
    runs(page, ({ part }) => part !== undefined).flatMap((run) =>
      run[0]?.part === undefined
        ? run.map(({ body }) => body)
        : [
            list(
              runs(run, ({ part }) => part).map((rows) => ({
                title: rows[0]?.part ?? "",
                rows: rows.map(({ body }) => body),
              })),
            ),
          ],
    ),
  );
}

/** Neighbours that are alike, together. */
function runs(blocks: readonly Block[], of: (block: Block) => unknown): Block[][] {
  const all: Block[][] = [];
  for (const block of blocks) {
    const before = all.at(-1)?.at(-1);
    if (before !== undefined && of(before) === of(block)) all.at(-1)?.push(block);
    else all.push([block]);
  }
  return all;
}

export interface Sheet {
  readonly title: string;
  /** Whose it is: stands on each page. */
  readonly of: string;
  readonly pages: readonly (readonly Html[])[];
}

/** A whole document, without scripts and without anything from outside. */
export function documentOf(title: string, sheets: readonly Sheet[], paper: Paper, words: Words): string {
  const [wide, high] = sizes[paper];
  const pages = sheets.flatMap(({ title: head, of, pages: all }) =>
    all.map(
      (blocks, index) => html`<section class="page">
<header><b>${head}</b><strong>${of}</strong></header>
${blocks}
<footer><span>${words.say("blank")}</span><span>${of === "" ? "" : `${of}, `}${words.say("page", { page: index + 1, pages: all.length })}</span></footer>
</section>`,
    ),
  );
  return htmlFile({ language: words.language, madeBy: "sheet", title }, style(wide, high, margin), pages);
}

/** Width of a text in mm, reckoned for a wide face. */
const span = (text: string, points: number): number =>
  [...text].reduce((sum, char) => sum + (/[MW@%…—]/.test(char) ? 1.75 : /\p{Lu}/u.test(char) ? 1.25 : 1), 0) *
  points *
  0.19;

/** Words in lines of so many mm; a word that is longer than a line is broken. */
export function brokenAt(text: string, points: number, wide: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (span(longer, points) <= wide) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    for (const char of word) {
      if (line !== "" && span(line + char, points) > wide) {
        lines.push(line);
        line = "";
      }
      line += char;
    }
  }
  return line === "" ? lines : [...lines, line];
}

/** Lines that a text takes at so many points in so many mm. */
export const linesOf = (text: string, points: number, wide: number): number =>
  Math.max(1, Math.ceil(span(text, points) / wide));

/** A text cut to so many lines of that; words do not fill every line. */
export function cut(text: string, points: number, wide: number, lines: number): string {
  const most = wide * (lines === 1 ? 0.92 : lines * 0.8);
  if (span(text, points) <= most) return text;
  let shown = "";
  for (const char of text) {
    if (span(`${shown}${char}…`, points) > most) break;
    shown += char;
  }
  return `${shown}…`;
}
