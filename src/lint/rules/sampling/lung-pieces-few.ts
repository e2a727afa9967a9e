import { isFixed, samplesOf } from "../../../record/index.ts";
import { count } from "../../../words/listing.ts";
import { type CaseRule, fromMemory } from "../../rule.ts";

export const lungPiecesFew: CaseRule = {
  id: "lung-pieces-few",
  scope: "case",
  family: "sampling",
  level: "note",
  silent: "authority",
  summary: "From a coughing pig four or more pieces of lung are fixed, or the site says which pieces were.",
  protects:
    "Lobes differ: one piece shows the end stage, another the agent; each should hold the edge of the lesion and sound tissue.",
  lookAlike:
    "Several pieces in one pot: say so under site (four lobes, left apical and cardiac), in any words, and nothing is asked.",
  source: fromMemory(
    "from memory: four pieces or more (cranial, middle, caudal, both sides, edge of lesion)",
  ),
  bad: {
    case: "samples: [{id: 01-A, from: respiratory.lungs, into: formalin, for: [histology]}]",
  },
  good: {
    case: 'samples: [{id: 01-A, from: respiratory.lungs, site: "edge of lesion: left cranial, left middle, right middle, right caudal lobe", into: formalin, for: [histology]}]',
  },
  check(one, report) {
    if (
      one.record.samples === undefined ||
      one.record.selection?.basis === "comparison" ||
      !one.signs.some((sign) => sign === "cough" || sign === "dyspnoea")
    )
      return;
    const fixed = samplesOf(one).filter(
      ({ sample }) => sample.from === "respiratory.lungs" && isFixed(sample),
    );
    const [first] = fixed;
    if (first === undefined) return;
    // How many pieces a site in words stands for, nobody can count.
    if (fixed.some(({ sample }) => sample.site !== undefined)) return;
    const { pieces: wanted = 0 } =
      one.settings.samples.sets
        .get("respiratory")
        ?.samples.find(({ from, into }) => from === "respiratory.lungs" && into === "formalin") ?? {};
    if (fixed.length < wanted)
      report(
        `samples[${first.index}].site: ${count(fixed.length, "sample")} of lung ${fixed.length === 1 ? "was" : "were"} fixed from a pig with cough or dyspnoea, and no site says which pieces. Take ${wanted} or more, from the edge of the lesion, and name the lobes: site: left cranial, left middle, right middle, right caudal lobe. One pot will do.`,
        ["samples", first.index, "site"],
      );
  },
};
