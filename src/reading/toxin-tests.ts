/** Tests for the toxin gene that count for the snouts of a visit, and why others do not. */
import type { Visit } from "../cases/index.ts";
import { sampleRules } from "../knowledge/index.ts";
import { materialTitle, resultsOf, takenSamples } from "../record/index.ts";
import { isToxinMaterial } from "../sampling/index.ts";
import { listing } from "../words/listing.ts";

/** A test as it is written in the visit. */
export interface WrittenTest {
  readonly test: string;
  readonly result: "positive" | "negative" | "pending";
  readonly from?: string;
  readonly at?: string;
}

export interface ToxinTest {
  readonly result: WrittenTest["result"];
  /** Why the result is not used, a clause; undefined when it is. */
  readonly unused: string | undefined;
}

/**
 * The tests for the toxin gene of a visit. A result is used when its day is written and not before that of the visit, and
 * when it comes from a nose, a concha or a tonsil, or from what was grown of them. A test that is pending has no result to
 * be used.
 * @param visited day of the visit, as 2026-03-14; undefined when it is not written
 */
export const toxinTests = (written: readonly WrittenTest[], visited: string | undefined): ToxinTest[] =>
  written
    .filter(({ test }) => test === "toxin-gene")
    .map((one) => ({
      result: one.result,
      unused: one.result === "pending" ? undefined : whyUnused(one, visited),
    }));

/** The same of results that stand beside the visit: each is of samples of its pigs. */
export function toxinResults(visit: Visit): ToxinTest[] {
  const taken = takenSamples(visit);
  return resultsOf(visit).flatMap(({ entry, samples, date }): ToxinTest[] => {
    const { agent, interpretation: result } = entry;
    if (agent !== toxigenic || (result !== "positive" && result !== "negative")) return [];
    const from = samples.flatMap((id) => taken.get(id)?.sample.from ?? []);
    const other = from.find((one) => !sampleRules.toxin_gene.from.includes(one));
    const reasons = [
      ...wrongDay(date, visit.record.date),
      ...(from.length === samples.length && from.length > 0 ? [] : ["no case of the visit has its sample"]),
      ...(other === undefined ? [] : wrongMaterial(materialTitle(other))),
    ];
    return [{ result, unused: reasons.length === 0 ? undefined : listing(reasons) }];
  });
}

const toxigenic = "toxigenic-pasteurella-multocida";

function whyUnused({ from, at }: WrittenTest, visited: string | undefined): string | undefined {
  const reasons = [...wrongDay(at, visited), ...wrongMaterial(from)];
  return reasons.length === 0 ? undefined : listing(reasons);
}

function wrongDay(at: string | undefined, visited: string | undefined): string[] {
  if (at === undefined) return ["the day of the result is not written (at)"];
  if (visited === undefined) return ["the visit has no date to hold it against"];
  return at < visited ? [`its result of ${at} is older than the visit of ${visited}`] : [];
}

function wrongMaterial(from: string | undefined): string[] {
  if (from === undefined) return ["it is not written what was sampled (from)"];
  return isToxinMaterial(from) === true
    ? []
    : [`it came from "${from}" and not from nasal or tonsil swabs or concha tissue`];
}
