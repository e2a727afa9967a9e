/** Outlines of snout and lungs, to be shaded with a pencil. */
import { lungs } from "../../drawings/lungs.ts";
import { section } from "../../drawings/snout-section.ts";
import { normal } from "../../drawings/snout-states.ts";
import { text } from "../../drawings/svg.ts";
import type { Words } from "../../sheet/index.ts";
import { Html } from "../page/html.ts";

const svg = (name: string, box: string, body: string): Html =>
  new Html(
    `<svg class="${name}" viewBox="${box}" xmlns="http://www.w3.org/2000/svg" aria-hidden="true">\n${body}\n</svg>`,
  );

/** Seen from in front, so that the pig's right is on the left. */
export const snoutOutline = (words: Words): Html =>
  svg(
    "snout",
    "-160 -10 320 320",
    [
      section(normal, () => true),
      text(-105, 304, words.say("right"), { class: "side", anchor: "middle" }),
      text(105, 304, words.say("left"), { class: "side", anchor: "middle" }),
    ].join("\n"),
  );

/** Seen from above, head up. */
export const lungOutline = (words: Words): Html =>
  svg(
    "lungs",
    "-172 4 344 456",
    [
      lungs(() => "lobe"),
      text(-80, 454, words.say("left"), { class: "side", anchor: "middle" }),
      text(84, 454, words.say("right"), { class: "side", anchor: "middle" }),
    ].join("\n"),
  );
