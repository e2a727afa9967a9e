/** One HTML file without scripts and without anything from outside. */
import { type Html, html } from "./html.ts";
import { htmlFile } from "./html-file.ts";
import { style } from "./html-style.ts";

interface Page {
  readonly language: string;
  /** The command that makes it: by this an earlier result is known. */
  readonly madeBy: string;
  readonly title: string;
  readonly by: string;
  /** Above the title. */
  readonly above?: Html;
  readonly main: readonly Html[];
  readonly foot: string;
  /** Ways to other pages, where there are some: relative, within one folder. */
  readonly ways?: readonly Way[];
  /** A script beside the page. */
  readonly script?: string;
}

export interface Way {
  readonly to: string;
  readonly name: string;
}

export const pageMark = (command: string): string => `<meta name="generator" content="carcase ${command}">`;

export const htmlPage = ({
  language,
  madeBy,
  title,
  by,
  above,
  main,
  foot,
  ways = [],
  script,
}: Page): string =>
  htmlFile(
    { language, madeBy, title },
    style,
    html`${ways.length === 0 ? html`` : html`<nav>${ways.map(({ to, name }) => html`<a href="${to}">${name}</a>`)}</nav>`}
<header>
${above ?? html``}<h1>${title}</h1>
<p class="by">${by}</p>
</header>
<main>
${main}
</main>
<footer><p>${foot}</p></footer>
${script === undefined ? html`` : html`<script src="${script}"></script>`}`,
  );
