/** The plan of samples: first what goes into the car, then what is taken of each pig in the order of the knife. */
import { sampleCare, sourceLine } from "../../knowledge/index.ts";
import { necropsySteps } from "../../knowledge/knife.ts";
import { containerNames, materialTitle, testNames } from "../../record/index.ts";
import { type PigGroup, pieceThickness, type SampleDue, type SamplePlan } from "../../samples/index.ts";
import { capital, listing } from "../../words/listing.ts";
import { type Block, type Form, gap, heading, list, right, table, text } from "../page/blocks.ts";
import { csv } from "../page/csv.ts";
import { outputJson } from "../page/json.ts";
import { markdownOf } from "../page/markdown.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { organName, shortName } from "./names.ts";

/** A plan with the visit that it is for. */
export interface VisitPlan {
  readonly visit: string | null;
  readonly complaint: string | null;
  readonly plan: SamplePlan;
}

export const planText = (plans: readonly VisitPlan[], style: Style, width: number): string =>
  textOf(
    plans.flatMap((one) => planBlocks(one, "text")),
    style,
    width,
  );
export const planMarkdown = (plans: readonly VisitPlan[]): string =>
  markdownOf(plans.flatMap((one) => planBlocks(one, "markdown")));

function planBlocks({ visit, plan }: VisitPlan, form: Form): Block[] {
  const named = plan.sets.filter(({ words }) => words !== undefined);
  const about = listing((named.length === 0 ? plan.sets : named).map(({ title }) => title));
  const bullet = form === "text" ? "- " : "";
  return [
    heading(`${visit === null ? "" : `${visit}  `}${about}`),
    text(pigsLine(plan)),
    ...bringBlocks(plan),
    ...plan.groups.flatMap((group) => groupBlocks(group, plan.groups)),
    ...besideBlocks(plan),
    ...list("Only after the authority has answered: call first at", plan.authority, { bullet }),
    ...list(
      "Sources",
      named.map(({ title, source }) => `${title}: ${sourceLine(source)}`),
    ),
  ];
}

/** `3 ill weaners from different litters, 1 healthy one of the same age; blood of 10 pen mates` */
function pigsLine({ groups, sets, mates }: SamplePlan): string {
  const origins = [...new Set(sets.flatMap(({ pigs }) => pigs?.from ?? []))];
  const pigs = groups.map((group) => whom(group, group.pigs.length));
  const others = mates.map(
    ({ number, from, of, pairs }) =>
      `${materialTitle(from)} of ${number} ${of ?? "pen mates"}${pairs === undefined ? "" : ` now and after ${pairs}`}`,
  );
  return `${capital(listing([...pigs]))}${origins.length === 0 ? "" : ` (${origins.join("; ")})`}${others.length === 0 ? "" : `; ${listing(others)}`}.`;
}

/** `3 weaners`, `a healthy sow` */
function whom({ ageClass, isHealthy }: Pick<PigGroup, "ageClass" | "isHealthy">, number: number): string {
  const [one, many] = pigNames[ageClass ?? ""] ?? ["pig", "pigs"];
  return `${number === 1 ? "one" : number} ${isHealthy ? "healthy " : ""}${number === 1 ? one : many}`;
}

const pigNames: Readonly<Record<string, readonly [string, string]>> = {
  mummy: ["mummy", "mummies"],
  aborted: ["aborted fetus", "aborted fetuses"],
  stillborn: ["stillborn piglet", "stillborn piglets"],
  suckling: ["suckling piglet", "suckling piglets"],
  weaner: ["weaner", "weaners"],
  finisher: ["finisher", "finishers"],
  adult: ["sow", "sows"],
};

function bringBlocks({ bring, formalin: { tissue, litres, ratio } }: SamplePlan): Block[] {
  const only = bring.reduce((sum, line) => sum + line.only, 0);
  const chains = (["cold", "frozen", "room"] as const).filter((chain) =>
    bring.some((line) => line.chain === chain),
  );
  return [
    heading("Bring", { level: 3 }),
    ...table(
      [right("number"), { head: "what" }, { head: "travels" }],
      bring.map(({ count: number, what, chain }) => [
        String(number),
        what,
        sampleCare.chains[chain]?.title.toLowerCase() ?? "",
      ]),
    ),
    text(
      `${litresText(litres)} of formalin for ${Math.round(tissue)} g of tissue times ${ratio}, in slices of ${pieceThickness} mm${only === 0 ? "" : `; ${only} of the containers only where something is found`}.`,
    ),
    ...chains.map((chain) =>
      text(`${sampleCare.chains[chain]?.title}: ${sampleCare.chains[chain]?.say}.`, { hang: 2 }),
    ),
  ];
}

const litresText = (litres: number): string =>
  litres < 1 ? `${Math.ceil(litres * 100) * 10} ml` : `${(Math.ceil(litres * 10) / 10).toFixed(1)} l`;

