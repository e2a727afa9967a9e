import { formatPath, type Path } from "../../../cases/index.ts";
import { findingsOf, namedSide, samplesOf, sideInPath } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const sideContradicted: CaseRule = {
  id: "side-contradicted",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "The side of a finding or sample is the one that its site names, and that it is recorded under.",
  protects: "The laboratory looks for the lesion in the wrong half, and the scale grades the other lobe.",
  lookAlike: "A side of both beside a site that names one more exactly is read as both.",
  source: practice("meaning of the words"),
  bad: {
    case: "external: {eyes: [{process: discharge, side: right, site: left eye, volume: 1 ml, exudate: serous}]}",
  },
  good: {
    case: "external: {eyes: [{process: discharge, side: left, site: left eye, volume: 1 ml, exudate: serous}]}",
  },
  check(one, report) {
    const look = (side: string | undefined, site: string | undefined, path: Path): void => {
      if (side === undefined) return;
      const at = [...path, "side"];
      const under = sideInPath(path);
      const named = namedSide(site);
      if (under !== undefined && side !== under)
        report(`${formatPath(at)}: ${side}, but recorded under ${under}. Correct one of them.`, at);
      else if (side !== "both" && named !== undefined && named !== side)
        report(`${formatPath(at)}: ${side}, but the site is ${site}. Correct one of them.`, at);
    };
    for (const { finding, path } of findingsOf(one)) look(finding.side, finding.site, path);
    for (const { sample, index } of samplesOf(one)) look(sample.side, sample.site, ["samples", index]);
  },
};
