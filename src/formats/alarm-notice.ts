/** The notice of open alarms in plain words, for the top of what a command says. */
import type { OpenAlarm } from "../alarms/index.ts";
import { listing } from "../words/listing.ts";
import { visible } from "../words/visible.ts";
import type { Style } from "./page/style.ts";
import { wrapped } from "./page/width.ts";

/** More pigs than this are counted, not named: the notice must fit above everything else. */
const longest = 8;

/**
 * The notice, of visits before cases; empty without an open alarm.
 * @param width characters a line may have
 */
export function alarmNotice(alarms: readonly OpenAlarm[], style: Style, width: number): string {
  const open = [...alarms.filter(({ of }) => of === "visit"), ...alarms.filter(({ of }) => of === "case")];
  const stopping = open.filter(({ pattern }) => pattern !== undefined && pattern.level !== "exclude");
  const excluding = open.filter(({ pattern }) => pattern?.level === "exclude");
  const untold = open.filter(({ pattern }) => pattern === undefined);
  return [
    ...part(
      stopping,
      "STOP: this may be a notifiable disease, and the authority has neither released nor excluded it.",
      "Do not cut on. Close the carcass. No pig, person, vehicle or sample leaves. Call",
      style,
    ),
    ...part(
      excluding,
      "CALL: this looks like a notifiable disease, which must be excluded before samples leave.",
      "Send nothing on your own. Call",
      style,
    ),
    ...(untold.length === 0
      ? []
      : [
          style.level("error", "CANNOT BE TOLD: where an alarm looks, a value cannot be read."),
          ...listed(untold.map(({ id, file }) => `  ${visible(id)} (${visible(file)})`)),
          style.heading("Put it right before you go on; carcase lint says where."),
          "",
        ]),
  ]
    .flatMap((line) => {
      const indent = /^ */.exec(line)?.[0] ?? "";
      return wrapped(line.slice(indent.length), indent, width, `${indent}  `);
    })
    .map((line) => `${line}\n`)
    .join("");
}

function part(alarms: readonly OpenAlarm[], head: string, order: string, style: Style): string[] {
  if (alarms.length === 0) return [];
  const call = [...new Set(alarms.map(({ whom }) => whom))];
  const lines = alarms.map(({ id, pattern, said }) =>
    pattern === undefined
      ? ""
      : `  ${visible(id)}: ${pattern.title} (may be ${listing(pattern.diseases, "or")}) [${pattern.id}]${saidOf(said)}`,
  );
  return [
    style.level("error", head),
    ...listed(lines),
    ...(alarms.every(({ said }) => said !== undefined)
      ? [style.heading(`${order.slice(0, order.lastIndexOf("."))}.`)]
      : [
          style.heading(`${order} ${visible(listing(call, "or"))} now.`),
          "Then record it in the case, or in visit.yaml for all of its cases:",
          "  authority: [{at: …, reached: …, stands: reported}]",
        ]),
    "",
  ];
}

function listed(lines: readonly string[]): readonly string[] {
  const more = lines.length - longest;
  return more > 1 ? [...lines.slice(0, longest), `  and ${more} more`] : lines;
}

/** What the authority said last. */
const saidOf = (said: OpenAlarm["said"]): string =>
  said === undefined ? "" : `, ${said.stands} ${visible(said.at)}`;
