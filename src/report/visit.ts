/** What a report says of a visit, as its file says it. */
import type { Case, VisitContext } from "../cases/index.ts";
import { questionText } from "../cases/index.ts";
import { basisOf, reachOf } from "../herd/index.ts";
import { resultsOf } from "../record/index.ts";
import { grouped } from "../words/grouped.ts";
import type { ReportVisit } from "./result.ts";

export function visitOf(visit: VisitContext, cases: readonly Case[]): ReportVisit {
  const {
    date,
    complaint,
    groups = {},
    treatments = [],
    vaccinations = [],
    changes = [],
    pigs,
  } = visit.record;
  return {
    id: visit.id,
    date: date ?? null,
    pigs: cases.length,
    complaint: complaint ?? null,
    question: questionText(visit.record).text ?? null,
    chosen: [...grouped(cases, basisOf)].map(([basis, some]) => ({
      basis,
      pigs: some.length,
      stands: reachOf(basis).prevalence,
    })),
    chosen_note: pigs?.drawn ?? null,
    groups: Object.entries(groups).map(([name, { at_risk, affected, dead, onset }]) => ({
      name,
      at_risk: at_risk ?? null,
      affected: affected ?? null,
      dead: dead ?? null,
      onset: onset ?? null,
    })),
    treatments: treatments.map((one) =>
      typeof one === "string"
        ? { words: one, from: null, to: null }
        : {
            words: [one.with, one.group, one.route, one.for].filter((word) => word !== undefined).join(", "),
            from: one.from ?? null,
            to: one.to ?? null,
          },
    ),
    reported: [...grouped(resultsOf(visit), ({ date }) => date ?? "")]
      .filter(([day]) => day !== "")
      .map(([day, some]) => ({ day, results: some.length })),
    vaccinations,
    changes,
    recommendations: (visit.record.recommendations ?? []).map((one) => {
      const { do: what, who, until, because } = typeof one === "string" ? { do: one } : one;
      return { what, who: who ?? null, until: until ?? null, because: because ?? null };
    }),
  };
}
