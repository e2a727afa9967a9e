import { type Case, formatPath, valueAt } from "../../../cases/index.ts";
import { impossibleInLife, organById } from "../../../knowledge/index.ts";
import type { CaseRule, Report } from "../../rule.ts";

const unborn = (milk: string): string =>
  `pig: {age: , class: stillborn, crown_rump: 27 cm, weight: 1.1 kg, temperature: }\nselection: {basis: convenience, signs: [none], onset: , typical: }\ndeath: {manner: born-dead, method: }\nexternal: {skin: {state: normal, meconium: none}}\nlymphoid: {bronchial_nodes: normal}\nrespiratory: {turbinates: , lungs: {state: normal, consolidation: , caudal_cranial_part: , float: sinks}}\nstomach: {stomach_content: {state: normal, milk: ${milk}}}\nplacental: {umbilical_cord: {state: normal, cord: whole}, placenta: normal}\nendocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}\ndiagnosis: `;

export const observationImpossible: CaseRule = {
  id: "observation-impossible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Nothing is measured or observed that a pig of this age cannot have.",
  protects:
    "Milk in the stomach means that a piglet was born alive and died on the farm’s watch; a crown-rump length of a weaner is a line from another case.",
  lookAlike:
    "Meconium on the skin of a piglet in its first days, milk in one that lived for an hour: correct the class and nothing is said.",
  source: impossibleInLife.source,
  bad: { case: unborn("full") },
  good: { case: unborn("none") },
  check(one, report) {
    reportFacts(one, report);
    for (const row of Object.values(impossibleInLife.observations)) {
      const organ = organById(row.organ);
      const { entry, path } = organ === undefined ? {} : one.organ(organ);
      const value = valueAt(entry, [row.read]);
      if (value === undefined || path === undefined || !isOfAge(row, one)) continue;
      const isThere =
        row.is?.includes(String(value)) ?? (typeof value === "number" && value > (row.above ?? 0));
      if (!isThere) continue;
      const at = [...path, row.read];
      report(`${formatPath(at)}: ${String(value)} in ${nameOf(one)}; ${row.because}. ${row.instead}.`, at);
    }
  },
};

type Row = Pick<(typeof impossibleInLife.observations)[string], "classes" | "under_days">;

const isOfAge = ({ classes, under_days: days }: Row, { ageClass, ageDays }: Case): boolean =>
  (ageClass !== undefined && classes.includes(ageClass)) ||
  (days !== undefined && ageDays !== undefined && ageDays < days);

const nameOf = ({ ageClass, record }: Case): string => `a pig of ${record.pig?.age ?? `class ${ageClass}`}`;

function reportFacts(one: Case, report: Report): void {
  for (const { fact, classes, because, instead } of Object.values(impossibleInLife.facts)) {
    const value = one.record.pig?.[fact];
    if (value !== undefined && one.ageClass !== undefined && classes.includes(one.ageClass))
      report(`pig.${fact}: ${value} in a pig of class ${one.ageClass}; ${because}. ${instead}.`, [
        "pig",
        fact,
      ]);
  }
}
