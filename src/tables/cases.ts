/** The table of cases: a row a pig. */
import { quantity } from "../cases/index.ts";
import { portablePath } from "../formats/page/portable-path.ts";
import { diseases } from "../knowledge/diseases.ts";
import { ageClasses, protocols, selectionBases } from "../knowledge/index.ts";
import { diedAt, hoursBetween, hoursIll, isUntreated, openedAt, statedDiagnoses } from "../record/index.ts";
import { type OfCase, ofCase } from "./places.ts";
import {
  asFlag,
  code,
  codes,
  day,
  flag,
  id,
  integer,
  moments,
  named,
  nameds,
  number,
  table,
  text,
} from "./table.ts";

const farmOf = ({ farm }: OfCase): string | undefined => farm;
const pigOf = ({ one }: OfCase) => one.record.pig ?? {};
const groupOfDay = ({ one }: OfCase) => {
  const groups = one.visit?.record.groups ?? {};
  const name = one.record.pig?.group ?? "";
  return Object.hasOwn(groups, name) ? groups[name] : undefined;
};

const toTheMinute = (hours: number | undefined): number | undefined =>
  hours === undefined ? undefined : Math.round(hours * 60) / 60;

export const cases = table<OfCase>({
  name: "cases",
  title: "One row a pig: what it was, why it was chosen, how and when it died and was opened",
  key: ["case"],
  fields: [
    id("case", "Case", "case: case", "case", ({ one }) => one.id),
    text("file", "File of the case", "path of the file", ({ one }) => portablePath(one.file)),
    day("visit_on", "Day of the visit", "visit: date", ({ one }) => one.visit?.record.date),
    named(
      "protocol",
      "What the examination had to cover",
      "case: protocol",
      "own",
      protocols.keys(),
      ({ one }) => one.record.protocol,
    ),
    id(
      "reader",
      "Who opened and judged the pig",
      "case: examiner",
      "reader",
      ({ one }) => one.record.examiner,
    ),
    id("tag", "Ear tag or mark", "case: pig.tag", "tag", (at) => pigOf(at).tag, farmOf),
    id("group", "Group on the farm", "case: pig.group", "group", (at) => pigOf(at).group, farmOf),
    id("pen", "Pen within the group", "case: pig.pen", "pen", (at) => pigOf(at).pen, farmOf),
    id("litter", "Litter or sow", "case: pig.litter", "litter", (at) => pigOf(at).litter, farmOf),
    number("age", "Age at death", "case: pig.age", "d", ({ one }) => one.ageDays),
    code(
      "age_class",
      "Age class, as written or by the age",
      "case: pig.class",
      ({ one }) => one.ageClass,
      Object.keys(ageClasses.classes),
    ),
    code("sex", "Sex", "case: pig.sex", (at) => pigOf(at).sex),
    number("weight", "Body weight", "case: pig.weight", "kg", ({ one }) => one.weightKg),
    number(
      "condition",
      "Body condition, 1 (very thin) to 5 (very fat)",
      "case: pig.condition",
      undefined,
      (at) => pigOf(at).condition,
    ),
    number("temperature", "Rectal temperature in life", "case: pig.temperature", "°C", (at) =>
      quantity("temperature", pigOf(at).temperature),
    ),
    number("crown_rump", "Crown-rump length", "case: pig.crown_rump", "mm", (at) =>
      quantity("length", pigOf(at).crown_rump),
    ),
    integer("parity", "Farrowings of a sow", "case: pig.parity", (at) => pigOf(at).parity),
    integer(
      "dam_parity",
      "Farrowings of its dam, with this litter",
      "case: pig.dam_parity",
      (at) => pigOf(at).dam_parity,
    ),
    number("since_farrowing", "Time since farrowing", "case: pig.since_farrowing", "h", (at) =>
      quantity("duration", pigOf(at).since_farrowing),
    ),
    number("since_weaning", "Time since weaning", "case: pig.since_weaning", "h", (at) =>
      quantity("duration", pigOf(at).since_weaning),
    ),
    integer(
      "group_head",
      "Pigs in its group on the day of the visit",
      "visit: groups.at_risk",
      (at) => groupOfDay(at)?.at_risk,
    ),
    integer(
      "group_affected",
      "Pigs of its group with signs on that day",
      "visit: groups.affected",
      (at) => groupOfDay(at)?.affected,
    ),
    integer(
      "group_dead",
      "Pigs of its group that died since the signs began",
      "visit: groups.dead",
      (at) => groupOfDay(at)?.dead,
    ),
    code(
      "basis",
      "How the pig was chosen; only random and complete say anything of how common something is",
      "case: selection.basis",
      ({ one }) => one.record.selection?.basis,
      Object.keys(selectionBases),
    ),
    codes("signs", "Signs in life", "case: selection.signs", ({ one }) => one.record.selection?.signs),
    number(
      "ill_for",
      "Time from the first signs to death",
      "worked out: selection.onset and death",
      "h",
      ({ one }) => toTheMinute(hoursIll(one)),
    ),
    flag(
      "untreated",
      "Whether it got nothing that acts on bacteria; empty where it is not recorded",
      "worked out: selection.treated",
      ({ one }) => {
        const treated = one.record.selection?.treated;
        return treated === undefined || treated === "unknown" ? undefined : isUntreated(one);
      },
    ),
    flag("typical", "Whether its signs are those of the group", "case: selection.typical", ({ one }) =>
      asFlag(one.record.selection?.typical),
    ),
    code("manner", "How it died", "case: death.manner", ({ one }) => one.record.death?.manner),
    code("method", "How it was killed", "case: death.method", ({ one }) => one.record.death?.method),
    ...moments<OfCase>("died", "Death", "case: death.at", ({ one }) => one.record.death?.at),
    ...moments<OfCase>("opened", "Opening", "case: opened.at", ({ one }) => one.record.opened?.at),
    number(
      "dead_for",
      "Time from death to the opening",
      "worked out: death.at and opened.at",
      "h",
      ({ one }) => hoursBetween(diedAt(one), openedAt(one)),
    ),
    number("ambient", "Air temperature where it lay", "case: opened.ambient", "°C", ({ one }) =>
      quantity("temperature", one.record.opened?.ambient),
    ),
    code("state", "State of the carcass", "case: opened.state", ({ one }) => one.record.opened?.state),
    code(
      "diagnosis_basis",
      "What the diagnosis rests on",
      "case: diagnosis.basis",
      ({ one }) => one.record.diagnosis?.basis,
    ),
    codes("agents", "Agents that the diagnosis names", "case: #reasoned.agent", ({ one }) => [
      ...new Set(statedDiagnoses(one).flatMap(({ agent }) => agent ?? [])),
    ]),
    nameds(
      "diseases",
      "Diseases that the diagnosis names by their id",
      "case: diagnosis.disease",
      "disease",
      diseases.keys(),
      ({ one }) => [...new Set(statedDiagnoses(one).flatMap(({ disease }) => disease ?? []))],
    ),
    text(
      "diagnoses",
      "The diagnosis in words",
      "case: diagnosis",
      ({ one }) =>
        statedDiagnoses(one)
          .map((stated) => stated.text)
          .join("; ") || undefined,
    ),
    day(
      "answered",
      "Day on which the case was closed",
      "case: diagnosis.answered",
      ({ one }) => one.record.diagnosis?.answered,
    ),
    text("history", "History", "case: history", ({ one }) => one.record.history),
    text("note", "Note", "case: note", ({ one }) => one.record.note),
  ],
  rows: (folder) => folder.cases.map(ofCase),
});
