/** The sheet of a pig as blocks: notice and cautions first, then signs, facts, organs, outlines, samples and notes. */
import type { MessageKey, PigSheet, SheetFact, SheetStep, Words } from "../../sheet/index.ts";
import { type Html, html } from "../page/html.ts";
import { lungOutline, snoutOutline } from "./drawings.ts";
import { noticeBlock } from "./notice.ts";
import { type Block, cut, linesOf, type Paper, type Part, paged, type Sheet, widthOf } from "./page.ts";

const box = html`<i class="box"></i>`;
const blank = html`<i class="blank"></i>`;

export function pigPages(sheet: PigSheet, paper: Paper, words: Words): Sheet {
  const wide = widthOf(paper);
  const notices = sheet.notices.map((one) => noticeBlock(one, wide));
  const facts = factsBlock(sheet.facts, wide, words);
  const blocks = sheet.isStopped
    ? [...notices, facts, ...stopBlocks(words)]
    : [
        ...notices,
        cautionsBlock(sheet.cautions, wide, words),
        ...looksBlock(sheet.looks.before, "look_first", sheet.authority, wide, words),
        facts,
        ...sheet.steps.flatMap(stepBlocks),
        ...looksBlock(sheet.looks.at, "look_at_knife", sheet.authority, wide, words),
        ...drawingsBlock(sheet.draws, words),
        ...samplesBlock(sheet, wide, words),
        notesBlock("notes", 9, words, true),
      ];
  return {
    title: words.say("title"),
    of: cut(sheet.id, 14.5, wide - 60, 1),
    pages: paged(blocks, paper, (steps) => organList(steps, words)),
  };
}

const sum = (list: readonly number[]): number => list.reduce((before, one) => before + one, 0);

/** What the authority will ask, where a stop stands: nothing else is done to this pig. */
function stopBlocks(words: Words): Block[] {
  const lines: readonly (readonly [MessageKey, number])[] = [
    ["called", 9],
    ["call_whom", 9],
    ["call_said", 24],
    ["exposed", 40],
    ["cut_already", 40],
    ["notes", 20],
  ];
  return lines.map(([key, height]) => notesBlock(key, height, words));
}

const notesBlock = (key: MessageKey, height: number, words: Words, spare?: true): Block => ({
  body: html`<div class="notes" style="min-height: ${height}mm"><h2>${words.say(key)}</h2></div>`,
  height,
  ...(spare && { spare }),
});

function cautionsBlock(cautions: readonly string[], wide: number, words: Words): Block {
  const column = wide / 2 - 8;
  const lines = sum(cautions.map((one) => linesOf(one, 7, column)));
  return {
    body: html`<div class="cautions"><h2>${words.say("before_knife")}</h2><ul>${cautions.map((one) => html`<li>${one}</li>`)}</ul></div>`,
    height: 6.5 + Math.ceil(lines / 2) * 3,
  };
}

function looksBlock(
  signs: readonly string[],
  head: MessageKey,
  authority: string,
  wide: number,
  words: Words,
): Block[] {
  if (signs.length === 0) return [];
  const call = words.say("seen_means", { whom: authority });
  const headed = (title: Html): Html =>
    html`<div class="look head">${title}${(["none", "seen", "not_looked_at"] as const).map(
      (key) => html`<span><small>${words.say(key)}</small></span>`,
    )}</div>`;
  const title = html`<h2>${words.say(head)} <small>${call}</small></h2>`;
  const rows = Array.from({ length: Math.ceil(signs.length / 2) }, (_, row) =>
    signs.slice(2 * row, 2 * row + 2),
  );
  const column = wide / 2 - 41;
  const heights = rows.map((row) => Math.max(5, ...row.map((sign) => linesOf(sign, 7.5, column) * 3.2)));
  return [
    {
      body: html`<div class="looks">${headed(title)}${signs.length > 1 ? headed(html`<span></span>`) : ""}
${signs.map((sign) => html`<div class="look"><span>${sign}</span><span>${box}</span><span>${box}</span><span>${box}</span></div>`)}</div>`,
      height: 4 + linesOf(`${words.say(head)} ${call}`, 7.5, column) * 3.3 + sum(heights),
    },
  ];
}

/** Columns of five that a fact takes; the others take one. */
const columnsOf: Partial<Record<MessageKey, number>> = { signs: 2, death: 2, complaint: 3 };
const factPoints = 8.5;

function factsBlock(facts: readonly SheetFact[], wide: number, words: Words): Block {
  const cells = facts.map(({ key, value }) => {
    const columns = columnsOf[key] ?? 1;
    const room = (wide / 5) * columns - 4;
    const shown = cut(value, factPoints, room, 2);
    return { key, columns, value: shown, isLong: linesOf(shown, factPoints, room) > 1 };
  });
  const rows = Math.ceil(sum(cells.map(({ columns }) => columns)) / 5);
  return {
    body: html`<div class="facts">${cells.map(
      ({ key, columns, value }) =>
        html`<div style="flex: 1 1 ${columns * 20}%"><small>${words.say(key)}</small><span>${value}</span></div>`,
    )}</div>`,
    height: rows * 7.6 + sum(cells.map(({ isLong }) => (isLong ? 3.4 : 0))),
  };
}

