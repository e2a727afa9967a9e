import type { Case } from "../../../cases/index.ts";
import { organById } from "../../../knowledge/index.ts";
import { findingsOf, lungRegions, morphologicDiagnoses } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const diagnosisAgainstLobes: CaseRule = {
  id: "diagnosis-against-lobes",
  scope: "case",
  family: "diagnosis",
  silent: "never",
  level: "warning",
  summary: "A pneumonia is called caudodorsal or cranioventral in keeping with its lobes and findings.",
  protects:
    "The word decides which agents are looked for; the table of lobes beside it says the opposite, and one of the two goes into the report.",
  lookAlike:
    "A second pneumonia that no lobe was graded for: describe it as a finding of the lungs with its distribution or site, and the diagnosis may name it.",
  source: practice("meaning of the words; common practice of reporting"),
  bad: {
    case: 'respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 0, accessory: 10}, caudal_cranial_part: {left: 0, right: 0}}}\ndiagnosis: {morphologic: ["Lungs: pleuropneumonia, caudodorsal, acute, moderate"]}',
  },
  good: {
    case: 'respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 0, accessory: 10}, caudal_cranial_part: {left: 0, right: 0}}}\ndiagnosis: {morphologic: ["Lungs: bronchopneumonia, cranioventral, acute, moderate"]}',
  },
  check(one, report) {
    if (one.record.diagnosis?.morphologic === undefined) return;
    const regions = lungRegions(one);
    if (regions === undefined || (!regions.onlyCranioventral && !regions.onlyCaudal)) return;
    for (const { text, said, path } of morphologicDiagnoses(one)) {
      if (!/pneumon/i.test(said) || namesBoth(said)) continue;
      const lobes =
        caudal.test(said) && regions.onlyCranioventral && !isSeen(one, caudal)
          ? "both caudal lobes are 0"
          : cranial.test(said) && regions.onlyCaudal && !isSeen(one, cranial)
            ? "only the caudal lobes are above 0"
            : undefined;
      if (lobes !== undefined)
        report(
          `"${text}": in respiratory.lungs.consolidation ${lobes}, and no finding says otherwise. Correct the diagnosis or the lobes, or describe the lesion.`,
          path,
        );
    }
  },
};

const caudal = /\b(?:caudo-?dorsal|dorso-?caudal|diaphragmatic|caudal)/i;
const cranial = /\b(?:cranio-?ventral|antero-?ventral|apical|cranial)/i;

const namesBoth = (text: string): boolean => caudal.test(text) && cranial.test(text);

/** Whether a finding or a word of pleurisy or of a note puts something there, in lungs or pleura. */
const isSeen = (one: Case, place: RegExp): boolean =>
  findingsOf(one).some(
    ({ organ, finding: { process, distribution, site, note } }) =>
      chest.includes(organ.id) &&
      ([distribution, site, note].some((word) => place.test(word ?? "")) ||
        // A lesion of another kind without a place may be the one.
        (process !== "consolidation" && site === undefined && organ.system === "respiratory")),
  ) ||
  chest.some((id) => {
    const organ = organById(id);
    const entry = organ === undefined ? undefined : one.organ(organ).entry;
    return place.test(JSON.stringify([entry?.pleurisy, entry?.note]));
  });

const chest = ["respiratory.lungs", "respiratory.pleura", "serosa.pleural_space"];
