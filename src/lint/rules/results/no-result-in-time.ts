import { daysOpen, isOpen, requestsOf } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const noResultInTime: VisitRule = {
  id: "no-result-in-time",
  scope: "visit",
  family: "results",
  level: "note",
  silent: "authority",
  summary:
    "Every test that was asked of a sample has a result within two weeks, or within the days of the settings.",
  protects: "A parcel that never arrived is asked after while there is still frozen material to send again.",
  lookAlike:
    "Visits without any file of results are passed, because their practice keeps results elsewhere; results_within in the settings asks them as well. What is only kept is for: [archive].",
  source: practice("most routine tests are back within two weeks; common practice"),
  bad: {
    today: "2026-05-20",
    results:
      "entries: [{sample: 01-A, test: histology, text: cuffs around bronchi}, {sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}]",
  },
  good: {
    today: "2026-05-20",
    results:
      "entries: [{sample: 01-A, test: histology, text: cuffs around bronchi}, {sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}, {sample: 01-B, test: culture, interpretation: negative}]",
  },
  check(visit, _reportVisit, reportCase, today) {
    const { resultsWithin } = visit.settings;
    if (visit.results.length === 0 && resultsWithin === undefined) return;
    for (const request of requestsOf(visit)) {
      if (!isOpen(request)) continue;
      const day = today();
      const days = day === undefined ? undefined : daysOpen(request, day);
      if (days === undefined || days <= (resultsWithin ?? usualDays)) continue;
      const { one, sample, index, test } = request;
      reportCase(one)(
        `samples[${index}].for: ${test} of ${sample.id} has no result after ${days} days. Ask the laboratory; write into results.yaml what came, or that it is not-testable.`,
        ["samples", index, "for", sample.for?.indexOf(test) ?? 0],
      );
    }
  },
};

/** Days; common practice. */
const usualDays = 14;
