/** The tally: a row a pig, boxes for the loss of each concha, the share of each lobe, and pleurisy. */
import type { MessageKey, TallySheet, Words } from "../../sheet/index.ts";
import { type Html, html } from "../page/html.ts";
import { lungOutline, snoutOutline } from "./drawings.ts";
import { noticeHtml } from "./notice.ts";
import { cut, type Paper, type Sheet, widthOf } from "./page.ts";

const rowsOfPage = 30;
/** A notice takes the room of some rows. */
const rowsBelowNotice = 24;

/** Of a few pigs the rows do not fill the page, in millimetres. */
const highestRow = 10;
const headHeight = 11;

/** Columns of numbers, each with the head of its group. */
const groups: readonly {
  readonly head: MessageKey;
  readonly columns: readonly (readonly [MessageKey, MessageKey?])[];
}[] = [
  {
    head: "snout_head",
    columns: [
      ["left_head", "dorsal"],
      ["left_head", "ventral"],
      ["right_head", "dorsal"],
      ["right_head", "ventral"],
      ["septum_head"],
    ],
  },
  {
    head: "lungs_head",
    columns: [
      ["left_head", "cranial"],
      ["left_head", "middle"],
      ["left_head", "caudal"],
      ["right_head", "cranial"],
      ["right_head", "middle"],
      ["right_head", "caudal"],
      ["accessory_head"],
    ],
  },
  { head: "pleurisy_head", columns: [["left_head"], ["right_head"]] },
];
const columns = groups.flatMap((group) =>
  group.columns.map((column, index) => ({ column, isFirst: index === 0 })),
);

export function tallyPages(sheet: TallySheet, paper: Paper, words: Words): Sheet {
  const most = sheet.notices.length > 0 ? rowsBelowNotice : rowsOfPage;
  const parts = Array.from({ length: Math.max(1, Math.ceil(sheet.rows.length / most)) }, (_, page) =>
    sheet.rows.slice(page * most, (page + 1) * most),
  );
  return {
    title: words.say("tally_title"),
    of: cut(sheet.of, 14.5, widthOf(paper) - 100, 1),
    pages: parts.map((rows) => [
      ...sheet.notices.map(noticeHtml),
      html`<div class="cautions"><ul>${sheet.cautions.map((one) => html`<li>${one}</li>`)}</ul></div>`,
      html`<div class="facts">${sheet.facts.map(
        ({ key, value }) =>
          html`<div style="flex: 1 1 20%"><small>${words.say(key)}</small><span>${cut(value, 9, widthOf(paper) / 4 - 4, 1)}</span></div>`,
      )}</div>`,
      legend(words),
      table(rows, words),
    ]),
  };
}

const legend = (words: Words): Html => html`<div class="legend">${snoutOutline(words)}<div>
${(["snout_grades", "septum_key", "accessory", "pleurisy_key", "tally_key"] as const).map((key) => html`<p>${words.say(key)}</p>`)}
</div>${lungOutline(words)}</div>`;

function table(rows: TallySheet["rows"], words: Words): Html {
  const cell = (isFirst: boolean): Html => (isFirst ? html` class="thick"` : html``);
  return html`<table style="max-height: ${headHeight + rows.length * highestRow}mm"><colgroup><col style="width: 9mm"><col style="width: 24mm">${columns.map(() => html`<col>`)}</colgroup>
<thead><tr><th rowspan="2">${words.say("number")}</th><th rowspan="2">${words.say("tag")}</th>${groups.map(
    ({ head, columns: own }) => html`<th class="thick" colspan="${own.length}">${words.say(head)}</th>`,
  )}</tr>
<tr>${columns.map(
    ({ column: [side, part], isFirst }) =>
      html`<th${cell(isFirst)}>${words.say(side)}${part === undefined ? "" : html`<br>${words.say(part)}`}</th>`,
  )}</tr></thead>
<tbody>
${rows.map(
  ({ number, tag }) =>
    html`<tr><td>${number}</td><td>${cut(tag, 8.5, 22, 1)}</td>${columns.map(({ isFirst }) => html`<td${cell(isFirst)}></td>`)}</tr>`,
)}
</tbody></table>`;
}
