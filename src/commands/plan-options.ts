/** The options of `carcase plan` and its questions. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addOutput, noColour } from "./options.ts";
import type { PlanOptions } from "./plan.ts";
import type { ChooseOptions } from "./plan-choose.ts";

/** Adds the command with its subcommands; what computes is loaded only when asked. */
export function addPlan(program: Command): void {
  const plan = program
    .command("plan")
    .summary("how many pigs, which ones, and what will that number be able to say?")
    .description("Plans a visit: numbers with sentences and a table, and a random draw that can be repeated.")
    .addHelpText("after", planHelp);
  addDetect(plan);
  addEstimate(plan);
  addCompare(plan);
  addSay(plan);
  addChoose(plan);
}

const withOutput = (command: Command): Command =>
  addOutput(command, "text for people; json, csv or markdown").option(...noColour);

const testOption = [
  "--test <rule>",
  "fisher, mid-p or boschloo (default: shares_test of carcase.yaml, else fisher)",
] as const;

function addDetect(plan: Command): void {
  withOutput(plan.command("detect"))
    .summary("how many, to find a disease that is there?")
    .description("The smallest number that finds at least one affected pig with the wanted probability.")
    .option("--prevalence <share>", "share affected that is not to be missed: 5% or 0.05")
    .option("--herd <pigs>", "pigs in the herd or group; without limit when left out")
    .option("--confidence <share>", "wanted probability of finding one (default: 95%)")
    .option("--sensitivity <share>", "share of affected pigs that the examination finds (default: 100%)")
    .option("--specificity <share>", "share of healthy pigs that it calls healthy (default: 100%)")
    .option("--herd-specificity <share>", "wanted probability that a free herd is called free (default: 95%)")
    .option("--pool <pigs>", "pigs in one pooled sample; --sensitivity is then that of a pool")
    .option("--rounding <rule>", "how the share becomes whole pigs: ceil, round or floor (default: ceil)")
    .option("--over <shares>", "prevalences of the table, separated by commas")
    .addHelpText("after", detectHelp)
    .action(call<PlanOptions>(async () => (await import("./plan.ts")).detect));
}

function addEstimate(plan: Command): void {
  withOutput(plan.command("estimate"))
    .summary("how many, to know a share with a wanted precision?")
    .description("The smallest number whose exact interval is as narrow as wanted.")
    .option("--expected <share>", "share expected to be affected")
    .option("--within <share>", "wanted half-width of the interval: 5% is plus or minus 5 points")
    .option("--herd <pigs>", "pigs in the herd or group; without limit when left out")
    .option("--confidence <share>", "confidence level (default: 95%)")
    .option("--from-each-pen <pigs>", "pigs examined in each pen, room or litter (default: 1)")
    .option("--correlation <share>", "how alike pigs of one pen are, 0 to 1 (default: 0)")
    .option("--over <shares>", "expected shares of the table, separated by commas")
    .action(call<PlanOptions>(async () => (await import("./plan.ts")).estimate));
}

function addCompare(plan: Command): void {
  withOutput(plan.command("compare"))
    .summary("how many on each of two visits, to see a change?")
    .description("The number per visit for the test that compare will make, with its exact power.")
    .option("--from <share>", "share affected now; 40%,20% for two groups")
    .option("--to <share>", "share affected then, to be told apart from it")
    .option("--grades <numbers>", "of 100 pigs those with grade 0, 1, 2 ... now, in place of shares")
    .option("--then-grades <numbers>", "of 100 pigs those with grade 0, 1, 2 ... then")
    .option("--pigs <numbers>", "pigs on each visit when the number is fixed; 8,4 for two groups")
    .option("--then-pigs <numbers>", "pigs on the second visit, when not as many")
    .option("--from-each-pen <pigs>", "pigs examined in each pen, room or litter (default: 1)")
    .option("--correlation <share>", "how alike pigs of one pen are, 0 to 1 (default: 0)")
    .option("--pens <numbers>", "pens on each visit when the number is fixed")
    .option("--then-pens <numbers>", "pens on the second visit, when not as many")
    .option("--power <share>", "wanted probability of seeing the change (default: 80%)")
    .option("--alpha <share>", "significance level, two-sided (default: 5%)")
    .option(...testOption)
    .option("--over <numbers>", "numbers per visit of the table, separated by commas")
    .option("--seed <number>", "start of the random numbers, where it is simulated (default: 1)")
    .addHelpText("after", compareHelp)
    .action(call<PlanOptions>(async () => (await import("./plan.ts")).compare));
}