/** Width of the column of steps. */
const stepColumn = 35;

function stepBlocks({ title, organs, wanted }: SheetStep): Block[] {
  const pairs = Array.from({ length: Math.ceil(wanted.length / 2) }, (_, row) =>
    wanted.slice(2 * row, 2 * row + 2),
  );
  const rows = [
    ...organs.map((name) => ({
      body: html`<div class="row"><span>${name}</span><span>${box}</span><span>${box}</span></div>`,
      height: Math.max(5, linesOf(name, 8, 42) * 3.4),
    })),
    ...pairs.map((pair) => ({
      body: html`<div class="row half">${pair.map((name) => html`<div><span>${name}</span>${box}${box}</div>`)}</div>`,
      height: Math.max(4.6, ...pair.map((name) => linesOf(name, 7.5, 37) * 3.2)),
    })),
  ];
  const missing = linesOf(title, 6.8, stepColumn - 2) * 2.8 + 1 - sum(rows.map(({ height }) => height));
  return rows.map(({ body, height }, index) => ({
    body,
    height: index === 0 ? height + 0.3 + Math.max(0, missing) : height,
    part: title,
  }));
}

function organList(steps: readonly Part[], words: Words): Html {
  return html`<div class="organs"><div class="step head"><b>${words.say("step")}</b><div class="row"><span>${words.say("organ")}</span><span>${words.say("normal")}</span><span>${words.say("not_examined")}</span><span>${words.say("finding")}. ${words.say("wanted")}</span></div></div>
${steps.map(
  ({ title, rows }) =>
    html`<div class="step" style="flex-grow: ${rows.length}"><b>${title}</b><div class="rows">
${rows}
</div></div>`,
)}</div>`;
}

function drawingsBlock({ snout, lungs }: PigSheet["draws"], words: Words): Block[] {
  if (!snout && !lungs) return [];
  const sides = (keys: readonly MessageKey[], from: readonly MessageKey[]): Html[] =>
    from.flatMap((side) =>
      keys.map((key) => html`<span>${blank} ${words.say(side)} ${words.say(key)}</span>`),
    );
  const drawn = [
    ...(snout
      ? [
          html`<div><h2>${words.say("snout")}: ${blank} <small>${words.say("from_in_front")}; ${words.say("snout_shade")}</small></h2>
<p>${words.say("snout_grades")}</p>${snoutOutline(words)}<div class="blanks">${sides(["dorsal_concha", "ventral_concha"], ["right_head", "left_head"])}
<span>${words.say("septum")}:</span>${(["straight", "slight", "marked"] as const).map((key) => html`<span>${box} ${words.say(key)}</span>`)}</div></div>`,
        ]
      : []),
    ...(lungs
      ? [
          html`<div><h2>${words.say("lungs")} <small>${words.say("lungs_shade")}</small></h2>
<p>${words.say("accessory")}</p>${lungOutline(words)}<div class="blanks">${sides(["cranial_lobe", "middle_lobe", "caudal_lobe"], ["left_head", "right_head"])}
<span>${blank} ${words.say("accessory_lobe")}</span></div></div>`,
        ]
      : []),
  ];
  return [{ body: html`<div class="drawings">${drawn}</div>`, height: 52 }];
}

/** Lesions are sampled as they are found. */
const lesionLines = 3;

function samplesBlock({ samples, isKept, ...sheet }: PigSheet, wide: number, words: Words): Block[] {
  if (samples === undefined) return [];
  const column = wide / 3 - 11;
  const texts = samples.map(({ from, into, for: tests }) => `${from}, ${into}: ${tests}`);
  const lesions = Array.from({ length: lesionLines }, () => words.say("lesion"));
  const all = [...texts, ...lesions];
  const intro = [
    ...(isKept ? [words.say("stay")] : []),
    ...(samples.length === 0 ? [words.say("samples_none")] : []),
    sheet.formalin,
  ];
  const heights = all.map((text) => Math.max(5.2, linesOf(text, 7.5, column) * 3.2 + 1));
  return [
    {
      body: html`<div class="samples"><h2>${words.say("samples")} <small>${words.say("sample_site")}</small></h2><p>${intro.join(" ")}</p><ol>
${all.map((text) => html`<li>${box}<span>${text}</span></li>`)}</ol></div>`,
      height: 8 + linesOf(intro.join(" "), 8, wide - 6) * 3.5 + sum(heights) / 3 + Math.max(...heights) / 2,
    },
  ];
}