function groupBlocks(group: PigGroup, all: readonly PigGroup[]): Block[] {
  const { pigs, samples, ageClass, isHealthy } = group;
  if (samples.length === 0) return [];
  const names = pigs.flatMap(({ id }) => id ?? []).map(shortName);
  const who = pigs.length === 1 ? `the ${whom(group, 1).slice(4)}` : `each of ${whom(group, pigs.length)}`;
  const named = names.length === 0 ? "" : ` (${names.join(", ")})`;
  const like = all.find((other) => !other.isHealthy && isHealthy && other.ageClass === ageClass);
  if (like !== undefined && isPartOf(samples, like.samples))
    return [heading(`From ${who}${named} the same, but for what is marked *`, { level: 3 })];
  return [
    heading(`From ${who}${named}, in this order`, { level: 3 }),
    ...table(
      [{ head: "take" }, { head: "into" }, { head: "for" }],
      samples.flatMap((sample, at) => [
        ...(sample.step === samples[at - 1]?.step ? [] : [[stepTitle(sample.step), "", ""]]),
        [`- ${whatOf(sample)}`, containerNames([sample.into]), testNames(sample.for)],
      ]),
    ),
    ...list(
      "How, and what to ask for",
      samples.filter(({ asks, sites, where }) => asks.length + sites.length + where.length > 0).map(howLine),
      { indent: 2 },
    ),
  ];
}

/** Whether what is always taken of the one is all that is taken of the other. */
const isPartOf = (some: readonly SampleDue[], all: readonly SampleDue[]): boolean => {
  const key = ({ from, into, for: tests }: SampleDue): string => JSON.stringify([from, into, tests]);
  const always = all.filter(({ where }) => where.length === 0).map(key);
  return some.length === always.length && some.every((one) => always.includes(key(one)));
};

const stepTitle = (step: string): string => necropsySteps.find(({ id }) => id === step)?.title ?? step;

function whatOf({ from, into, pieces = 1, amount, where }: SampleDue): string {
  const many = pieces === 1 ? "" : into === "formalin" ? `, ${pieces} pieces` : `, ${pieces} times`;
  return `${organName(from)}${many}${amount === undefined ? "" : `, ${amount}`}${where.length === 0 ? "" : " *"}`;
}

function howLine({ from, into, asks, sites, where }: SampleDue): string {
  const parts = [
    ...(where.length === 0 ? [] : [`* only with ${listing(where, "or")}`]),
    ...sites,
    ...(asks.length === 0 ? [] : [`ask for ${asks.join("; ")}`]),
  ];
  return `${organName(from)}, ${containerNames([into])}: ${parts.join("; ")}`;
}

function besideBlocks({ mates, once }: SamplePlan): Block[] {
  const lines = [
    ...mates.map(
      ({ number, from, into, for: tests, of, pairs, why }) =>
        `${capital(materialTitle(from))} of ${number} ${of ?? "pen mates"}, ${containerNames([into])}, for ${testNames(tests)}${pairs === undefined ? "" : `; again of the same after ${pairs}`}${why === undefined ? "" : `: ${why}`}`,
    ),
    ...once.map(
      ({ from, into, for: tests, amount, why }) =>
        `${capital(materialTitle(from))}${amount === undefined ? "" : `, ${amount}`}, ${containerNames([into])}, for ${testNames(tests)}${why === undefined ? "" : `: ${why}`}`,
    ),
  ];
  return lines.length === 0
    ? []
    : [gap, ...list("Of the living, the feed and the water", lines, { bullet: "- " })];
}

export const planJson = (plans: readonly VisitPlan[]): string =>
  outputJson("samples-plan", 1, {
    visits: plans.map(({ visit, complaint, plan }) => ({
      visit,
      complaint,
      sets: plan.sets.map(({ id, title, source }) => ({ id, title, source })),
      bring: plan.bring,
      formalin: plan.formalin,
      pigs: plan.groups.map(({ pigs, ageClass, isHealthy, samples }) => ({
        number: pigs.length,
        cases: pigs.flatMap(({ id }) => id ?? []),
        class: ageClass ?? null,
        healthy: isHealthy,
        samples,
      })),
      mates: plan.mates,
      once: plan.once,
      authority: plan.authority,
    })),
  });

const head = [
  "visit",
  "pigs",
  "class",
  "healthy",
  "step",
  "from",
  "into",
  "for",
  "pieces",
  "amount",
  "where",
  "ask",
  "site",
  "sets",
];

/** A line a sample of each kind of pig. */
export const planCsv = (plans: readonly VisitPlan[]): string =>
  csv(
    head,
    plans.flatMap(({ visit, plan }) =>
      plan.groups.flatMap(({ pigs, ageClass, isHealthy, samples }) =>
        samples.map((one) => [
          visit,
          pigs.length,
          ageClass ?? null,
          isHealthy ? "yes" : "no",
          one.step,
          one.from,
          one.into,
          one.for.join(" "),
          one.pieces ?? 1,
          one.amount ?? null,
          one.where.join("; ") || null,
          one.asks.join("; ") || null,
          one.sites.join("; ") || null,
          one.sets.join(" "),
        ]),
      ),
    ),
  );
