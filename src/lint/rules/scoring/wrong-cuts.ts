/** Cuts that spoil what they were to show: the snout in the wrong place or through the skin, the skull through the brain. */
import { organById } from "../../../knowledge/index.ts";
import { type CaseRule, practice, type RuleRow, verified } from "../../rule.ts";

interface WrongCut extends RuleRow {
  readonly organ: string;
  readonly key: string;
  /** The words for a wrong cut. */
  readonly wrong: readonly string[];
  says(word: string): string;
}

const rows: readonly WrongCut[] = [
  {
    id: "snout-section-rostral",
    level: "warning",
    summary: "The snout is sawn at or behind the first upper premolar.",
    protects:
      "One centimetre in front of the first premolar a normal snout scores as atrophic; such a score is not used.",
    lookAlike:
      "A short-nosed or young pig whose mouth ends further forward: count the upper premolars on the cut, and write section after the tooth and not after the mouth.",
    source: verified("Corrégé, Sallé, Monziols & Volant 2013, Journées de la Recherche Porcine"),
    bad: { case: "respiratory: {turbinates: {section: rostral-to-premolar-1}}" },
    good: { case: "respiratory: {turbinates: {section: premolar-2}}" },
    organ: "respiratory.turbinates",
    key: "section",
    wrong: ["rostral-to-premolar-1"],
    says: () =>
      "sawn in front of the first premolar, where normal conchae look atrophic. Saw again further back if you still have the head; otherwise this snout gets no score.",
  },
  {
    id: "snout-skin-sawn",
    level: "note",
    summary: "The skin of the snout is cut with a knife before the saw is set.",
    protects:
      "A saw that starts on skin slides, drags bristles through the nose and ends up in front of the premolar.",
    lookAlike:
      "A head that was scalded and scraped before it was sawn carries no bristles: accept the note, or leave skin_cut blank.",
    source: practice("common practice of snout sawing: knife before saw"),
    bad: { case: "respiratory: {turbinates: {skin_cut: sawn-through}}" },
    good: { case: "respiratory: {turbinates: {skin_cut: knife-first}}" },
    organ: "respiratory.turbinates",
    key: "skin_cut",
    wrong: ["sawn-through"],
    says: () =>
      "sawn through the skin. Next time cut round it with the knife at the corner of the mouth, and set the saw in that cut.",
  },
  {
    id: "skull-cut-wrong",
    level: "warning",
    summary:
      "The skull is opened with one cut across behind the eyes and one along each side to the condyles.",
    protects: "A cut through the eyes or lengthwise goes through the brain itself.",
    lookAlike:
      "A head split along the midline on the line: write the brain not_assessable: {because: damaged, why: split on the line}, and nothing more is said.",
    source: practice(
      "common practice of necropsy: the skull roof is lifted off without cutting into the brain",
    ),
    bad: { case: "nervous: {brain: {state: normal, skull_cut: through-the-eyes}}" },
    good: { case: "nervous: {brain: {state: normal, skull_cut: behind-the-eyes}}" },
    organ: "nervous.brain",
    key: "skull_cut",
    wrong: ["through-the-eyes", "split-lengthwise"],
    says: (word) =>
      `${word} cuts into the brain. Saw across one to two centimetres behind the outer corner of the eye, then from each end to the occipital condyle, and lift the roof off. If the brain was hit, write not_assessable: {because: damaged, why: …}.`,
  },
];

export const wrongCuts: readonly CaseRule[] = rows.map(({ organ: id, key, wrong, says, ...row }) => {
  const organ = organById(id);
  return {
    ...row,
    scope: "case",
    family: "scoring",
    check(one, report) {
      const state = organ === undefined ? undefined : one.organ(organ);
      const word = state?.entry?.[key];
      if (state === undefined || typeof word !== "string" || !wrong.includes(word)) return;
      // Whoever says that the brain was damaged knows it.
      if (id === "nervous.brain" && state.entry?.not_assessable !== undefined) return;
      report(`${id}.${key}: ${says(word)}`, [...state.path, key]);
    },
  };
});
