/** `--sensitivity` and `--specificity` of `carcase herd`: shares taken as known, or counts of a study. */
import type { RightCount, TestAccuracy } from "../herd/index.ts";
import { share, whole } from "./numbers.ts";
import { UsageError } from "./usage-error.ts";

export interface AccuracyOptions {
  readonly indicator?: string;
  readonly sensitivity?: string;
  readonly specificity?: string;
}

/**
 * Nothing when neither was given.
 * @throws UsageError when one is missing, they are of two kinds, no shares or counts, or not for one indicator
 */
export function herdAccuracy(options: AccuracyOptions): { test?: TestAccuracy } {
  const { sensitivity, specificity } = options;
  if (sensitivity === undefined && specificity === undefined) return {};
  if (sensitivity === undefined || specificity === undefined)
    throw new UsageError(
      `--${sensitivity === undefined ? "sensitivity" : "specificity"} is missing; both are needed (100% when it never errs)`,
    );
  if (options.indicator === undefined || options.indicator.includes(","))
    throw new UsageError(
      "--sensitivity and --specificity are those of one question; name it with --indicator",
    );
  const [se, sp] = [partOf("--sensitivity", sensitivity), partOf("--specificity", specificity)];
  if (typeof se === "number" && typeof sp === "number") return { test: { sensitivity: se, specificity: sp } };
  if (typeof se !== "number" && typeof sp !== "number") return { test: { sensitivity: se, specificity: sp } };
  throw new UsageError(
    "--sensitivity and --specificity: write both as shares (90%, 98%) or both as counts (45/50, 98/100)",
  );
}

function partOf(option: string, text: string): number | RightCount {
  const [right, of, ...rest] = text.split("/");
  if (of === undefined || right === undefined || rest.length > 0) return share(option, one(text));
  const tested = whole(option, of, 1);
  return { right: whole(option, right, 0, tested), of: tested };
}

/** A share of 1, which `share` would take for a mistyped per cent. */
const one = (text: string): string => (/^\s*1(?:\.0*)?\s*$/.test(text) ? "100%" : text);
