/** `carcase compare`: did it change between visits, does it differ between groups, which farm stands out? */
import type { Archive } from "../cases/index.ts";
import {
  type Between,
  type CompareReport,
  clusterNames,
  compareCases,
  compareFarms,
  type Factor,
  type FarmsReport,
  facetNames,
  type Where,
} from "../compare/index.ts";
import { compareCsv } from "../formats/compare/csv.ts";
import { compareMarkdown, compareText } from "../formats/compare/document.ts";
import { farmsCsv, farmsMarkdown, farmsText } from "../formats/compare/farms.ts";
import { compareJson } from "../formats/compare/json.ts";
import { comparability } from "../knowledge/index.ts";
import type { CommonOptions } from "./options.ts";
import { asUsage, confidence, ids, manyOf, oneOf, whole } from "./parsers.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export interface CompareOptions extends CommonOptions {
  readonly between?: string;
  readonly where?: readonly string[];
  readonly indicator?: string;
  readonly scale?: string;
  readonly level?: string;
  readonly evenIf?: string;
  readonly cluster?: string;
  readonly seed?: string;
}

/** Exit code 0 also when a comparison was refused: that is an answer. */
export async function compare(run: Run<CompareOptions>): Promise<number> {
  const quiet = run.options.quiet === true;
  const written = run.format<(report: CompareReport | FarmsReport) => string>({
    text: (report) =>
      isOfFarms(report) ? farmsText(report, run.style, quiet) : compareText(report, run.style, quiet),
    json: compareJson,
    csv: (report) => (isOfFarms(report) ? farmsCsv(report) : compareCsv(report)),
    markdown: (report) => (isOfFarms(report) ? farmsMarkdown(report) : compareMarkdown(report)),
  });
  const asked = askedOf(run.options);
  const archive = await run.countable();
  if (archive.cases.length > 0 || !run.failed)
    run.write(written(asUsage("compare", () => reportOf(archive, asked))));
  return run.end();
}

const isOfFarms = (report: CompareReport | FarmsReport): report is FarmsReport => report.between === "farms";

function reportOf(
  archive: Archive,
  { between, ...asked }: ReturnType<typeof askedOf>,
): CompareReport | FarmsReport {
  if (between !== "farms")
    return compareCases(archive, { ...asked, ...(between !== undefined && { between }) });
  if (asked.scales !== undefined)
    throw new RangeError(
      "farms are ranked by shares; name an indicator, such as --indicator snout-grade-2-up",
    );
  return compareFarms(archive, asked);
}

export const kinds: readonly (Between | "farms")[] = ["visits", "groups", "ill", "treatment", "farms"];
export const factors = Object.keys(comparability.factors) as Factor[];

const askedOf = ({ between, where, level, evenIf, cluster, indicator, scale, seed }: CompareOptions) => ({
  ...(between !== undefined && { between: oneOf("--between", between, kinds, "comparison") }),
  where: whereOf(where ?? []),
  ...confidence(level),
  ...(evenIf !== undefined && { evenIf: manyOf("--even-if", evenIf, factors) }),
  ...(cluster !== undefined && { cluster: oneOf("--cluster", cluster, clusterNames, "cluster") }),
  ...(seed !== undefined && { seed: whole("--seed", seed, 0, 4_294_967_295) }),
  ...ids("indicators", "--indicator", indicator),
  ...ids("scales", "--scale", scale),
});

/** `group=nursery-1` and `group=nursery-2` keep pigs of either; another facet narrows further. */
function whereOf(texts: readonly string[]): Where {
  const where: Partial<Record<(typeof facetNames)[number], string[]>> = {};
  for (const text of texts) {
    const [, name, value] = /^([^=]+)=(.+)$/.exec(text) ?? [];
    if (name === undefined || value === undefined)
      throw new UsageError(
        `--where: "${text}" does not fit; write facet=value, such as --where group=nursery-2`,
      );
    const facet = oneOf("--where", name, facetNames, "part");
    where[facet] = [...(where[facet] ?? []), value.trim()];
  }
  return where;
}
