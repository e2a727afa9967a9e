import { placed } from "../../../record/index.ts";
import { practice, type ResultsRule } from "../../rule.ts";
import { resultName } from "../../shared/result-words.ts";

export const titreWithoutPair: ResultsRule = {
  id: "titre-without-pair",
  scope: "results",
  family: "results",
  level: "note",
  summary:
    "A titre that is read as positive has its pair: the same pig two to three weeks later, in the same run.",
  protects:
    "One titre says that the pig, or its dam, or a vaccine met the agent at some time; only a rise says that it was now.",
  lookAlike:
    "Antibody in a fetus that drank no colostrum, or to a disease that is neither vaccinated nor endemic, says enough alone: note it at the entry.",
  source: practice("paired serology; common practice, interval from memory"),
  bad: {
    results:
      'entries: [{sample: 01-B, test: serology, agent: influenza-a, titre: "1:160", interpretation: positive}]',
    case: "samples: [{id: 01-A, from: respiratory.lungs, site: 'left cranial, left middle, right cranial, right middle lobe', into: formalin, for: [histology], at: 2026-04-20T10:05}, {id: 01-B, from: blood, into: plain-tube, for: [serology], at: 2026-04-20T10:06}, {id: 01-C, from: respiratory.lungs, into: chilled, for: [pcr, culture], at: 2026-04-20T10:06}]",
  },
  good: {
    results:
      'entries: [{sample: 01-B, test: serology, agent: influenza-a, titre: "1:160", interpretation: positive, note: "one titre of a pig that is dead: vaccinated two weeks ago"}]',
    case: "samples: [{id: 01-A, from: respiratory.lungs, site: 'left cranial, left middle, right cranial, right middle lobe', into: formalin, for: [histology], at: 2026-04-20T10:05}, {id: 01-B, from: blood, into: plain-tube, for: [serology], at: 2026-04-20T10:06}, {id: 01-C, from: respiratory.lungs, into: chilled, for: [pcr, culture], at: 2026-04-20T10:06}]",
  },
  check(results, _visit, report) {
    const all = placed(results);
    for (const result of all) {
      const { entry, index, path } = result;
      if (entry.titre === undefined) continue;
      if (entry.pair === undefined) {
        const isPaired = all.some(
          (other) =>
            other.entry.agent === entry.agent &&
            entry.sample !== undefined &&
            Object.values(other.entry.pair ?? {}).includes(entry.sample),
        );
        if (isPaired || entry.interpretation !== "positive" || entry.note !== undefined) continue;
        report(
          `entries[${index}].titre: ${entry.titre} of ${resultName(result)} stands alone. Write pair: {first: .., second: ..} with the two samples, or say in note: why one is enough.`,
          [...path, "titre"],
        );
        continue;
      }
      const { first, second } = entry.pair;
      const lacking = [first, second].find(
        (id) =>
          !all.some(
            (other) =>
              other.entry.agent === entry.agent &&
              other.entry.titre !== undefined &&
              other.samples.includes(id),
          ),
      );
      if (lacking !== undefined)
        report(
          `entries[${index}].pair: there is no titre of ${lacking} for the same agent in this file. Write it as an entry of its own, or correct the number.`,
          [...path, "pair"],
        );
    }
  },
};
