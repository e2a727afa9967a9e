/** One HTML file without scripts and without anything from outside. */
import { type Html, html } from "./html.ts";
import { style } from "./html-style.ts";

interface Page {
  readonly language: string;
  /** The command that makes it: by this an earlier result is known. */
  readonly madeBy: string;
  readonly title: string;
  readonly by: string;
  readonly main: readonly Html[];
  readonly foot: string;
}

export const pageMark = (command: string): string => `<meta name="generator" content="carcase ${command}">`;

export const htmlPage = ({ language, madeBy, title, by, main, foot }: Page): string =>
  html`<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta name="generator" content="carcase ${madeBy}">
<title>${title}</title>
<style>${style}</style>
</head>
<body>
<header>
<h1>${title}</h1>
<p class="by">${by}</p>
</header>
<main>
${main}
</main>
<footer><p>${foot}</p></footer>
</body>
</html>
`.text;
