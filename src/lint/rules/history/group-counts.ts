/** Counts of a group that cannot be right, by themselves or beside another. */
import type { Visit } from "../../../cases/index.ts";
import { plausible, selectionRules } from "../../../knowledge/index.ts";
import { hasAny } from "../../../notes/index.ts";
import { type GroupOfVisit, groupsOf } from "../../../record/index.ts";
import { practice, type RuleRow, type VisitRule } from "../../rule.ts";

type Key = "at_risk" | "affected" | "dead" | "sneezing" | "coughing";

interface Count extends RuleRow {
  readonly keys: readonly Key[];
  /** @returns undefined where the count may be right */
  says(
    group: GroupOfVisit,
    key: Key,
    where: { readonly id: string; readonly visit: Visit },
  ): string | undefined;
}

const rows: readonly Count[] = [
  {
    id: "group-counts-impossible",
    level: "error",
    summary: "No more pigs are affected or dead than were at risk.",
    protects: "A swapped pair of counts gives a morbidity above 100 %, or worse, one that looks right.",
    lookAlike:
      "Piglets that died beside their sows: a group of class adult in farm.yaml is not asked; in any other, at_risk is all pigs that could fall ill, so count the litters in.",
    source: { cite: "arithmetic", confidence: "derived" },
    bad: { visit: "groups: {nursery-2: {at_risk: 40, affected: 238}}" },
    good: { visit: "groups: {nursery-2: {at_risk: 238, affected: 40}}" },
    keys: ["affected", "dead"],
    says(group, key, { id, visit }) {
      const number = Number(group[key]);
      // The piglets that die beside sows are not counted among them.
      if (visit.farm?.record.groups?.[id]?.class === "adult") return undefined;
      return group.at_risk !== undefined && number > group.at_risk
        ? `${number} ${key} out of ${group.at_risk} at risk. At risk are all pigs that were there when the signs began; correct one of the two.`
        : undefined;
    },
  },
  {
    id: "group-dead-unaffected",
    level: "warning",
    summary: "Pigs that have died since the signs began are counted among the affected.",
    protects:
      "Dead over affected is the case fatality; above 100 % it means that two counts were swapped, or that the dead were not counted as ill.",
    lookAlike:
      "Deaths of another cause, such as crushing or heat: say so under the note of the group (three crushed), and nothing is asked.",
    source: { cite: "arithmetic: case fatality is a share of the affected", confidence: "derived" },
    bad: { visit: "groups: {nursery-2: {affected: 2, dead: 20}}" },
    good: { visit: "groups: {nursery-2: {affected: 20, dead: 2}}" },
    keys: ["dead"],
    says({ at_risk: all, affected, dead, onset, note }) {
      if (affected === undefined || dead === undefined || dead <= affected) return undefined;
      // A healthy group loses a pig now and then; more dead than there were has a rule of its own; a note explains the rest.
      if ((affected === 0 && onset === undefined) || (all !== undefined && dead > all)) return undefined;
      if (note !== undefined && hasAny(note, selectionRules.told_deaths)) return undefined;
      return `${dead} dead, yet only ${affected} affected. Count the dead among the affected; if they died of something else, say so under note.`;
    },
  },
  {
    id: "cough-count-implausible",
    level: "error",
    summary: "The sneezes and coughs of a group are no more than a person can count.",
    protects:
      "Counts from two visits are compared; two noughts too many make any change to the air look like a triumph.",
    lookAlike:
      "Sums of several counts: write the coughs of all of them over all of their minutes, such as 90 in 6 min.",
    source: plausible.source,
    bad: { visit: "groups: {nursery-2: {sneezing: 3100 in 2 min}}" },
    good: { visit: "groups: {nursery-2: {sneezing: 31 in 2 min}}" },
    keys: ["sneezing", "coughing"],
    says(group, key) {
      const text = group[key];
      if (text === undefined) return undefined;
      const [count = 0, minutes = 0] = (`${text}`.match(/\d+/g) ?? []).map(Number);
      if (minutes === 0)
        return `nobody can count ${text}. Write over how many minutes they were counted, such as 34 in 2 min.`;
      return count > plausible.counted_in_minute * minutes
        ? `${text} is more than anybody can count; up to ${plausible.counted_in_minute} a minute would be believed (from memory, deliberately wide). Correct the count or the minutes.`
        : undefined;
    },
  },
  {
    id: "group-larger-than-farm",
    level: "warning",
    summary: "A group has about as many pigs at risk as it usually holds.",
    protects:
      "One digit too many, or the head count of the whole house, makes every proportion of the group wrong.",
    lookAlike:
      "Two batches in one room for some days: up to twice the usual head count is passed; beyond that correct head in farm.yaml, or accept it.",
    source: practice("our own limit against typing errors"),
    bad: { visit: "groups: {nursery-2: {at_risk: 2380}}" },
    good: { visit: "groups: {nursery-2: {at_risk: 238}}" },
    keys: ["at_risk"],
    says({ at_risk: pigs }, _key, { id, visit }) {
      const head = visit.farm?.record.groups?.[id]?.head ?? 0;
      return pigs !== undefined && head > 0 && pigs > selectionRules.head_times * head
        ? `${pigs} pigs, where farm.yaml has ${head}. Correct the figure, or the head count of the group in farm.yaml.`
        : undefined;
    },
  },
];

export const groupCountRules: readonly VisitRule[] = rows.map(({ keys, says, ...row }) => ({
  ...row,
  scope: "visit",
  family: "history",
  silent: "never",
  check(visit, reportVisit) {
    for (const [id, group] of groupsOf(visit))
      for (const key of keys) {
        const wrong = says(group, key, { id, visit });
        if (wrong !== undefined) reportVisit(`groups.${id}.${key}: ${wrong}`, ["groups", id, key]);
      }
  },
}));
