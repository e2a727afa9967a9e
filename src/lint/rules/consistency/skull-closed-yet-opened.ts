import { type Case, formatPath, type OrganState } from "../../../cases/index.ts";
import { interpretationWords, organById, type PlacedOrgan } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import { isTissueSample, samplesOf, soundStepAt } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

const [brain, meninges] = ["nervous.brain", "nervous.meninges"].map(organById);

export const skullClosedYetOpened: CaseRule = {
  id: "skull-closed-yet-opened",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "Where the skull was left closed, no brain was taken, and neither meninges nor brain were seen.",
  protects:
    "Normal meninges in a closed skull rule out meningitis without anybody having looked; a brain that was taken out and not described is lost.",
  lookAlike:
    "Meninges seen only at the foramen magnum: not_examined with a note. A brain sent in its head is taken: left-in-skull, and passed.",
  source: practice("the meninges are seen when the skull is open; common practice"),
  bad: {
    case: "nervous: {meninges: normal, brain: {not_examined: skull left closed}}",
  },
  good: {
    case: "nervous: {meninges: {not_examined: skull left closed}, brain: {not_examined: skull left closed}}",
  },
  check(one, report) {
    if (brain === undefined || meninges === undefined) return;
    if (one.organ(brain).status !== "not_examined" && one.organ(meninges).status !== "not_examined") return;
    const inside = [brain, meninges].map((organ) => ({ organ, state: one.organ(organ) }));
    const closed = inside.find(({ state }) => isLeftClosed(state));
    // A brain in pieces is the matter of brain-in-pieces.
    if (closed === undefined || one.organ(brain).entry?.taken === "pieces") return;
    const opened = openedBy(one);
    if (opened !== undefined)
      report(
        `${formatPath(closed.state.path)}: not examined (${closed.state.reason}), yet ${opened}. Write what ${nameOf(closed.organ)} looked like, or take the other entry out.`,
        closed.state.path,
      );
    if (opened !== undefined || isBrainSampled(one)) return;
    const seen = inside.find(({ state }) => state.status === "normal" || state.status === "recorded");
    if (seen !== undefined)
      report(
        `${formatPath(seen.state.path)}: ${seen.state.status === "normal" ? "normal" : "described"}, yet ${nameOf(closed.organ)} ${closed.organ === brain ? "was" : "were"} not examined (${closed.state.reason}). Write not_examined here as well; what was seen at the foramen magnum goes into a note.`,
        seen.state.path,
      );
  },
};

const nameOf = ({ definition }: PlacedOrgan): string => `the ${definition.title.toLowerCase()}`;

const isLeftClosed = ({ status, reason }: OrganState): boolean =>
  status === "not_examined" && wordIn(reason, interpretationWords.skull_closed) !== undefined;

/** What in the record says that the skull was opened. */
function openedBy(one: Case): string | undefined {
  const { taken, skull_cut: cut } = (brain === undefined ? undefined : one.organ(brain).entry) ?? {};
  if (isBrainSampled(one)) return undefined;
  if (soundStepAt(one, "brain_out") !== undefined)
    return `steps.brain_out says that the brain was out (${one.record.steps?.brain_out})`;
  if (taken === "whole" || taken === "halved") return `the brain was taken ${taken}`;
  return cut === undefined ? undefined : `the skull was cut (${cut})`;
}

/** Then sample-organ-not-examined asks for the look of it. */
const isBrainSampled = (one: Case): boolean =>
  samplesOf(one).some(({ sample }) => sample.from === "nervous.brain" && isTissueSample(sample));
