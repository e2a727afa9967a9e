/** A report as Markdown, with its figures as files beside it. */
import type { Audience, ReportResult, ReportWords } from "../../report/index.ts";
import { heading, text } from "../page/blocks.ts";
import { markdownOf } from "../page/markdown.ts";
import type { ReportBlock } from "./blocks.ts";
import { type Dress, plain } from "./dress.ts";
import { answerLines } from "./html.ts";
import { sectionsOf } from "./sections/sections.ts";

export interface MarkdownReport {
  readonly text: string;
  readonly figures: readonly { readonly name: string; readonly svg: string }[];
}

/**
 * Templates make HTML, so the sections that ship stand here as they are.
 * @param folder of the figures, as the text names it
 */
export function reportMarkdown(
  report: ReportResult,
  audience: Audience,
  words: ReportWords,
  folder: string,
  dress: Dress = plain,
): MarkdownReport {
  const sections = sectionsOf(report, words, { audience, dress: { ...dress, replaced: plain.replaced } });
  const parts = sections.flatMap(({ title, blocks }) => [
    markdownOf([heading(title)]),
    ...blocks.map((block) => blockText(block, folder)),
  ]);
  const { letterhead } = dress;
  const first = [
    ...(letterhead === null
      ? []
      : [letterhead.name, ...letterhead.address, letterhead.telephone ?? ""].map((line) =>
          line === "" ? "" : markdownOf([text(line)]),
        )),
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

function blockText(block: ReportBlock, folder: string): string {
  switch (block.kind) {
    case "figure":
      return `![${safe(block.picture.caption)}](${encodeURI(folder)}/${block.picture.id}.svg)\n`;
    case "photograph":
      return block.shown !== null && "link" in block.shown
        ? `[${safe(block.caption)}](${block.shown.link})\n`
        : markdownOf([text(`${block.caption} (${block.file})`)]);
    case "made":
      return "";
    default:
      return markdownOf([block]);
  }
}

/** Without its mark of a heading. */
const safe = (words: string): string =>
  markdownOf([heading(words)])
    .replace(/^#+ /, "")
    .trimEnd();
