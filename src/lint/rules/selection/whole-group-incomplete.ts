import { practice, type VisitRule } from "../../rule.ts";

export const wholeGroupIncomplete: VisitRule = {
  id: "whole-group-incomplete",
  scope: "visit",
  family: "selection",
  level: "warning",
  summary: "Where the whole group is said to have been examined, there are as many cases as pigs at risk.",
  protects: "A census in name only passes off a handful of pigs as the prevalence of the group.",
  lookAlike:
    "All the deaths of some weeks: they are a whole of their own, so say which weeks under selection.note, and nothing is counted against the group.",
  source: practice("definition of a census; general epidemiology"),
  bad: { case: "selection: {basis: complete}" },
  good: {
    case: "selection: {basis: complete}",
    visit: "groups: {nursery-2: {at_risk: 1, affected: 1, dead: 0}}",
  },
  check(visit, _reportVisit, reportCase) {
    if (!visit.complete) return;
    const census = visit.cases.filter(({ record }) => record.selection?.basis === "complete");
    const told = new Set<string>();
    for (const one of census) {
      const group = one.record.pig?.group;
      const atRisk = group === undefined ? undefined : visit.record.groups?.[group]?.at_risk;
      if (group === undefined || atRisk === undefined || told.has(group)) continue;
      told.add(group);
      const cases = census.filter(({ record }) => record.pig?.group === group);
      // All the deaths of a stated time are a whole group too; then the note says which.
      const isOfDeaths = cases.some(
        ({ record }) =>
          record.selection?.note !== undefined ||
          record.death?.manner === "found-dead" ||
          record.death?.manner === "born-dead",
      );
      if (!isOfDeaths && cases.length < atRisk)
        reportCase(one)(
          `selection.basis: complete, yet ${cases.length} of the ${atRisk} pigs at risk in ${group} ${cases.length === 1 ? "has" : "have"} a case. Write random or convenience, or, if these are all the deaths of a period, say so under selection.note.`,
          ["selection", "basis"],
        );
    }
  },
};
