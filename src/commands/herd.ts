/** `carcase herd`: how common and how bad, by visit, group and selection basis, with intervals? */
import type { Archive } from "../cases/index.ts";
import { herdCsv } from "../formats/herd/csv.ts";
import { herdMarkdown, herdText } from "../formats/herd/document.ts";
import { herdJson } from "../formats/herd/json.ts";
import { herdPlot } from "../formats/herd/plot.ts";
import {
  clusterKinds,
  type Dimension,
  dimensions,
  type HerdReport,
  herdEstimates,
  herdIntervals,
  type RightCount,
  type TestAccuracy,
} from "../herd/index.ts";
import { snoutReading } from "../reading/index.ts";
import { checkHerdParts, herdMark, knownOf } from "./merge-herd.ts";
import type { CommonOptions } from "./options.ts";
import { asUsage, confidence, ids, manyOf, oneOf, share, whole } from "./parsers.ts";
import type { Run } from "./run.ts";
import { partJson, shardOf } from "./shard.ts";
import { UsageError } from "./usage-error.ts";

export interface HerdOptions extends CommonOptions {
  readonly by?: string;
  readonly level?: string;
  readonly indicator?: string;
  readonly scale?: string;
  readonly interval?: string;
  readonly finite?: true;
  readonly cluster?: string;
  readonly combine?: true;
  readonly sensitivity?: string;
  readonly specificity?: string;
  readonly bootstrap?: true;
  readonly seed?: string;
  readonly plot?: true;
  readonly all?: true;
  readonly shard?: string;
}

export async function herd(run: Run<HerdOptions>): Promise<number> {
  const { format, plot, quiet, bootstrap, sensitivity } = run.options;
  const look = {
    // What a bootstrap or a test that errs makes of the numbers stands in their tables.
    all: run.options.all === true || bootstrap === true || sensitivity !== undefined,
    quiet: quiet === true,
  };
  const written = run.format<(report: HerdReport, archive: Archive) => string>({
    text: (report, archive) =>
      plot === true
        ? herdPlot(report, run.style)
        : herdText(report, run.style, { ...look, width: run.width, snouts: snoutReading(archive) }),
    json: (report, archive) => herdJson(report, snoutReading(archive)),
    csv: herdCsv,
    markdown: (report, archive) => herdMarkdown(report, { ...look, snouts: snoutReading(archive) }),
  });
  if (plot === true && format !== "text")
    throw new UsageError(`--plot is drawn as text; leave out --format ${format}`);
  const asked = askedOf(run.options);
  const shard = shardOf(run.options.shard, {
    format,
    not: { "--plot": plot, "standard input": run.paths.includes("-") || undefined },
  });
  if (shard !== undefined) checkHerdParts(asked);
  const archive = await run.countable(run.paths, shard);
  if (shard !== undefined) {
    const known = knownOf(archive.cases, asked);
    const json = herdJson(
      asUsage("herd", () => herdEstimates(archive, known)),
      snoutReading(archive),
    );
    run.write(partJson(json, herdMark(archive, asked, known, run)));
    return run.end();
  }
  const report = asUsage("herd", () => herdEstimates(archive, asked));
  if (archive.cases.length > 0 || format === "json" || format === "csv") run.write(written(report, archive));
  return run.end();
}

const askedOf = (options: HerdOptions) => ({
  ...(options.by !== undefined && {
    by: manyOf("--by", options.by, [...dimensions, "none"] as const).filter(isDimension),
  }),
  ...confidence(options.level),
  ...ids("indicators", "--indicator", options.indicator),
  ...ids("scales", "--scale", options.scale),
  ...(options.interval !== undefined && {
    interval: oneOf("--interval", options.interval, herdIntervals),
  }),
  ...(options.cluster !== undefined && { cluster: oneOf("--cluster", options.cluster, clusterKinds) }),
  ...(options.finite === true && { finite: true }),
  ...(options.combine === true && { combine: true }),
  ...accuracyOf(options),
  ...seedOf(options),
});

const isDimension = (part: Dimension | "none"): part is Dimension => part !== "none";

function seedOf({ bootstrap, seed }: HerdOptions): { seed?: number } {
  if (bootstrap === true) return { seed: seed === undefined ? 1 : whole("--seed", seed, 0, 4_294_967_295) };
  if (seed !== undefined) throw new UsageError("--seed is for --bootstrap; without it nothing is drawn");
  return {};
}

/** Shares taken as known, or counts of a study; nothing when neither was given. */
function accuracyOf({ sensitivity, specificity, indicator }: HerdOptions): { test?: TestAccuracy } {
  if (sensitivity === undefined && specificity === undefined) return {};
  if (sensitivity === undefined || specificity === undefined)
    throw new UsageError(
      `--${sensitivity === undefined ? "sensitivity" : "specificity"} is missing; both are needed (100% when it never errs)`,
    );
  if (indicator === undefined || indicator.includes(","))
    throw new UsageError(
      "--sensitivity and --specificity are those of one question; name it with --indicator",
    );
  const [se, sp] = [rightOf("--sensitivity", sensitivity), rightOf("--specificity", specificity)];
  if (typeof se === "number" && typeof sp === "number") return { test: { sensitivity: se, specificity: sp } };
  if (typeof se !== "number" && typeof sp !== "number") return { test: { sensitivity: se, specificity: sp } };
  throw new UsageError(
    "--sensitivity and --specificity: write both as shares (90%, 98%) or both as counts (45/50, 98/100)",
  );
}

function rightOf(option: string, text: string): number | RightCount {
  const [right, of, ...rest] = text.split("/");
  if (of === undefined || right === undefined || rest.length > 0) return share(option, asPercent(text));
  const tested = whole(option, of, 1);
  return { right: whole(option, right, 0, tested), of: tested };
}

/** A share of 1, which `share` would take for a mistyped per cent. */
const asPercent = (text: string): string => (/^\s*1(?:\.0*)?\s*$/.test(text) ? "100%" : text);
