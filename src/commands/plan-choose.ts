/** `carcase plan choose`: a random draw that can be repeated, or the rules for a diagnostic necropsy. */
import { randomInt } from "node:crypto";
import { statSync } from "node:fs";
import { join } from "node:path";
import { decode, readText, type TextResult } from "../cases/files/read-text.ts";
import { type Fault, readCases } from "../cases/index.ts";
import { farmFrame, planChoose, planDiagnostic, tagsFrame, type Unit } from "../plan/index.ts";
import type { CommonOptions } from "./options.ts";
import { asUsage, ids, whole } from "./parsers.ts";
import { writePlan } from "./plan.ts";
import type { Run } from "./run.ts";
import { readStandardInput } from "./standard-input.ts";
import { UsageError } from "./usage-error.ts";

export interface ChooseOptions extends CommonOptions {
  readonly pigs?: string;
  readonly pens?: string;
  readonly reserve?: string;
  readonly groups?: string;
  readonly each?: true;
  readonly seed?: string;
  readonly diagnostic?: true;
}

/** Draws from a tag list, from `-` for standard input, from a farm.yaml or its folder. */
export function choose(run: Run<ChooseOptions>): number {
  const { options } = run;
  const [from] = run.paths;
  if (options.diagnostic) {
    if (from !== undefined || options.pigs !== undefined || options.pens !== undefined)
      throw new UsageError(
        "--diagnostic prints the rules and draws nothing; leave the list and the numbers out",
      );
    return writePlan(planDiagnostic(), run);
  }
  if (from === undefined)
    throw new UsageError(
      "name the list to draw from: a file with one tag a line, - for standard input, or a farm.yaml",
    );
  const { unit, take } = wanted(options);
  const frame = asUsage(from, () => frameOf(from, unit, run));
  const plan = asUsage("plan choose", () =>
    planChoose({
      frame: frame.units,
      unit: frame.unit,
      take,
      reserve: options.reserve === undefined ? 0 : whole("--reserve", options.reserve, 0),
      seed: seedOf(options.seed),
      each: options.each ?? false,
    }),
  );
  return writePlan(plan, run);
}

function wanted({ pigs, pens }: ChooseOptions): { unit: "pigs" | "pens"; take: number } {
  if (pigs !== undefined && pens !== undefined) throw new UsageError("write --pigs or --pens, not both");
  if (pens !== undefined) return { unit: "pens", take: whole("--pens", pens) };
  if (pigs !== undefined) return { unit: "pigs", take: whole("--pigs", pigs) };
  throw new UsageError("--pigs is missing; write for example --pigs 12");
}

/** A seed that was not given is made up, and printed like any other. */
const seedOf = (text: string | undefined): number =>
  text === undefined ? randomInt(1_000_000_000) : whole("--seed", text, 0, Number.MAX_SAFE_INTEGER);

interface Frame {
  readonly units: readonly Unit[];
  readonly unit: "tags" | "pigs" | "pens";
}

function frameOf(from: string, unit: "pigs" | "pens", run: Run<ChooseOptions>): Frame {
  const { groups, each } = run.options;
  const file = from !== "-" && isFolder(from) ? join(from, "farm.yaml") : from;
  if (/\.ya?ml$/.test(file)) {
    const units = farmFrame(farmOf(file, run), { ...ids("groups", "--groups", groups), unit });
    return { units, unit };
  }
  if (unit === "pens") throw new UsageError("--pens draws pens of a farm.yaml; a list of tags holds pigs");
  if (groups !== undefined || each)
    throw new UsageError("--groups and --each go with a farm.yaml; a list of tags has no groups");
  return { units: tagsFrame(textOf(file)), unit: "tags" };
}

function textOf(file: string): string {
  const read: TextResult = file === "-" ? decode(readStandardInput()) : readText(file, true);
  if (read.ok) return read.text;
  const [fault] = read.faults;
  const line = fault?.place === undefined ? "" : `line ${fault.place.line}: `;
  throw new UsageError(
    `${file === "-" ? "standard input" : file}: ${line}${fault?.message ?? "it cannot be read"}`,
  );
}

function farmOf(file: string, run: Run<ChooseOptions>) {
  const { farms, unreadable } = readCases([file]);
  const [farm] = farms;
  const faults: readonly Fault[] = [...unreadable, ...(farm?.faults ?? [])];
  run.faults(faults);
  if (farm === undefined)
    throw new UsageError(`${file}: there is no farm file here; a farm file is called farm.yaml`);
  if (faults.length > 0) throw new UsageError(`${file}: put the farm file right first`);
  return farm.record;
}

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
