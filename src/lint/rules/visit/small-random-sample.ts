import { selectionRules } from "../../../knowledge/index.ts";
import { count } from "../../../words/listing.ts";
import type { VisitRule } from "../../rule.ts";

export const smallRandomSample: VisitRule = {
  id: "small-random-sample",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "A random sample of a group is more than one or two pigs.",
  protects:
    "If two pigs are free of a lesion, three quarters of the group may still have it: 1 - 0.05^(1/n) is 78 % for two, 63 % for three.",
  lookAlike:
    "The farmer gave one, or time was short: say so under pigs: {few: …}; the width of the answer stays what it is.",
  source: { cite: "exact binomial bound, 95 %", confidence: "derived" },
  bad: { case: "selection: {basis: random}", visit: "pigs: {few: }" },
  good: {
    case: "selection: {basis: random}",
    visit: "pigs: {few: the farmer gave one}",
  },
  check(visit, reportVisit) {
    if (!visit.complete || visit.record.pigs?.few !== undefined) return;
    const groups = visit.farm?.record.groups;
    const drawn = new Map<string, number>();
    for (const { record } of visit.cases)
      if (record.selection?.basis === "random" && record.pig?.group !== undefined)
        drawn.set(record.pig.group, (drawn.get(record.pig.group) ?? 0) + 1);
    for (const [group, pigs] of drawn)
      if ((groups === undefined || Object.hasOwn(groups, group)) && pigs < selectionRules.pigs_per_syndrome)
        reportVisit(
          `${count(pigs, "pig")} drawn at random in ${group}: if all were free of a lesion, up to ${Math.round(100 * (1 - 0.05 ** (1 / pigs)))} % of the group could still have it. Draw more, or say why not under pigs: {few: …}.`,
          ["pigs", "few"],
          "key",
        );
  },
};
