import { type FormatRule, practice } from "../../rule.ts";
import { reportedElsewhere } from "../../shared/rule-rows.ts";

/** What an accepted entry must be; the engine looks at the entries once it has all findings. */
export const acceptedEntries: readonly FormatRule[] = reportedElsewhere([
  {
    id: "accepted-without-reason",
    level: "error",
    locked: true,
    summary: "An accepted finding says why it is accepted.",
    protects:
      "Next year nobody knows whether a finding was weighed or only silenced; without a reason the finding stays.",
    lookAlike:
      "Nothing: a finding was accepted for some reason, and one short clause holds it (because: only treated pigs were left).",
    source: practice("an exception in a record carries its reason; common practice"),
    bad: { case: "accepted: [{rule: treated-pig, at: selection.treated}]" },
    good: {
      case: "selection: {treated: {with: amoxicillin by mouth, last: 12 h}}\naccepted: [{rule: treated-pig, at: selection.treated, because: only treated pigs were left}]",
    },
  },
  {
    id: "accepted-unused",
    level: "warning",
    summary: "Every accepted entry accepts a finding that is there.",
    protects:
      "An entry left behind, or one that names the wrong place, would silence the next fault at that place unseen.",
    lookAlike:
      "A finding that comes and goes with other pigs of the visit: the entry is asked about only when all that the rule looks at was read, so run lint on the whole visit.",
    source: practice("an exception that is no longer needed is taken out; common practice"),
    bad: {
      case: "accepted: [{rule: treated-pig, at: selection.treated, because: only treated pigs were left}]",
    },
    good: {
      case: "selection: {treated: {with: amoxicillin by mouth, last: 12 h}}\naccepted: [{rule: treated-pig, at: selection.treated, because: only treated pigs were left}]",
    },
  },
  {
    id: "accepted-unknown-rule",
    level: "error",
    locked: true,
    summary: "An accepted entry names a rule that exists.",
    protects: "A mistyped rule accepts nothing, while its author believes the matter closed.",
    lookAlike:
      "A rule that an older version had under another name: the message names the nearest; write that, or take the entry out.",
    source: practice("the list of rules of this project"),
    bad: { case: "accepted: [{rule: treated-pigs, because: only treated pigs were left}]" },
    good: {
      case: "selection: {treated: {with: amoxicillin by mouth, last: 12 h}}\naccepted: [{rule: treated-pig, because: only treated pigs were left}]",
    },
  },
  {
    id: "accepted-locked-rule",
    level: "error",
    locked: true,
    summary: "Alarms, the rules that guard them and faults of the format cannot be accepted.",
    protects:
      "A suspicion of a notifiable disease is lifted by the authority, not by an entry in the file; nor does a wrong value become right.",
    lookAlike:
      "An alarm that is surely false: it is closed by an authority entry in the case or the visit, and never here.",
    source: practice("duty to report on suspicion; local law rules. The rest is common practice"),
    bad: {
      case: "accepted: [{rule: alarm-sign-recorded, at: alarm_check.before_knife.vesicles, because: looked like sunburn}]",
    },
    good: {
      case: "alarm_check: {before_knife: {throat_swelling: seen}}\nexternal: {subcutis: {not_examined: left closed on suspicion}}\nauthority: [{at: 2026-04-22, stands: excluded, for: [throat-oedema-or-bloody-orifices], sample: culture of the neck node}]",
    },
  },
]);
