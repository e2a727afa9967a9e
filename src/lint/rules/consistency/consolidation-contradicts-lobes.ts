import { formatPath } from "../../../cases/index.ts";
import {
  consolidations,
  extentPercent,
  type LungRegions,
  lungRegions,
  namedSide,
  type PlacedFinding,
} from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice, type RuleRow } from "../../rule.ts";

interface LobeContradiction extends RuleRow {
  /** The key of the finding that stands against the lobes. */
  readonly key: "extent" | "site" | "distribution";
  /** How it does, and what to correct. */
  says(lesion: PlacedFinding, regions: LungRegions, all: readonly PlacedFinding[]): string | undefined;
}

const positions = [
  ["cranial", /\b(cranial|apical)\b/i],
  ["middle", /\b(middle|cardiac)\b/i],
  ["caudal", /\b(caudal|diaphragmatic)\b/i],
] as const;

const foci: readonly string[] = ["focal", "multifocal", "miliary"];

const rows: readonly LobeContradiction[] = [
  {
    id: "extent-contradicts-lobes",
    key: "extent",
    level: "error",
    summary: "The share of the lung that is consolidated lies within that of its lobes.",
    protects: "No lung is more consolidated than its worst lobe; one of the figures is of something else.",
    lookAlike:
      "The share of one lobe, not of the lung: say which under site (left middle lobe), and the extent is not held against the others.",
    source: { cite: "arithmetic: a mean lies between its parts", confidence: "derived" },
    bad: {
      case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}, findings: [{process: consolidation, distribution: cranioventral, extent: 55 %, colour: dark-red, consistency: firm}]}}",
    },
    good: {
      case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}, findings: [{process: consolidation, distribution: cranioventral, extent: 14 %, colour: dark-red, consistency: firm}]}}",
    },
    says({ finding }, { worst }) {
      const extent = extentPercent(finding);
      const isOfOneLobe = /lobe/i.test(finding.site ?? "");
      return extent !== undefined && extent > worst && !isOfOneLobe
        ? `${finding.extent} of the lung, but the worst lobe has ${worst} %. Extent is the share of the whole organ; correct it or the lobes.`
        : undefined;
    },
  },
  {
    id: "site-contradicts-lobes",
    key: "site",
    level: "error",
    summary: "Consolidation lies in a lobe, or on a side, that was graded above zero.",
    protects:
      "Left and right were swapped in one of two places, and later nobody can tell which of them was typed in a hurry.",
    lookAlike:
      "A focus of some millimetres in a lobe of 0 %: with distribution focal, multifocal or miliary and no extent above 1 % it is passed.",
    source: practice("common practice of lung scoring: what is consolidated is graded in its lobe"),
    bad: {
      case: "respiratory: {lungs: {consolidation: {left_cranial: 0, left_middle: 0, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}, findings: [{process: consolidation, site: left middle lobe, distribution: cranioventral, extent: 8 %, colour: dark-red, consistency: firm}]}}",
    },
    good: {
      case: "respiratory: {lungs: {consolidation: {left_cranial: 0, left_middle: 0, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}, findings: [{process: consolidation, site: right middle lobe, distribution: cranioventral, extent: 8 %, colour: dark-red, consistency: firm}]}}",
    },
    says({ finding }, { graded }) {
      const { site } = finding;
      const side = namedSide(site);
      // Foci may be too small for a per cent of their lobe.
      const isSmall = foci.includes(finding.distribution ?? "") && (extentPercent(finding) ?? 0) <= 1;
      if (side === undefined || isSmall) return undefined;
      const named = positions.filter(([, words]) => words.test(site ?? ""));
      const lobesAtSite = (named.length > 0 ? named : positions).map(([name]) => `${side}_${name}`);
      return lobesAtSite.every((lobe) => graded.values.get(lobe) === 0)
        ? `${site}, but ${named.length > 0 ? `${listing(lobesAtSite)} ${lobesAtSite.length > 1 ? "are" : "is"} 0` : `every ${side} lobe is 0`}. Left and right, or two lobes, were swapped here or under consolidation; correct the one that is wrong.`
        : undefined;
    },
  },
  {
    id: "distribution-contradicts-lobes",
    key: "distribution",
    level: "warning",
    summary: "Consolidation called caudodorsal or cranioventral lies where its lobes were graded.",
    protects:
      "Cranioventral points to the airways, caudodorsal to the blood or to pleuropneumonia; the word and the lobes ask for different tests.",
    lookAlike:
      "Two consolidations in one lung: write each as a finding with its own distribution, and neither is held against the lobes.",
    source: practice("meaning of the words"),
    bad: {
      case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 0, accessory: 10}, caudal_cranial_part: {left: 0, right: 0}, findings: [{process: consolidation, distribution: caudodorsal, extent: 12 %, colour: dark-red, consistency: firm}]}}\ndiagnosis: ",
    },
    good: {
      case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 0, accessory: 10}, caudal_cranial_part: {left: 0, right: 0}, findings: [{process: consolidation, distribution: cranioventral, extent: 12 %, colour: dark-red, consistency: firm}]}}\ndiagnosis: ",
    },
    says({ finding: { distribution } }, { onlyCranioventral, onlyCaudal }, all) {
      const lobesSay =
        distribution === "caudodorsal" && onlyCranioventral
          ? "both caudal lobes are 0"
          : distribution === "cranioventral" && onlyCaudal
            ? "only the caudal lobes are above 0"
            : undefined;
      // A second consolidation may be the one that the lobes speak of.
      return lobesSay !== undefined && all.every(({ finding }) => finding.distribution === distribution)
        ? `${distribution}, but ${lobesSay} under consolidation. Correct the word or the lobes.`
        : undefined;
    },
  },
];

/** What a finding of consolidation says that the grades of its lobes deny. */
export const consolidationContradictsLobes: readonly CaseRule[] = rows.map(({ key, says, ...rule }) => ({
  ...rule,
  scope: "case",
  family: "consistency",
  check(one, report) {
    const regions = lungRegions(one);
    // Where every lobe is 0, observation-parts-disagree speaks.
    if (regions === undefined || regions.worst === 0) return;
    const all = consolidations(one);
    for (const lesion of all) {
      const text = says(lesion, regions, all);
      const at = [...lesion.path, key];
      if (text !== undefined) report(`${formatPath(at)}: ${text}`, at);
    }
  },
}));
