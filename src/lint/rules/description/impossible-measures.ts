import { type Case, formatPath, quantity, valueAt } from "../../../cases/index.ts";
import { impossibleFindings, type PlacedOrgan, plausible } from "../../../knowledge/index.ts";
import {
  entriesOf,
  findingsOf,
  isAmong,
  type PlacedFinding,
  sizesMm,
  volumeMl,
} from "../../../record/index.ts";
import type { CaseRule, Report, RuleRow } from "../../rule.ts";

interface ImpossibleMeasure extends RuleRow {
  readonly key: "size" | "volume";
  /** Why the measure is too much, and what to check. */
  says(placed: PlacedFinding, one: Case): string | undefined;
}

const { longest } = impossibleFindings;

const rows: readonly ImpossibleMeasure[] = [
  {
    id: "size-implausible",
    key: "size",
    level: "error",
    summary:
      "A lesion is no larger than the part of the pig that it lies in, and a lymph node no longer than a hand.",
    protects: "Centimetres typed for millimetres make a fist of a pea, in every table that follows.",
    lookAlike:
      "Gut and placenta are longer and have no limit; skin, womb, ureters, spinal cord and a big spleen have wider ones.",
    source: longest.source,
    bad: {
      case: "liver_pancreas: {liver: [{process: nodule, distribution: focal, size: 90 cm, colour: tan}]}",
    },
    good: {
      case: "liver_pancreas: {liver: [{process: nodule, distribution: focal, size: 90 mm, colour: tan}]}",
    },
    says({ organ, finding }, { ageClass }) {
      if (isAmong(organ.id, longest.not_in)) return undefined;
      const ofClass = ageClass === undefined ? undefined : longest.classes[ageClass];
      const isLong = ageClass === undefined || longest.long_in.includes(ageClass);
      const ofOrgan = longest.organs[organ.id] ?? longest.anywhere;
      const limit = Math.min(
        isLong ? ofOrgan : Math.min(ofOrgan, longest.anywhere),
        ofClass ?? Number.POSITIVE_INFINITY,
      );
      return sizesMm(finding).some((side) => side > limit)
        ? `${finding.size} is larger than ${limit === ofClass ? `a pig of class ${ageClass} has room for` : "the organ can be"} (${limit} mm at most). Check mm and cm.`
        : undefined;
    },
  },
  {
    id: "volume-implausible",
    key: "volume",
    level: "error",
    summary: "No fluid is a great part of the pig, and in the nose there is no more than it can hold.",
    protects: "Litres typed for millilitres turn a spoonful into a bucket.",
    lookAlike:
      "A belly full of fluid in a pig with a failing heart or a burst bladder: up to a fifth of its weight is believed, so a right volume mostly means a wrong pig.weight.",
    source: plausible.source,
    bad: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 l, exudate: serous}]}",
    },
    good: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: serous}]}",
    },
    says({ organ, finding }, one) {
      const volume = volumeMl(finding);
      if (volume === undefined) return undefined;
      const { share, ml } = plausible.fluid_of[organ.id] ?? { share: plausible.fluid_share, ml: undefined };
      const ofPig = one.weightKg === undefined ? Number.POSITIVE_INFINITY : one.weightKg * 10 * share;
      return volume > Math.min(ofPig, ml ?? Number.POSITIVE_INFINITY)
        ? `${finding.volume} ${where(one, organ, ml !== undefined)}. Check ml and l.`
        : undefined;
    },
  },
];

/** Measures of a finding that no pig has room for. */
export const impossibleMeasures: readonly CaseRule[] = rows.map(({ key, says, ...rule }) => ({
  ...rule,
  scope: "case",
  family: "description",
  check(one, report) {
    for (const placed of findingsOf(one)) {
      if (placed.finding[key] === undefined) continue;
      const text = says(placed, one);
      const at = [...placed.path, key];
      if (text !== undefined) report(`${formatPath(at)}: ${text}`, at);
    }
    if (key === "size") reportObserved(one, report);
  },
}));

const observed = Object.entries(longest.observations).map(([name, limit]) => {
  const [system = "", key = "", ...path] = name.split(".");
  return { id: `${system}.${key}`, path, limit };
});

/** Lengths that were measured on an organ itself. */
function reportObserved(one: Case, report: Report): void {
  for (const { organ, state, entry } of entriesOf(one))
    for (const { id, path, limit } of observed) {
      if (id !== organ.id || state.path.length > 2) continue;
      const text = valueAt(entry, path);
      const mm = typeof text === "string" ? Math.abs(quantity("length", text.replace(/^-/, "")) ?? 0) : 0;
      const at = [...state.path, ...path];
      if (mm > limit)
        report(
          `${formatPath(at)}: ${text} is more than any pig has (${limit} mm at most). Check mm and cm.`,
          at,
        );
    }
}

/** `in a pig of 12 kg`, and for an organ that holds little its name before it. */
function where({ record }: Case, { definition }: PlacedOrgan, small: boolean): string {
  const weight = record.pig?.weight;
  const pig = weight === undefined ? "of a pig" : `in a pig of ${weight}`;
  return small ? `from the ${definition.title.toLowerCase()} ${pig}` : pig;
}