function addSay(plan: Command): void {
  withOutput(plan.command("say"))
    .summary("what will a given number be able to say?")
    .description("Limits, widths and the least change to be seen, before the first pig is opened.")
    .option("--pigs <number>", "pigs that can be examined")
    .option("--herd <pigs>", "pigs in the herd or group; without limit when left out")
    .option("--confidence <share>", "confidence level (default: 95%)")
    .option("--from <share>", "share affected that a second visit is compared with (default: 50%)")
    .option("--power <share>", "wanted probability of seeing a change (default: 80%)")
    .option("--alpha <share>", "significance level, two-sided (default: 5%)")
    .option(...testOption)
    .option("--rounding <rule>", "how a share becomes whole pigs: ceil, round or floor (default: ceil)")
    .option("--over <shares>", "shares affected of the table, separated by commas")
    .action(call<PlanOptions>(async () => (await import("./plan.ts")).say));
}

function addChoose(plan: Command): void {
  withOutput(plan.command("choose"))
    .summary("which pigs?")
    .description("A random draw from ear tags or groups, or the rules for a diagnostic necropsy.")
    .argument("[list]", "a file with one tag a line, - for standard input, a farm.yaml or its folder")
    .option("--pigs <number>", "pigs to draw")
    .option("--pens <number>", "pens to draw instead, from a farm.yaml")
    .option("--reserve <number>", "how many more to draw as a reserve")
    .option("--groups <names>", "only these groups of the farm, separated by commas")
    .option("--each", "draw these numbers from each group")
    .option("--seed <number>", "start of the random numbers; made up and printed when left out")
    .option("--diagnostic", "print the rules for choosing pigs for a diagnostic necropsy, and draw nothing")
    .addHelpText("after", chooseHelp)
    .action(call<ChooseOptions>(async () => (await import("./plan-choose.ts")).choose));
}

const planHelp = `
Examples:
  carcase plan detect --herd 600 --prevalence 5%
  carcase plan estimate --expected 20% --within 5% --herd 600
  carcase plan compare --from 40% --to 15%
  carcase plan say --pigs 12
  carcase plan choose alder-farm --groups nursery-1 --pigs 12 --seed 7
Shares are written 5% or 0.05. Numbers hold for pigs drawn at random, not for
pigs chosen because they are ill.`;

const detectHelp = `
Examples:
  carcase plan detect --herd 600 --prevalence 5% --confidence 95%
  carcase plan detect --herd 600 --prevalence 10% --sensitivity 90% --specificity 98%
  carcase plan detect --prevalence 5% --pool 5 --sensitivity 85%`;

const compareHelp = `
Examples:
  carcase plan compare --from 40% --to 15%
  carcase plan compare --from 40% --to 15% --from-each-pen 4 --correlation 0.1
  carcase plan compare --from 40%,20% --to 15%,10% --pigs 8,4 --then-pigs 4,8
  carcase plan compare --grades 40,30,20,10 --then-grades 60,25,10,5`;

const chooseHelp = `
Examples:
  carcase plan choose tags.txt --pigs 12 --reserve 2 --seed 20260314
  carcase plan choose alder-farm/farm.yaml --groups nursery-1,nursery-2 --pigs 6 --each --seed 7
  carcase plan choose --diagnostic`;
