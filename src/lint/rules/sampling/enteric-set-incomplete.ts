import { isAmong, materialTitle, namedOrgans, type Sample, samplesOf } from "../../../record/index.ts";
import { timeWorth } from "../../../sampling/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, verified } from "../../rule.ts";
import { isGutInQuestion } from "../../shared/asked-of-laboratory.ts";

/** Faeces and content are no gut that anybody could have fixed. */
const isPieceOfGut = (from: string): boolean =>
  isAmong(from, ["intestine"]) && from !== "intestine.intestinal_content";

/** A piece of gut as it would be fixed at the opening. */
const pieceOf = (from: Sample["from"]): Sample => ({ id: from, from, into: "formalin", for: ["histology"] });

export const entericSetIncomplete: CaseRule = {
  id: "enteric-set-incomplete",
  scope: "case",
  family: "sampling",
  level: "warning",
  silent: "authority",
  summary: "The fixed set from a pig with diarrhoea includes jejunum, ileum and spiral colon.",
  protects: "Each agent has its own piece of gut: what was not fixed cannot be excluded.",
  lookAlike:
    "One pot with short pieces of all the gut: the stretches named under site count, and from: intestine counts for the whole set. Gut too old to fix, as of a pig found dead: accept it with that reason.",
  source: verified(
    "Animal Health Laboratory, University of Guelph; Animal pathology (guide for senders of samples; author and year not noted): segments of small and large intestine",
  ),
  bad: {
    case: "selection: {signs: [diarrhoea]}\ndeath: {at: 2026-04-20T09:35}\nopened: {at: 2026-04-20T09:38}\nsamples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-B, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:42}]",
  },
  good: {
    case: "selection: {signs: [diarrhoea]}\ndeath: {at: 2026-04-20T09:35}\nopened: {at: 2026-04-20T09:38}\nsamples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-B, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:42}, {id: 01-C, from: intestine.spiral_colon, into: formalin, for: [histology], at: 2026-04-20T09:43}]",
  },
  check(one, report) {
    if (one.record.samples === undefined) return;
    const samples = samplesOf(one);
    if (!isGutInQuestion(one) || !samples.some(({ sample }) => isPieceOfGut(sample.from))) return;
    if (one.record.selection?.basis === "comparison") return;
    const fixed = new Set(
      samples
        .filter(({ sample }) => sample.into === "formalin" && isAmong(sample.from, ["intestine"]))
        .flatMap(({ sample }) => [sample.from, ...namedOrgans(sample.site ?? "").map(({ id }) => id)]),
    );
    if (fixed.has("intestine")) return;
    const missing = (one.settings.samples.sets.get("post-weaning-scour")?.samples ?? [])
      .filter(({ from, into, least }) => least && into === "formalin" && !fixed.has(from))
      .map(({ from }) => from);
    // Of a pig that has been dead too long nothing can be read in gut that is fixed now.
    const isLost = missing.every((from) => timeWorth(one, pieceOf(from), "histology").worth === "doubtful");
    if (missing.length > 0 && !isLost)
      report(
        `samples: the pig had diarrhoea, and ${listing(missing.map(materialTitle))} ${missing.length === 1 ? "is" : "are"} not in formalin. Add several short, slit pieces of each; they may share one pot.`,
        ["samples"],
        "key",
      );
  },
};
