/** A report as one HTML file, in any language of the messages. */
import type { Audience, ReportResult, ReportWords } from "../../report/index.ts";
import { Html, html } from "../page/html.ts";
import { blocksHtml } from "../page/html-blocks.ts";
import { htmlPage, type Way } from "../page/html-page.ts";
import type { ReportBlock } from "./blocks.ts";
import { sectionsOf } from "./sections/sections.ts";

/** @param ways to other pages, where the report is one of many */
export const reportHtml = (
  report: ReportResult,
  audience: Audience,
  words: ReportWords,
  ways: readonly Way[] = [],
): string =>
  htmlPage({
    language: words.language,
    ways,
    madeBy: "report",
    title: words.tell(report.title),
    by: report.by === null || report.day === null ? "" : words.say("by", { who: report.by, day: report.day }),
    main: [
      html`<section class="answer" id="answer"><h2>${words.say("answer")}</h2>
${answerLines(report, words).map((line) => html`<p>${line}</p>`)}
</section>`,
      ...sectionsOf(report, audience, words).map(
        ({ id, title, blocks }) =>
          html`<section id="${id}"><h2>${title}</h2>\n${bodyOf(blocks, title)}\n</section>`,
      ),
    ],
    foot: words.say("made_with", { version: report.made_by, files: report.files.length }),
  });

/** The sentences of the first screen, with what their mark means where one has it. */
export function answerLines(report: ReportResult, words: ReportWords): string[] {
  const lines = report.answer.map((said) => words.tell(said));
  return lines.some((line) => line.includes("*")) ? [...lines, words.say("caution_memory")] : lines;
}

function bodyOf(blocks: readonly ReportBlock[], title: string): Html[] {
  let under = title;
  return blocks.flatMap((block) => {
    if (block.kind === "heading") under = block.text;
    return block.kind === "figure"
      ? [
          html`<figure id="figure-${block.picture.id}"><figcaption>${block.picture.caption}</figcaption>${new Html(block.picture.svg)}</figure>`,
        ]
      : blocksHtml([block], under);
  });
}
