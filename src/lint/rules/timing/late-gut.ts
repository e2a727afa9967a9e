/** Gut for histology that was fixed late: what its villi are still worth. */
import { autolysis } from "../../../knowledge/index.ts";
import { lateGutSamples, lateness } from "../../../sampling/index.ts";
import type { CaseRule } from "../../rule.ts";

interface Row extends Omit<CaseRule, "scope" | "family" | "check"> {
  readonly worth: "reduced" | "doubtful";
  /** What follows, and what to do. */
  readonly advice: string;
}

const source = autolysis.kinds["gut-histology"]?.source ?? autolysis.source;

const rows: readonly Row[] = [
  {
    id: "gut-histology-late",
    level: "warning",
    summary: "Gut for histology is fixed within the limit for its temperature.",
    protects:
      "Villus tips slough after 20 to 30 minutes: attaching bacteria, coccidia and villous atrophy can no longer be seen.",
    lookAlike:
      "Gut with thickened or proliferative wall is read in its depth and has the limits of other organs; so has that of a fetus.",
    source,
    bad: {
      case: "samples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:55}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:40}]",
    },
    worth: "reduced",
    advice: "read its villi with care. From the next pig cut out closed pieces and fix them first.",
  },
  {
    id: "gut-histology-lost",
    level: "error",
    summary: "Histology of gut is not asked of a pig that has been dead for hours.",
    protects:
      "After two hours, sooner in the heat, the upper half of the villi has no structure; a villus score of such gut is invented.",
    lookAlike:
      "Gut of a pig found dead, fixed for its deep wall or for ulcers alone: describe that lesion (thickening), or accept the finding with the question.",
    source,
    bad: {
      case: "samples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T12:10}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: intestine.jejunum, into: chilled, for: [pcr], at: 2026-04-20T12:10}]",
    },
    worth: "doubtful",
    advice:
      "its villi cannot be read. Keep it for the deep wall, ask for PCR or culture of a chilled piece, and kill a pig for histology.",
  },
];

export const lateGut: readonly CaseRule[] = rows.map(({ worth, advice, ...text }) => ({
  ...text,
  scope: "case",
  family: "timing",
  trustsTimes: true,
  check(one, report) {
    for (const found of lateGutSamples(one, [worth]))
      report(
        `samples[${found.index}].for: ${`gut ${found.sample.id}`.trim()} was fixed ${lateness(one, found)}: ${advice}`,
        ["samples", found.index, "for"],
      );
  },
}));
