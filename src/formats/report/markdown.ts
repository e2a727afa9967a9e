/** A report as Markdown, with its figures as files beside it. */
import type { Audience, ReportResult, ReportWords } from "../../report/index.ts";
import { heading, text } from "../page/blocks.ts";
import { markdownOf } from "../page/markdown.ts";
import { answerLines } from "./html.ts";
import { sectionsOf } from "./sections/sections.ts";

export interface MarkdownReport {
  readonly text: string;
  readonly figures: readonly { readonly name: string; readonly svg: string }[];
}

/** @param folder of the figures, as the text names it */
export function reportMarkdown(
  report: ReportResult,
  audience: Audience,
  words: ReportWords,
  folder: string,
): MarkdownReport {
  const sections = sectionsOf(report, audience, words);
  const parts = sections.flatMap(({ title, blocks }) => [
    markdownOf([heading(title)]),
    ...blocks.map((block) =>
      block.kind === "figure"
        ? `![${safe(block.picture.caption)}](${encodeURI(folder)}/${block.picture.id}.svg)\n`
        : markdownOf([block]),
    ),
  ]);
  const first = [
    `# ${safe(words.tell(report.title))}\n`,
    markdownOf([heading(words.say("answer")), ...answerLines(report, words).map((line) => text(line))]),
  ];
  return {
    text: [...first, ...parts].filter((part) => part !== "").join("\n"),
    figures: sections.flatMap(({ blocks }) =>
      blocks.flatMap((block) =>
        block.kind === "figure" ? [{ name: `${block.picture.id}.svg`, svg: block.picture.svg }] : [],
      ),
    ),
  };
}

/** Without its mark of a heading. */
const safe = (words: string): string =>
  markdownOf([heading(words)])
    .replace(/^#+ /, "")
    .trimEnd();
