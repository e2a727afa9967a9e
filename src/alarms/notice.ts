/** The words of an alarm: what to do, whom to call, what to exclude. */
import { isNoDecision, type Settings } from "../cases/index.ts";
import { listing } from "../words/listing.ts";
import type { Alarm } from "./alarm.ts";
import { since } from "./lifted.ts";

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

/** Where to write the call; or, when one is recorded, why it does not answer this alarm. */
function record({ subject, evidence }: Alarm): string {
  const own = subject.record.authority;
  const { contacted, answer } =
    own ?? ("cases" in subject ? undefined : subject.visit?.record.authority) ?? {};
  if (contacted === undefined || answer === undefined)
    return "Record the call under authority: {contacted: …, answer: …}.";
  if (isNoDecision(answer))
    return `The call recorded (${contacted}) has no decision ("${answer}"): call again, and record what was decided.`;
  return "cases" in subject || since(subject, evidence) === undefined
    ? `The call recorded (${contacted}) does not answer this: call again, and record that.`
    : `The call recorded (${contacted}) was made before this was seen, or is of another visit: call again, and record that.`;
}
