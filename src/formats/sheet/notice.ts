/** The notice of open alarms, above everything else. */
import type { Notice } from "../../sheet/index.ts";
import { type Html, html } from "../page/html.ts";
import { type Block, linesOf } from "./page.ts";

/** More lines than this are counted, not shown. */
const longest = 6;

const shown = (what: readonly string[]): readonly string[] =>
  what.length > longest ? [...what.slice(0, longest - 1), `… +${what.length - longest + 1}`] : what;

export const noticeHtml = ({ head, what, orders }: Notice): Html =>
  html`<div class="notice"><h2>${head}</h2><ul>${shown(what).map((one) => html`<li>${one}</li>`)}</ul><p>${orders}</p></div>`;

export const noticeBlock = (notice: Notice, wide: number): Block => ({
  body: noticeHtml(notice),
  height:
    8 +
    linesOf(notice.head, 13, wide - 6) * 5.8 +
    shown(notice.what).reduce((sum, one) => sum + linesOf(one, 10, wide - 10) * 4.4, 0) +
    linesOf(notice.orders, 10.6, wide - 6) * 4.4,
});
