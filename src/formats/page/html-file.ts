/** One HTML file without scripts of its own and without anything from outside. */
import { type Html, html } from "./html.ts";

export const htmlFile = (
  {
    language = "en",
    madeBy,
    title,
  }: { readonly language?: string; readonly madeBy: string; readonly title: string },
  style: Html,
  body: Html | readonly Html[],
): string =>
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
${body}
</body>
</html>
`.text;
