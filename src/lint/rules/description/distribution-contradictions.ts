import { formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import {
  extentPercent,
  findingsOf,
  namedSide,
  namesBoth,
  type PlacedFinding,
  sideInPath,
  whereOf,
} from "../../../record/index.ts";
import { type CaseRule, practice, type RuleRow } from "../../rule.ts";

interface DistributionContradiction extends RuleRow {
  /** The key of the finding that is reported. */
  readonly key: "distribution" | "extent" | "number";
  /** What speaks against the distribution, and what to write instead. */
  says(placed: PlacedFinding, all: readonly PlacedFinding[]): string | undefined;
}

const many = ["multifocal", "multifocal-to-coalescing", "miliary"];
const { diffuse_at_least: least, focal_at_most: most } = description.distribution;

const rows: readonly DistributionContradiction[] = [
  {
    id: "distribution-side-contradiction",
    key: "distribution",
    level: "error",
    summary:
      "Unilateral means one side, bilateral and symmetrical mean both, and side and site say the same.",
    protects: "Cause, sampling and surgery differ by side; the reader cannot know which word is the slip.",
    lookAlike:
      "One lesion of both kidneys, written under left and under right: the same process and word (bilateral, symmetrical) on each side is passed.",
    source: practice("meaning of the words"),
    bad: {
      case: "external: {eyes: [{process: discharge, site: left eye, distribution: bilateral, volume: 1 ml, exudate: serous}]}",
    },
    good: {
      case: "external: {eyes: [{process: discharge, site: both eyes, distribution: bilateral, volume: 1 ml, exudate: serous}]}",
    },
    says({ organ, finding, path }, all) {
      const { distribution, process } = finding;
      const where = whereOf(finding);
      if (distribution === "unilateral")
        return namesBoth(where)
          ? `unilateral, but it lies ${where}. Name the one side, or write bilateral.`
          : undefined;
      if (distribution !== "bilateral" && distribution !== "symmetrical") return undefined;
      const key = sideInPath(path);
      if (key === undefined && namedSide(where) === undefined) return undefined;
      const isOnOtherSide = all.some(
        (other) =>
          other.organ === organ &&
          other.finding.process === process &&
          other.finding.distribution === distribution &&
          sideInPath(other.path) !== key,
      );
      if (key !== undefined && isOnOtherSide) return undefined;
      return `${distribution}, but ${key === undefined ? `it lies ${where}` : `recorded under ${key} alone`}. Name both sides, or write how the lesion is distributed on the one.`;
    },
  },
  {
    id: "distribution-extent-contradiction",
    key: "extent",
    level: "error",
    summary: "A diffuse lesion covers much of the organ, and a focal one does not cover nearly all of it.",
    protects: "One of the two was not looked at again, and the table will use the wrong one.",
    lookAlike:
      "A lesion diffuse in one lobe or one loop: locally-extensive; one large abscess that fills most of a lobe: give it a size in place of an extent.",
    source: description.source,
    bad: {
      case: "liver_pancreas: {liver: [{process: necrosis, distribution: focal, extent: 90 %, colour: tan}]}",
    },
    good: {
      case: "liver_pancreas: {liver: [{process: necrosis, distribution: diffuse, extent: 90 %, colour: tan}]}",
    },
    says({ finding }) {
      const { distribution } = finding;
      if (distribution !== "diffuse" && distribution !== "focal") return undefined;
      const extent = extentPercent(finding);
      // A measure of zero has a rule of its own.
      if (extent === undefined || extent === 0) return undefined;
      if (distribution === "diffuse")
        return extent < least
          ? `diffuse, but only ${finding.extent} of the organ. Write multifocal, patchy or locally-extensive, or correct the extent.`
          : undefined;
      return extent > most
        ? `focal, but ${finding.extent} of the organ. Write locally-extensive or diffuse, or correct the extent.`
        : undefined;
    },
  },
  {
    id: "distribution-number-contradiction",
    key: "number",
    level: "error",
    summary: "Focal is one, multifocal and miliary are many, and the number says the same.",
    protects:
      "One abscess and nine abscesses have different histories; the reader cannot know whether the word or the number is the slip.",
    lookAlike:
      "Three foci close together in one spot: locally-extensive may have any number, and so may patchy; focal is a single one.",
    source: practice("meaning of the words"),
    bad: {
      case: "respiratory: {lungs: {findings: [{process: abscess, distribution: focal, number: 4, size: 12 mm}]}}",
    },
    good: {
      case: "respiratory: {lungs: {findings: [{process: abscess, distribution: multifocal, number: 4, size: 12 mm}]}}",
    },
    says({ finding: { distribution, number } }) {
      if (number === undefined || distribution === undefined) return undefined;
      if (distribution === "focal" && number > 1)
        return `focal, but number ${number}. Write multifocal, or one entry for each.`;
      return number === 1 && many.includes(distribution)
        ? `${distribution}, but only one. Write focal, or correct the number.`
        : undefined;
    },
  },
];

/** What in a finding cannot stand beside its distribution. */
export const distributionContradictions: readonly CaseRule[] = rows.map(({ key, says, ...rule }) => ({
  ...rule,
  scope: "case",
  family: "description",
  check(one, report) {
    const all = findingsOf(one);
    for (const placed of all) {
      const text = says(placed, all);
      if (text !== undefined) report(`${formatPath(placed.path)}: ${text}`, [...placed.path, key]);
    }
  },
}));
