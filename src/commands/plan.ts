/** `carcase plan`: how many pigs, which ones, and what will that number be able to say? */
import { planCsv, planJson } from "../formats/plan/data.ts";
import { planMarkdown, planText } from "../formats/plan/document.ts";
import { type Plan, planCompare, planDetect, planEstimate, planSay } from "../plan/index.ts";
import { type Rounding, SHARES_RULES, type SharesRule } from "../statistics/index.ts";
import type { CommonOptions } from "./options.ts";
import {
  asUsage,
  groupShares,
  ofHundred,
  oneOf,
  openShare,
  share,
  shares,
  someShare,
  whole,
  wholes,
} from "./parsers.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

/** Options as commander gives them: texts. */
export type PlanOptions = CommonOptions & Readonly<Record<string, string | boolean | undefined>>;

/** Writes a plan in the format that was asked for. */
export function writePlan(plan: Plan, run: Run): number {
  const written = run.format<(plan: Plan) => string>({
    text: (one) => planText(one, run.style),
    json: planJson,
    csv: planCsv,
    markdown: planMarkdown,
  });
  run.write(written(plan));
  return run.end();
}

/** A command that answers one question. */
const asks =
  (name: string, planned: (options: PlanOptions, run: Run<PlanOptions>) => Plan) =>
  (run: Run<PlanOptions>): number =>
    writePlan(
      asUsage(`plan ${name}`, () => planned(run.options, run)),
      run,
    );

/** The value of an option read by `read`, under the name the question has; nothing when it was not given. */
function given<Name extends string, T>(
  options: PlanOptions,
  option: string,
  name: Name,
  read: (option: string, text: string) => T,
): { [key in Name]?: T } {
  const text = options[option.replaceAll(/-([a-z])/g, (_, letter: string) => letter.toUpperCase())];
  return typeof text === "string" ? ({ [name]: read(`--${option}`, text) } as { [key in Name]?: T }) : {};
}

/** As {@link given}, for an option without which there is no question. */
function needed<T>(
  options: PlanOptions,
  option: string,
  read: (option: string, text: string) => T,
  example: string,
): T {
  const { value } = given(options, option, "value", read);
  if (value === undefined)
    throw new UsageError(`--${option} is missing; write for example --${option} ${example}`);
  return value;
}

const pigs = (option: string, text: string): number => whole(option, text);
const pigsOfPen = (option: string, text: string): number => whole(option, text, 1, 100);
const visitNumbers = (option: string, text: string): number[] => wholes(option, text, 1, 1000);

function rounding(option: string, text: string): Rounding {
  const found = (["ceil", "round", "floor"] as const).find((rule) => rule === text);
  if (found === undefined)
    throw new UsageError(`${option}: "${text}" is no rule; write ceil, round or floor`);
  return found;
}

export const detect = asks("detect", (options) =>
  planDetect({
    prevalence: needed(options, "prevalence", someShare, "5%"),
    ...given(options, "herd", "herd", pigs),
    ...given(options, "confidence", "confidence", openShare),
    ...given(options, "sensitivity", "sensitivity", someShare),
    ...given(options, "specificity", "specificity", someShare),
    ...given(options, "herd-specificity", "herdSpecificity", openShare),
    ...given(options, "pool", "poolSize", pigs),
    ...given(options, "rounding", "rounding", rounding),
    ...given(options, "over", "over", shares),
  }),
);

export const estimate = asks("estimate", (options) =>
  planEstimate({
    expected: needed(options, "expected", openShare, "20%"),
    within: needed(options, "within", openShare, "5%"),
    ...given(options, "herd", "herd", pigs),
    ...given(options, "confidence", "confidence", openShare),
    ...given(options, "from-each-pen", "fromEachPen", pigs),
    ...given(options, "correlation", "correlation", share),
    ...given(options, "over", "over", shares),
  }),
);

/** The test of two shares: as asked, else of the settings. */
const sharesTest = (options: PlanOptions, run: Run<PlanOptions>): { test: SharesRule } => ({
  test: run.settings().settings.sharesTest,
  ...given(options, "test", "test", (option, text) => oneOf(option, text, SHARES_RULES, "test")),
});

export const compare = asks("compare", (options, run) =>
  planCompare({
    ...sharesTest(options, run),
    ...given(options, "from", "from", groupShares),
    ...given(options, "to", "to", groupShares),
    ...given(options, "grades", "grades", ofHundred),
    ...given(options, "then-grades", "thenGrades", ofHundred),
    ...given(options, "pigs", "pigs", visitNumbers),
    ...given(options, "then-pigs", "thenPigs", visitNumbers),
    ...given(options, "from-each-pen", "fromEachPen", pigsOfPen),
    ...given(options, "correlation", "correlation", share),
    ...given(options, "pens", "pens", visitNumbers),
    ...given(options, "then-pens", "thenPens", visitNumbers),
    ...given(options, "power", "power", openShare),
    ...given(options, "alpha", "alpha", openShare),
    ...given(options, "over", "over", visitNumbers),
    ...given(options, "seed", "seed", (option, text) => whole(option, text, 0, Number.MAX_SAFE_INTEGER)),
  }),
);

export const say = asks("say", (options, run) =>
  planSay({
    ...sharesTest(options, run),
    pigs: needed(options, "pigs", pigs, "12"),
    ...given(options, "herd", "herd", pigs),
    ...given(options, "confidence", "confidence", openShare),
    ...given(options, "from", "from", share),
    ...given(options, "power", "power", openShare),
    ...given(options, "alpha", "alpha", openShare),
    ...given(options, "rounding", "rounding", rounding),
    ...given(options, "over", "over", shares),
  }),
);
