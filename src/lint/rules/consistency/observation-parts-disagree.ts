import { type Case, formatPath, quantity, valueAt } from "../../../cases/index.ts";
import { organById, organs, partRules } from "../../../knowledge/index.ts";
import { extentPercent, lesions, whereOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import type { CaseRule, Report } from "../../rule.ts";
import { type Held, held, partsRead, stepsOf } from "../../shared/parts.ts";

export const observationPartsDisagree: CaseRule = {
  id: "observation-parts-disagree",
  scope: "case",
  family: "consistency",
  level: "error",
  summary:
    "What was observed on one organ agrees with itself: findings, observations, grades, sides and their total.",
  protects:
    "The adhesion is described and then scored as absent, the ulcer is measured on a stomach graded normal; the score takes one of the two, and it may be the wrong one.",
  lookAlike:
    "Fresh fibrin beside no chronic pleurisy, clear fluid without pericarditis, a scar beside ulcer: 0, an estimate some per cent off the tracing: these agree, and are passed.",
  source: partRules.source,
  bad: {
    case: "respiratory: {pleura: {pleurisy: {left: none, right: none}, findings: [{process: adhesion, site: right caudal lobe, distribution: focal, size: 40 mm}]}}",
  },
  good: {
    case: "respiratory: {pleura: {pleurisy: {left: none, right: dorsocaudal-focal}, findings: [{process: adhesion, site: right caudal lobe, distribution: focal, size: 40 mm}]}}",
  },
  check(one, report) {
    reportExcluded(one, report);
    reportSums(one, report);
    reportTotals(one, report);
    reportCounts(one, report);
    reportUnnamed(one, report);
    reportWeights(one, report);
  },
};

type Excluding = (typeof partRules.excludes)[string];

/** What cannot both be so. */
function reportExcluded(one: Case, report: Report): void {
  for (const row of Object.values(partRules.excludes)) {
    const both = bothHold(one, row);
    if (both !== undefined)
      report(`${both.one.says}, yet ${both.other.says}; ${row.because}. ${row.instead}.`, both.one.path);
  }
}

function bothHold(one: Case, row: Excluding): { readonly one: Held; readonly other: Held } | undefined {
  const pair = (part?: string): { one: Held; other: Held } | undefined => {
    const first = held(one, row.organ, row.one, part);
    const other = first === undefined ? undefined : held(one, row.organ, row.other, part);
    return first === undefined || other === undefined ? undefined : { one: first, other };
  };
  const parts = partsRead(one, row.organ, row.one);
  for (const part of parts) {
    const both = pair(part);
    if (both !== undefined) return both;
  }
  // A finding whose site names no side lies on one of them; two observations are held against each other part by part.
  const isByPart = parts.length > 0 && row.other.read !== undefined && isStarred(row.other.read);
  if (isByPart || (parts.length > 0 && hasSide(one, row))) return undefined;
  return pair();
}

const isStarred = (read: string | readonly string[]): boolean =>
  [read].flat().some((path) => path.endsWith("*"));

/** Whether each of the findings names its side, which was asked for already. */
const hasSide = (one: Case, { organ, other }: Excluding): boolean =>
  other.read === undefined &&
  lesions(one, { processes: processesOf(other.processes), organs: [organ] }).every(
    ({ finding }) => finding.side === "both" || /\b(left|right)\b/i.test(whereOf(finding)),
  );

type Processes = Parameters<typeof lesions>[1]["processes"];
const processesOf = (words: readonly string[] = []): Processes => words as Processes;

/** Shares of one area. */
function reportSums(one: Case, report: Report): void {
  for (const { organ: id, reads, processes, at_most: most, slack, because, instead } of Object.values(
    partRules.adds_up,
  )) {
    const organ = organById(id);
    if (organ === undefined) continue;
    const { entry, path } = one.organ(organ);
    const shares =
      reads === undefined
        ? lesions(one, { processes: processesOf(processes), organs: [id] }).map(({ finding, path: at }) => ({
            name: finding.process,
            share: extentPercent(finding) ?? 0,
            at: [...at, "extent"],
          }))
        : reads.map((read) => ({
            name: read,
            share: Number(valueAt(entry, [read]) ?? 0),
            at: [...path, read],
          }));
    const there = shares.filter(({ share }) => share > 0);
    const names = new Set(there.map(({ name }) => name));
    const sum = there.reduce((all, { share }) => all + share, 0);
    const last = there.at(-1);
    if (last !== undefined && names.size > 1 && sum > most + slack)
      report(
        `${id}: ${listing(there.map(({ name, share }) => `${name} ${share} %`))} are ${sum} % together; ${because}. ${instead}.`,
        last.at,
      );
  }
}

/** The figure of the whole lies between those of the sides. */
function reportTotals(one: Case, report: Report): void {
  for (const { organ: id, read, slack } of Object.values(partRules.totals)) {
    const organ = organById(id);
    if (organ === undefined) continue;
    const { entry, path } = one.organ(organ);
    const [left, right, total] = ["left", "right", "total"].map((part) =>
      valueAt(entry, [...stepsOf(read), part]),
    );
    if (typeof left !== "number" || typeof right !== "number" || typeof total !== "number") continue;
    if (total < Math.min(left, right) - slack || total > Math.max(left, right) + slack) {
      const at = [...path, ...stepsOf(read), "total"];
      report(
        `${formatPath(at)}: ${total}, but left ${left} and right ${right}; the total lies between its sides. Correct the one that is wrong, or measure again.`,
        at,
      );
    }
  }
}

/** So many as the findings say there are at least; none at all is told above. */
function reportCounts(one: Case, report: Report): void {
  for (const { organ: id, read, processes, because, instead } of Object.values(partRules.counts)) {
    const organ = organById(id);
    if (organ === undefined) continue;
    const { entry, path } = one.organ(organ);
    const counted = valueAt(entry, [read]);
    const told = lesions(one, { processes: processesOf(processes), organs: [id] }).reduce(
      (sum, { finding }) => sum + (finding.number ?? 0),
      0,
    );
    if (typeof counted === "number" && counted > 0 && told > counted)
      report(
        `${formatPath([...path, read])}: ${counted}, but the findings tell of ${told}; ${because}. ${instead}.`,
        [...path, read],
      );
  }
}

/** What the site of a finding names stands in the list: `left hock` among the joints that were opened. */
function reportUnnamed(one: Case, report: Report): void {
  for (const { organ: id, read, processes, because, instead } of Object.values(partRules.named)) {
    const organ = organById(id);
    const listed = organ === undefined ? undefined : one.organ(organ).entry?.[read];
    if (organ === undefined || !Array.isArray(listed) || listed.length === 0) continue;
    const words = (organ.definition.observations?.[read]?.values ?? []).map(String);
    for (const { finding, path } of lesions(one, { processes: processesOf(processes), organs: [id] })) {
      const site = whereOf(finding).toLowerCase();
      const named = words.filter((word) => word.split("-").every((part) => site.includes(part)));
      const [first] = named;
      if (first !== undefined && !named.some((word) => listed.includes(word)))
        report(
          `${formatPath([...path, "site"])}: ${whereOf(finding)}, but ${id}.${read} does not name ${first}; ${because}. ${instead}.`,
          [...path, "site"],
        );
    }
  }
}

const paired = organs.filter(({ definition }) => definition.form === "paired");

/** Both sides together weigh what the organ weighs. */
function reportWeights(one: Case, report: Report): void {
  const { slack, because, instead } = partRules.weights;
  for (const organ of paired) {
    const { entry, path, sides } = one.organ(organ);
    const whole = kilograms(entry?.weight);
    const parts = sides.map(({ state }) => kilograms(state.entry?.weight));
    if (whole === undefined || parts.length < 2) continue;
    const sum = parts.reduce<number>((all, part) => all + (part ?? Number.NaN), 0);
    if (Math.abs(sum - whole) > (whole * slack) / 100)
      report(
        `${formatPath([...path, "weight"])}: ${entry?.weight}, but the sides weigh ${Number((sum * 1000).toPrecision(6))} g together; ${because}. ${instead}.`,
        [...path, "weight"],
      );
  }
}

const kilograms = (text: string | undefined): number | undefined =>
  text === undefined ? undefined : quantity("mass", text);
