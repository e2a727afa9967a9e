/** The report of a pig, a visit or a farm, gathered from what every other command tells. */
import type { Archive, Case, VisitContext } from "../cases/index.ts";
import { type Compared, type CompareReport, compareCases } from "../compare/index.ts";
import { type Estimate, type HerdReport, herdEstimates } from "../herd/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { scaleNamed } from "../score/index.ts";
import { grouped } from "../words/grouped.ts";
import { answerOf } from "./answer.ts";
import { fitsOf } from "./fits.ts";
import { type Digests, pigOf } from "./pig.ts";
import type { ReportResult, ReportScale, ReportShare, Said } from "./result.ts";
import { visitOf } from "./visit.ts";

interface Asked {
  /** Of the program, `1.2.3`. */
  readonly version: string;
  /** The files that were read, with their digests. */
  readonly files: ReportResult["files"];
  /** Of the photographs that were read. */
  readonly digests?: Digests;
  /** What it is of. Default: a pig, where there is one; a farm, where there are several visits. */
  readonly of?: ReportResult["of"];
}

/** A report is of one pig, of one visit or of one farm, as many cases as were asked for. */
export function makeReport(
  archive: Archive,
  { version, files, digests = new Map(), of: asked }: Asked,
): ReportResult {
  const cases = inOrder(archive.cases);
  const visits = visitsOf(cases);
  const herd = herdEstimates(cases, { by: ["visit"] });
  const scales = scalesTold(cases, herd);
  const pigs = cases.map((one) => pigOf(one, scales, digests));
  const told = visits.map((visit) =>
    visitOf(
      visit,
      cases.filter((one) => one.visit === visit),
    ),
  );
  const last = told.at(-1);
  const compared = visits.length > 1 ? lastCompared(compareCases(archive, { between: "visits" })) : undefined;
  const [first] = cases;
  const of = asked ?? (cases.length === 1 ? "case" : visits.length > 1 ? "farm" : "visit");
  const farm = first?.farm?.record.name ?? first?.farm?.id ?? null;
  const named = farm ?? last?.id ?? first?.id ?? "";
  const scaled = scales.map(scaleOf);
  return {
    made_by: version,
    of,
    title: titleOf(of, of === "case" ? (first?.id ?? "") : named, last?.date ?? null),
    farm,
    by: visits.at(-1)?.record.veterinarian ?? first?.record.examiner ?? null,
    day: last?.date ?? null,
    answer: answerOf({
      visit: last,
      pigs: pigs.filter(({ visit }) => visit === (last?.id ?? null)),
      estimates: toldFirst(herd).filter(({ stratum }) => stratum.visit === (last?.id ?? null)),
      scales: scaled,
      compared,
    }),
    visits: told,
    pigs,
    shares: toldFirst(herd).map(shareOf),
    scales: scaled,
    fits: fitsOfReport(of, archive, visits.at(-1), first),
    compared:
      compared === undefined
        ? null
        : [
            compared.answer,
            ...compared.comparisons.filter(({ comparable }) => comparable).map(({ sentence }) => sentence),
          ],
    files,
  };
}

/** @param name of the farm; where none is recorded, of the visit or the pig */
function titleOf(of: ReportResult["of"], name: string, day: string | null): Said {
  if (of === "case") return { say: "title_case", values: { pig: name } };
  if (of === "farm" || day === null) return { say: "title_farm", values: { farm: name } };
  return { say: "title_visit", values: { farm: name, day } };
}

/** Of a pig its own; else of the last visit with all its pigs. */
function fitsOfReport(
  of: ReportResult["of"],
  { visits }: Archive,
  last: VisitContext | undefined,
  first: Case | undefined,
): ReportResult["fits"] {
  const subject = of === "case" ? first : visits.find(({ file }) => file === last?.file);
  return subject === undefined ? [] : fitsOf(subject);
}

/** By the day of the visit, then as they were read. */
const inOrder = (cases: readonly Case[]): readonly Case[] =>
  cases.toSorted((a, b) => (a.visit?.record.date ?? "").localeCompare(b.visit?.record.date ?? ""));

const visitsOf = (cases: readonly Case[]): readonly VisitContext[] => [
  ...new Set(cases.flatMap(({ visit }) => visit ?? [])),
];

/** In the order in which the herd table tells them. */
function toldFirst({ told_first: { indicators }, estimates }: HerdReport): Estimate[] {
  const byIndicator = grouped(estimates, ({ indicator }) => indicator);
  return indicators.flatMap((id) => byIndicator.get(id) ?? []);
}

const scalesTold = (cases: readonly Case[], { told_first: { scales } }: HerdReport): Scale[] =>
  scales.flatMap((id) => cases.map((one) => scaleNamed(one, id)).find((scale) => scale !== undefined) ?? []);

function scaleOf(scale: Scale): ReportScale {
  const [least = 0, most = 0] = scale.range;
  return {
    scale: scale.id,
    title: scale.title,
    organ: scale.organ,
    least,
    most,
    grades:
      scale.whole === true && most - least <= 10
        ? Array.from({ length: most - least + 1 }, (_, index) => least + index)
        : [],
    source: scale.source.cite,
    from_memory: scale.source.confidence === "from-memory",
  };
}

const shareOf = ({
  stratum,
  indicator,
  title,
  basis,
  affected,
  examined,
  proportion,
  lower,
  upper,
  level,
  reach,
  wording,
  source,
  confidence,
  scale,
}: Estimate): ReportShare => ({
  visit: stratum.visit ?? null,
  indicator,
  title,
  basis,
  affected,
  examined,
  proportion: proportion ?? (examined > 0 ? affected / examined : null),
  limits: lower === null || upper === null ? null : [lower, upper],
  level,
  stands: reach === "prevalence",
  wording,
  source,
  from_memory: confidence === "from-memory" || scale?.confidence === "from-memory",
});

/** The last two visits of pigs that stand for their groups, else of any. */
function lastCompared({ blocks }: CompareReport): Compared | undefined {
  return (
    blocks.find(({ prevalence, comparable }) => prevalence && comparable) ??
    blocks.find(({ comparable }) => comparable) ??
    blocks[0]
  );
}
