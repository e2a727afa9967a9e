/** The sheet of a pig as blocks: notice and cautions first, then signs, facts, organs, outlines, samples and notes. */
import type { MessageKey, PigSheet, SheetFact, SheetStep, Words } from "../../sheet/index.ts";
import { lungOutline, snoutOutline } from "./drawings.ts";
import { type Html, html } from "./html.ts";
import { noticeBlock } from "./notice.ts";
import { type Block, cut, linesOf, type Paper, paged, type Sheet, widthOf } from "./page.ts";

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
        ...sheet.steps.map(stepBlock),
        ...looksBlock(sheet.looks.at, "look_at_knife", sheet.authority, wide, words),
        ...drawingsBlock(sheet.draws, words),
        ...samplesBlock(sheet, wide, words),
        notesBlock("notes", 13, words),
      ];
  return {
    title: words.say("title"),
    of: cut(sheet.id, 13, wide - 60, 1),
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

const notesBlock = (key: MessageKey, height: number, words: Words): Block => ({
  body: html`<div class="notes" style="min-height: ${height}mm"><h2>${words.say(key)}</h2></div>`,
  height,
});

function cautionsBlock(cautions: readonly string[], wide: number, words: Words): Block {
  const column = wide / 2 - 8;
  const lines = sum(cautions.map((one) => linesOf(one, 7.5, column)));
  return {
    body: html`<div class="cautions"><h2>${words.say("before_knife")}</h2><ul>${cautions.map((one) => html`<li>${one}</li>`)}</ul></div>`,
    height: 7.5 + (Math.ceil(lines / 2) + 1) * 3.2,
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
  const heads = html`<div class="look head"><span></span>${(["none", "seen", "not_looked_at"] as const).map(
    (key) => html`<span><small>${words.say(key)}</small></span>`,
  )}</div>`;
  const rows = Array.from({ length: Math.ceil(signs.length / 2) }, (_, row) =>
    signs.slice(2 * row, 2 * row + 2),
  );
  const column = wide / 2 - 41;
  const heights = rows.map((row) => Math.max(5.4, ...row.map((sign) => linesOf(sign, 8, column) * 3.5)));
  return [
    {
      body: html`<div class="looks"><h2>${words.say(head)} <small>${call}</small></h2>${signs.length > 1 ? [heads, heads] : heads}
${signs.map((sign) => html`<div class="look"><span>${sign}</span><span>${box}</span><span>${box}</span><span>${box}</span></div>`)}</div>`,
      height: 11 + linesOf(call, 8, wide - 60) * 3.4 + sum(heights),
    },
  ];
}

const wideFacts: readonly MessageKey[] = ["signs", "complaint", "death"];

function factsBlock(facts: readonly SheetFact[], wide: number, words: Words): Block {
  const cells = facts.map(({ key, value }) => {
    const columns = wideFacts.includes(key) ? 2 : 1;
    return { key, columns, value: cut(value, 9, (wide / 4) * columns - 3, 2) };
  });
  const lines = cells.map(({ value, columns }) => linesOf(value, 9, (wide / 4) * columns - 3));
  const rows = Math.ceil(sum(cells.map(({ columns }) => columns)) / 4) + 1;
  return {
    body: html`<div class="facts">${cells.map(
      ({ key, columns, value }) =>
        html`<div${columns > 1 ? html` class="wide"` : ""}><small>${words.say(key)}</small><span>${value}</span></div>`,
    )}</div>`,
    height: rows * 8.3 + (Math.max(...lines) > 1 ? 8 : 0),
  };
}

/** Width of the column of steps. */
const stepColumn = 31;

function stepBlock({ title, organs, wanted }: SheetStep): Block {
  const pairs = Array.from({ length: Math.ceil(wanted.length / 2) }, (_, row) =>
    wanted.slice(2 * row, 2 * row + 2),
  );
  const heights = [
    ...organs.map((name) => Math.max(5.8, linesOf(name, 8, 42) * 3.5)),
    ...pairs.map((pair) => Math.max(5.4, ...pair.map((name) => linesOf(name, 7.5, 37) * 3.3))),
  ];
  return {
    body: html`<div class="step" style="flex-grow: ${organs.length + pairs.length}"><b>${title}</b><div class="rows">
${organs.map((name) => html`<div class="row"><span>${name}</span><span>${box}</span><span>${box}</span><span></span></div>`)}
${pairs.map((pair) => html`<div class="row half">${pair.map((name) => html`<div><span>${name}</span>${box}${box}<span></span></div>`)}</div>`)}
</div></div>`,
    height: Math.max(sum(heights), linesOf(title, 7.4, stepColumn - 2) * 3.1 + 1),
    piece: true,
  };
}

function organList(steps: readonly Html[], words: Words): Html {
  return html`<div class="organs"><div class="step head"><b>${words.say("step")}</b><div class="row"><span>${words.say("organ")}. ${words.say("wanted")}</span><span>${words.say("normal")}</span><span>${words.say("not_examined")}</span><span>${words.say("finding")}</span></div></div>
${steps}</div>`;
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
          html`<div><h2>${words.say("snout")} ${blank} <small>${words.say("from_in_front")}; ${words.say("snout_shade")}</small></h2>
<p>${words.say("snout_grades")}</p>${snoutOutline(words)}<div class="blanks">${sides(["dorsal", "ventral"], ["right_head", "left_head"])}
<span>${words.say("septum")}</span>${(["straight", "slight", "marked"] as const).map((key) => html`<span>${box} ${words.say(key)}</span>`)}</div></div>`,
        ]
      : []),
    ...(lungs
      ? [
          html`<div><h2>${words.say("lungs")} <small>${words.say("lungs_shade")}</small></h2>
<p>${words.say("accessory")}</p>${lungOutline(words)}<div class="blanks">${sides(["cranial", "middle", "caudal"], ["left_head", "right_head"])}
<span>${blank} ${words.say("accessory_head")}</span></div></div>`,
        ]
      : []),
  ];
  return [{ body: html`<div class="drawings">${drawn}</div>`, height: 66 }];
}

/** Lesions are sampled as they are found. */
const lesionLines = 3;

function samplesBlock({ samples, isKept, ...sheet }: PigSheet, wide: number, words: Words): Block[] {
  if (samples === undefined) return [];
  const column = wide / 2 - 8 - 32;
  const texts = samples.map(({ from, into, for: tests }) => `${from}, ${into}: ${tests}`);
  const lesions = Array.from({ length: lesionLines }, () => words.say("lesion"));
  const all = [...texts, ...lesions];
  const intro = [
    ...(isKept ? [words.say("stay")] : []),
    ...(samples.length === 0 ? [words.say("samples_none")] : []),
    sheet.formalin,
  ];
  const heights = all.map((text) => Math.max(6.1, linesOf(text, 8, column) * 3.5));
  return [
    {
      body: html`<div class="samples"><h2>${words.say("samples")} <small>${words.say("sample_site")}</small></h2><p>${intro.join(" ")}</p><ol>
${all.map((text) => html`<li>${box}<span>${text}</span><i class="line"></i></li>`)}</ol></div>`,
      height: 8 + linesOf(intro.join(" "), 8, wide - 6) * 3.5 + sum(heights) / 2 + Math.max(...heights),
    },
  ];
}
