/** `carcase samples plan`: what to take of each pig, in which order, and what to bring for it. */
import { openAlarmsOf } from "../alarms/index.ts";
import { type Archive, type Case, readCases } from "../cases/index.ts";
import { planCsv, planJson, planMarkdown, planText, type VisitPlan } from "../formats/samples/plan.ts";
import type { AgeClass } from "../knowledge/index.ts";
import {
  ageClassNamed,
  ageNames,
  ComplaintFault,
  pigsOfComplaint,
  plannedCases,
  samplePlan,
  signsNamed,
} from "../samples/index.ts";
import { listing } from "../words/listing.ts";
import type { CommonOptions } from "./options.ts";
import { whole } from "./parsers.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export interface SamplesPlanOptions extends CommonOptions {
  readonly complaint?: string;
  readonly ages?: string;
  readonly pigs?: string;
  readonly healthy?: string;
}

export function samplesPlan(run: Run<SamplesPlanOptions>): number {
  const { options, paths } = run;
  const written = run.format<(plans: readonly VisitPlan[]) => string>({
    text: (plans) => planText(plans, run.style, run.width),
    json: planJson,
    csv: planCsv,
    markdown: planMarkdown,
  });
  if (options.complaint === undefined) {
    for (const option of ["ages", "pigs", "healthy"] as const)
      if (options[option] !== undefined)
        throw new UsageError(`--${option} belongs to --complaint; the pigs of a visit stand in its files`);
    const archive = run.soundArchive(paths.length === 0 ? ["."] : paths);
    if (stopped(archive)) return 1;
    const plans = plansOf(archive);
    if (plans.length === 0 && !run.failed)
      run.say(
        'no pig here is sampled for its signs; name the folder of a visit, or write --complaint "cough in finishers"',
      );
    if (plans.length > 0 || options.format !== "text") run.write(written(plans));
    return run.end();
  }
  // An alarm of a visit that has begun stands for what is planned in it.
  if (paths.length > 0 && stopped(run.archive())) return 1;
  const told = complained(options.complaint);
  run.wasRead({ ...told, alarms: openAlarmsOf(told) });
  if (stopped(told)) return 1;
  run.write(written([planOfComplaint(run, options.complaint)]));
  return run.end();
}

/** The complaint as a record: what in it may be a notifiable disease alarms before anything is planned. */
function complained(history: string): Archive {
  const signs = signsNamed(history);
  const record = { format: 1, case: "complaint", ...(signs.length > 0 && { selection: { signs } }), history };
  return readCases(["-"], {
    input: { bytes: new TextEncoder().encode(JSON.stringify(record)), name: "complaint.yaml" },
  });
}

/** Whether an alarm is open: its notice was said, and nothing else is. */
const stopped = (archive: Archive): boolean => openAlarmsOf(archive).length > 0;

function plansOf({ cases, visits }: Archive): VisitPlan[] {
  const ofVisit = (of: readonly Case[], visit: string | null): VisitPlan[] => {
    const pigs = plannedCases(of);
    const [first] = of;
    if (first === undefined || pigs.length === 0) return [];
    const complaint = first.visit?.record.complaint ?? null;
    return [{ visit, complaint, plan: samplePlan(pigs, first.settings) }];
  };
  return [
    ...visits.flatMap((visit) => ofVisit(visit.cases, visit.id)),
    ...ofVisit(
      cases.filter(({ visit }) => visit === undefined),
      null,
    ),
  ];
}

function planOfComplaint(run: Run<SamplesPlanOptions>, text: string): VisitPlan {
  const { ages, pigs, healthy } = run.options;
  const { settings } = run.settings();
  try {
    const asked = pigsOfComplaint(
      {
        text,
        ages: ages === undefined ? [] : ages.split(",").map(ageOf),
        pigs: pigs === undefined ? undefined : whole("--pigs", pigs),
        healthy: healthy === undefined ? undefined : whole("--healthy", healthy, 0),
      },
      settings,
    );
    return { visit: null, complaint: text, plan: samplePlan(asked, settings) };
  } catch (error) {
    throw error instanceof ComplaintFault ? new UsageError(`--complaint: ${error.message}`) : error;
  }
}

function ageOf(text: string): AgeClass {
  const found = ageClassNamed(text);
  if (found === undefined)
    throw new UsageError(
      `--ages: "${text.trim()}" is no age; write 5 wk, 118 d, or ${listing(ageNames, "or")}`,
    );
  return found;
}
