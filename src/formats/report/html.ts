/** A report as one HTML file, in any language of the messages. */
import type { Audience, ReportResult, ReportWords } from "../../report/index.ts";
import { Html, html } from "../page/html.ts";
import { blocksHtml } from "../page/html-blocks.ts";
import { htmlPage, type Way } from "../page/html-page.ts";
import type { ReportBlock } from "./blocks.ts";
import { type Dress, type Letterhead, plain } from "./dress.ts";
import { sectionsOf } from "./sections/sections.ts";

/** @param ways to other pages, where the report is one of many */
export const reportHtml = (
  report: ReportResult,
  audience: Audience,
  words: ReportWords,
  ways: readonly Way[] = [],
  dress: Dress = plain,
): string =>
  htmlPage({
    language: words.language,
    ...(dress.letterhead !== null && { above: letterheadHtml(dress.letterhead) }),
    ways,
    madeBy: "report",
    title: words.tell(report.title),
    by: report.by === null || report.day === null ? "" : words.say("by", { who: report.by, day: report.day }),
    main: [
      html`<section class="answer" id="answer"><h2>${words.say("answer")}</h2>
${answerLines(report, words).map((line) => html`<p>${line}</p>`)}
</section>`,
      ...sectionsOf(report, words, { audience, dress }).map(
        ({ id, title, blocks }) =>
          html`<section id="${id}"><h2>${title}</h2>\n${bodyOf(blocks, title)}\n</section>`,
      ),
    ],
    foot: words.say("made_with", { version: report.made_by, files: report.files.length }),
  });

const letterheadHtml = ({ name, address, telephone, logo }: Letterhead): Html =>
  html`<div class="letterhead">${logo === null ? html`` : html`<img src="${logo}" alt="">`}<p><strong>${name}</strong>${[
    ...address,
    ...(telephone === null ? [] : [telephone]),
  ].map((line) => html`<br>${line}`)}</p></div>`;

/** The sentences of the first screen, with what their mark means where one has it. */
export function answerLines(report: ReportResult, words: ReportWords): string[] {
  const lines = report.answer.map((said) => words.tell(said));
  return lines.some((line) => line.includes("*")) ? [...lines, words.say("caution_memory")] : lines;
}

function bodyOf(blocks: readonly ReportBlock[], title: string): Html[] {
  let under = title;
  return blocks.flatMap((block) => {
    switch (block.kind) {
      case "figure":
        return [
          html`<figure id="figure-${block.picture.id}"><figcaption>${block.picture.caption}</figcaption>${new Html(block.picture.svg)}</figure>`,
        ];
      case "photograph":
        return [photographHtml(block)];
      case "made":
        return [html`<div class="made">${block.made}</div>`];
      default:
        if (block.kind === "heading") under = block.text;
        return blocksHtml([block], under);
    }
  });
}

function photographHtml({ caption, file, shown }: Extract<ReportBlock, { kind: "photograph" }>): Html {
  if (shown === null) return html`<p>${caption} <code>${file}</code></p>`;
  if ("link" in shown) return html`<p><a href="${shown.link}">${caption}</a></p>`;
  const { embedded, width, height } = shown;
  return html`<figure class="photograph"><figcaption>${caption}</figcaption><img src="${embedded}" width="${width}" height="${height}" alt="${caption}"></figure>`;
}
