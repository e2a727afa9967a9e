/** A report as one HTML file: no script, nothing from outside, in any language of the messages. */
import type { Audience, ReportResult, ReportWords } from "../../report/index.ts";
import { html } from "../page/html.ts";
import { sectionsOf } from "./sections.ts";
import { style } from "./style.ts";

/** By this an earlier report is known. */
export const reportMark = '<meta name="generator" content="carcase report">';

export function reportHtml(report: ReportResult, audience: Audience, words: ReportWords): string {
  const title = words.tell(report.title);
  const sections = sectionsOf(report, audience, words);
  return html`<!doctype html>
<html lang="${words.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta name="generator" content="carcase report">
<title>${title}</title>
<style>${style}</style>
</head>
<body>
<header>
<h1>${title}</h1>
${report.by !== null && report.day !== null ? html`<p class="by">${words.say("by", { who: report.by, day: report.day })}</p>` : html``}
</header>
<main>
<section class="answer" id="answer"><h2>${words.say("answer")}</h2>
${report.answer.map((said) => html`<p>${words.tell(said)}</p>`)}
</section>
${sections.map(({ id, title: head, body }) => html`<section id="${id}"><h2>${head}</h2>\n${body}\n</section>`)}
</main>
<footer><p>${words.say("made_with", { version: report.made_by, files: report.files.length })}</p></footer>
</body>
</html>
`.text;
}
