import type { Case } from "../../../cases/index.ts";
import { organById, shippedSet } from "../../../knowledge/index.ts";
import { samplesOf } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";
import { abortedPig, fetuses } from "../../shared/aborted-litter.ts";

const two = [
  { litter: "S-1", number: 1 },
  { litter: "S-2", number: 1 },
];
const accepted = "accepted: [{rule: abortion-set-small, because: no more fetuses were kept}]";
const liver = "samples: [{id: ID-A, from: liver_pancreas.liver, into: chilled, for: [pcr, culture]}";

export const abortionWithoutPlacenta: VisitRule = {
  id: "abortion-without-placenta",
  scope: "visit",
  family: "sampling",
  level: "warning",
  silent: "authority",
  summary: "Samples from aborted fetuses include placenta.",
  protects:
    "The placenta keeps the lesion and the agent longest, and some agents leave neither in the fetus.",
  lookAlike:
    "The afterbirth was eaten or thrown away: write placental.placenta: {not_assessable: {because: absent, why: …}} in each fetus, and nothing is asked.",
  source: shippedSet("abortion").source,
  bad: placed(`${liver}]`),
  good: placed(`${liver}, {id: ID-B, from: placental.placenta, into: chilled, for: [pcr]}]`),
  check(visit, _reportVisit, reportCase) {
    if (!visit.complete) return;
    const aborted = visit.cases.filter((one) => abortedPig(one) && samplesOf(one).length > 0);
    const [first] = aborted;
    const placenta = (from: string): boolean => from === "placental" || from === "placental.placenta";
    const organ = organById("placental.placenta");
    if (first === undefined || organ === undefined) return;
    const none = (one: Case): boolean => ["not_examined", "not_assessable"].includes(one.organ(organ).status);
    if (aborted.every(none)) return;
    if (aborted.some((one) => samplesOf(one).some(({ sample }) => placenta(sample.from)))) return;
    reportCase(first)(
      "samples: fetuses were sampled at this visit, but no placenta. Add placenta, one piece fixed and one chilled; if none was kept, write placental.placenta: {not_assessable: {because: absent, why: …}} and ask the farm to keep it next time.",
      ["samples"],
      "key",
    );
  },
};

/** Two fetuses with samples of their own numbers. */
function placed(samples: string) {
  const { case: first, others = [], visit } = fetuses(two);
  const give = (text: string, number: string): string =>
    text.replace("\nsamples:\n", `\n${samples.replaceAll("ID", number)}\n`);
  return {
    case: give(first ?? "", "01"),
    others: others.map((text) => give(text, "02")),
    visit: `${visit}\n${accepted}`,
  };
}
