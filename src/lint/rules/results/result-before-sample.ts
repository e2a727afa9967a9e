import { isAfter, moment } from "../../../cases/index.ts";
import { isVisitDateDoubtful, placed, sampleAt, takenSamples } from "../../../record/index.ts";
import { practice, type ResultsRule } from "../../rule.ts";

export const resultBeforeSample: ResultsRule = {
  id: "result-before-sample",
  scope: "results",
  family: "results",
  level: "error",
  summary: "Samples are taken, received, tested and reported in this order.",
  protects:
    "A result from before its sample is of another pig, or of another year, and the case is closed on it.",
  lookAlike: "A preliminary report: date each entry by the day of its own result, and reported by the last.",
  source: practice("order of events; common practice"),
  bad: {
    results:
      "laboratory: {reported: 2025-04-27}\nentries: [{sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}]",
  },
  good: { results: "entries: [{sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}]" },
  check(results, visit, report) {
    const { received, reported } = results.record.laboratory ?? {};
    const [arrived, told] = [moment(received), moment(reported)];
    if (arrived !== undefined && told !== undefined && isAfter(arrived, told)) {
      report(
        `laboratory.reported: the report (${reported}) is dated before the parcel arrived (${received}). Correct one of the two days.`,
        ["laboratory", "reported"],
      );
      return;
    }
    if (isVisitDateDoubtful(visit)) return;
    const taken = takenSamples(visit);
    let isReportTold = false;
    for (const { entry, samples, date, index, path } of placed(results)) {
      const came = moment(date);
      if (came === undefined) continue;
      const late = samples
        .map((id) => taken.get(id))
        .find((of) => {
          const at =
            of === undefined ? undefined : (sampleAt(of.one, of.sample) ?? moment(visit.record.date));
          return at !== undefined && isAfter(at, came);
        });
      if (late === undefined) continue;
      const when = late.sample.at ?? visit.record.date;
      // One wrong day of the report is told once.
      if (entry.date === undefined) {
        if (!isReportTold)
          report(
            `laboratory.reported: the report (${reported}) is dated before sample ${late.sample.id} was taken (${when}). Correct the day.`,
            ["laboratory", "reported"],
          );
        isReportTold = true;
      } else
        report(
          `entries[${index}].date: the result (${date}) is dated before sample ${late.sample.id} was taken (${when}). Correct the day or the sample.`,
          [...path, "date"],
        );
    }
  },
};
