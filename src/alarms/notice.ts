/** The words of an alarm: what to do, whom to call, what to exclude. */
import type { Settings } from "../cases/index.ts";
import { listing } from "../words/listing.ts";
import type { Alarm } from "./alarm.ts";
import { entriesOf, standing } from "./lifted.ts";

/** Whom to call: as the settings say, with the telephone number. */
export function callWhom({ authority }: Pick<Settings, "authority">): string {
  if (authority === undefined) return "the competent veterinary authority";
  const { name, telephone } = authority;
  return telephone === undefined ? name : `${name}, telephone ${telephone}`;
}

/** What to do now, by level. */
function orders({ pattern, subject }: Alarm): string {
  const whom = callWhom(subject.settings);
  const shut =
    pattern.do_not_open === true ? "do not open the carcass, or close it at once" : "close the carcass";
  switch (pattern.level) {
    case "stop":
      return `STOP: do not cut on, ${shut}, let no pig, person or sample leave, and call ${whom} now`;
    case "call":
      return `STOP and CALL: finish nothing more, close the carcass, let no pig, person or sample leave, and call ${whom} now`;
    case "exclude":
      return `CALL before any sample leaves: tell ${whom}, and go on only as they say`;
  }
}

/** What was seen and what it may be. */
const suspicion = ({ pattern, evidence }: Alarm): string =>
  `${[...new Set(evidence.map(({ text }) => text))].join("; ")}: this may be ${listing(pattern.diseases, "or")}`;

/** The whole alarm: what was seen, what to do, what to exclude, and what it must not be taken for. */
export function alarmText(alarm: Alarm): string {
  const { exclude, look_alikes: alikes } = alarm.pattern;
  const same = alikes.filter(({ separated_by }) => separated_by === "laboratory").map(({ name }) => name);
  const notApart =
    same.length === 0 ? "" : ` What is recorded does not separate it from ${listing(same, "or")}.`;
  return `${suspicion(alarm)}. ${orders(alarm)}. ${exclude}.${notApart} ${record(alarm)}`;
}

/** Where to write the call; or, when the authority was reached, what it said and what lets you go on. */
function record({ pattern, subject, evidence }: Alarm): string {
  const said = standing(pattern.id, subject, evidence);
  if (said !== undefined)
    return `${said.stands === "restricted" ? "The authority took over" : "It was reported"} (${said.at}), and the stop stays until an entry under authority says released or excluded, for: [${pattern.id}].`;
  return entriesOf(subject).length === 0
    ? "Record the call under authority: [{at: …, reached: …, stands: reported}]."
    : "No entry under authority is about this alarm: each was made before this was seen, is of another visit or of other alarms, or does not say all that it must. Call again, and record that.";
}
