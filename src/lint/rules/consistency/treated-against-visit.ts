import { formatPath, isAfter, moment, type Visit } from "../../../cases/index.ts";
import { diedAt, isUntreated, openedAt } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const treatedAgainstVisit: CaseRule = {
  id: "treated-against-visit",
  scope: "case",
  family: "consistency",
  level: "error",
  trustsTimes: true,
  summary: "A pig whose group was under an antimicrobial in feed or water when it died was treated.",
  protects:
    "The laboratory reads a culture without growth as the absence of a bacterium; the drug was in the drinkers.",
  lookAlike:
    "Suckling piglets beside sows on medicated feed, single pigs of the group treated by injection, a treatment of another group or one that began later: in all of these the pig may say no.",
  source: practice("what is in the feed or the water of a group reaches each of its pigs"),
  bad: {
    visit:
      "treatments: [{group: nursery-2, with: amoxicillin, route: in-water, antimicrobial: yes, from: 2026-04-18, to: 2026-04-22}]",
    case: "selection: {treated: no}",
  },
  good: {
    visit:
      "treatments: [{group: nursery-2, with: amoxicillin, route: in-water, antimicrobial: yes, from: 2026-04-18, to: 2026-04-22}]",
    case: "selection: {treated: {with: amoxicillin in the water, last: 2 h}}\naccepted: [{rule: treated-pig, because: the whole room is on it}]",
  },
  check(one, report) {
    const { visit, ageClass, record } = one;
    if (visit === undefined || !isUntreated(one) || !weaned.has(ageClass ?? "")) return;
    const died = diedAt(one) ?? openedAt(one);
    if (died === undefined) return;
    for (const [index, entry] of (visit.record.treatments ?? []).entries()) {
      if (typeof entry === "string" || !isMedicated(entry)) continue;
      if (entry.group !== undefined && entry.group !== record.pig?.group) continue;
      const [from, to] = [moment(entry.from), moment(entry.to)];
      if (from === undefined || isAfter(from, died) || (to !== undefined && isAfter(died, to))) continue;
      report(
        `selection.treated says no, but ${visit.file}, ${formatPath(["treatments", index])}: ${entry.group ?? "every group"} had ${entry.with} ${entry.route === "in-feed" ? "in the feed" : "in the water"} from ${entry.from}${entry.to === undefined ? "" : ` to ${entry.to}`}. Write treated: {with: ${entry.with}, last: 12 h}, or correct the visit.`,
        ["selection", "treated"],
      );
    }
  },
};

const weaned = new Set(["weaner", "finisher", "adult"]);

type Treatment = Exclude<NonNullable<Visit["record"]["treatments"]>[number], string>;

/** Whether every pig of the group got it. */
const isMedicated = ({ antimicrobial, route }: Treatment): boolean =>
  (antimicrobial === "yes" || antimicrobial === true) && (route === "in-feed" || route === "in-water");
