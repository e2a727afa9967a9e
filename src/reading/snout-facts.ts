/** What a visit holds of what the reading asks: snouts, jaws, air, and tests for the toxin gene. */
import type { Case, Visit } from "../cases/index.ts";
import { organById, snoutReadingRules } from "../knowledge/index.ts";
import { type Conchae, conchae } from "../record/index.ts";
import { scaleNamed, scoreCase } from "../score/index.ts";
import { type ToxinTest, toxinResults, toxinTests } from "./toxin-tests.ts";

/** One pig whose snout was examined. */
export interface Snout {
  /** Grade on the scale whose mean is told; undefined without one. */
  readonly grade: number | undefined;
  /** Whether any concha or grade shows loss. */
  readonly loss: boolean;
  /** Signs of severe loss of the conchae, in words; none where there is none. */
  readonly severe: readonly string[];
  /** The same of signs seen on the outside, such as a shortened upper jaw. */
  readonly outside: readonly string[];
  readonly ageDays: number | undefined;
  readonly slaughtered: boolean;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
}

export interface SnoutFacts {
  readonly snouts: readonly Snout[];
  /** Highest reading of the visit in ppm; undefined when none was read. */
  readonly ammonia: number | undefined;
  /** Highest reading of total dust in mg/m3. */
  readonly dust: number | undefined;
  /** Results of tests for the toxin gene. */
  readonly tests: readonly ToxinTest[];
}

/** The facts of a visit; cases whose snout was not examined, or was sawn too far in front, are not among them. */
export function snoutFacts(visit: Visit, cases: readonly Case[]): SnoutFacts {
  const { record } = visit;
  const highest = (key: "ammonia" | "dust"): number | undefined => {
    const readings = (record.environment ?? []).flatMap((one) => leadingNumber(one[key]) ?? []);
    return readings.length === 0 ? undefined : Math.max(...readings);
  };
  return {
    snouts: cases.flatMap((one) => snoutOf(one) ?? []),
    ammonia: highest("ammonia"),
    dust: highest("dust"),
    tests: [...toxinTests(record.tests ?? [], record.date), ...toxinResults(visit)],
  };
}

/** Whether a snout has any sign of severe loss. */
export const hasSigns = ({ severe, outside }: Snout): boolean => severe.length > 0 || outside.length > 0;

/** 28 of `28 ppm`; the schema has checked the unit. */
const leadingNumber = (text: string | undefined): number | undefined =>
  text === undefined ? undefined : Number.parseFloat(text);

const tooFarInFront = "rostral-to-premolar-1";

function snoutOf(one: Case): Snout | undefined {
  const organ = organById("respiratory.turbinates");
  const state = organ && one.organ(organ);
  if (state === undefined || state.bySystem || (state.status !== "normal" && state.status !== "recorded"))
    return undefined;
  const recorded = conchae(one);
  if (recorded?.section === tooFarInFront) return undefined;
  const judged = [...Object.values(recorded?.grades ?? {}), ...(recorded?.losses ?? [])];
  const wasted = state.findings.some(({ finding }) => finding.process === "atrophy");
  // Measured or sawn, but nobody said how the conchae look: blank is never normal.
  if (judged.length === 0 && !wasted && state.status !== "normal") return undefined;
  return {
    grade: scored(one, snoutReadingRules.scale),
    loss: wasted || judged.some((value) => value > 0),
    severe: [...scoredSigns(one, false), ...lostConcha(recorded)],
    outside: scoredSigns(one, true),
    ageDays: one.ageDays,
    slaughtered: one.record.death?.manner === "slaughtered",
    basis: one.record.selection?.basis ?? null,
  };
}

/** Words of the scores that reach their limit; those read on the outside, or those of the conchae. */
const scoredSigns = (one: Case, fromOutside: boolean): string[] =>
  snoutReadingRules.severe.scores
    .filter(({ outside = false }) => outside === fromOutside)
    .filter(({ scale, at_least = Number.NEGATIVE_INFINITY, above = Number.NEGATIVE_INFINITY }) => {
      const value = scored(one, scale);
      return value !== undefined && value >= at_least && value > above;
    })
    .map(({ words }) => words);

function lostConcha(recorded: Conchae | undefined): string[] {
  const { ventral_concha: ventral } = snoutReadingRules.severe;
  const losses = [recorded?.left.ventral, recorded?.right.ventral];
  return losses.some((loss) => loss !== undefined && loss >= ventral.at_least) ? [ventral.words] : [];
}

function scored(one: Case, id: string): number | undefined {
  const scale = scaleNamed(one, id);
  return scale === undefined ? undefined : (scoreCase(one, scale).value ?? undefined);
}
