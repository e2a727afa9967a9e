/** The sheet of one pig: what is to be looked at, in the order of the knife, and what goes before it. */
import type { OpenAlarm } from "../alarms/index.ts";
import { type Case, isUnborn, type Settings } from "../cases/index.ts";
import { organById, protection, sampleRules, signFamilies } from "../knowledge/index.ts";
import { necropsySteps } from "../knowledge/knife.ts";
import { requiredFacts } from "../record/index.ts";
import { type SampleDue, samplesOfCase } from "../samples/index.ts";
import { capital } from "../words/listing.ts";
import type { MessageKey, Words } from "./words.ts";

/** A pig as it comes to the table. */
export interface TablePig {
  readonly id: string;
  readonly one: Case;
  /** Pigs whose signs count for the organs of this one as well: a healthy pig is looked at where the others are ill. */
  readonly beside: readonly Case[];
  /** Alarms that are open for it or its visit. */
  readonly alarms: readonly OpenAlarm[];
  readonly tag?: string | undefined;
  readonly complaint?: string | undefined;
  readonly date?: string | undefined;
  readonly examiner?: string | undefined;
}

export interface PigSheet {
  readonly id: string;
  readonly notices: readonly Notice[];
  /** While a stop stands nothing is asked for that would have to be cut. */
  readonly isStopped: boolean;
  readonly cautions: readonly string[];
  readonly authority: string;
  readonly facts: readonly SheetFact[];
  /** Signs of a notifiable disease to look for. */
  readonly looks: { readonly before: readonly string[]; readonly at: readonly string[] };
  readonly steps: readonly SheetStep[];
  readonly draws: { readonly snout: boolean; readonly lungs: boolean };
  readonly samples: readonly SheetSample[] | undefined;
  /** How a piece is fixed. */
  readonly formalin: string;
  /** No sample leaves yet. */
  readonly isKept: boolean;
}

export interface Notice {
  readonly head: string;
  readonly what: readonly string[];
  readonly orders: string;
}

export interface SheetFact {
  readonly key: MessageKey;
  readonly value: string;
}

export interface SheetStep {
  readonly title: string;
  readonly organs: readonly string[];
  /** Those that are wanted, and no must. */
  readonly wanted: readonly string[];
}

interface SheetSample {
  readonly from: string;
  readonly into: string;
  readonly for: string;
}

export function pigSheet(pig: TablePig, words: Words): PigSheet {
  const { id, one, alarms } = pig;
  const isStopped = alarms.some(({ pattern }) => pattern !== undefined && pattern.level !== "exclude");
  const due = isStopped ? { due: new Set<string>(), must: new Set<string>() } : dueIn(pig);
  const samples = samplesOfCase(one, pig.beside);
  const looks = requiredFacts(one).map((fact) => fact.id.split("."));
  const signs = (look: string): string[] =>
    isStopped
      ? []
      : looks
          .filter(([top, name]) => top === "alarm_check" && name === look)
          .map(([, , sign = ""]) => words.name("alarm_signs", sign));
  return {
    id,
    notices: noticesOf(alarms, one.settings, words),
    isStopped,
    cautions: isStopped ? [] : cautionSteps(one, due.due, samples).flatMap((step) => words.cautions(step)),
    authority: whom(one.settings, words),
    facts: factsOf(pig),
    looks: { before: signs("before_knife"), at: signs("at_knife") },
    steps: stepsOf(due, words),
    draws: { snout: due.due.has("respiratory.turbinates"), lungs: due.due.has("respiratory.lungs") },
    samples:
      isStopped || !one.protocol.follow_signs || due.due.size === 0
        ? undefined
        : rowsOf(samples.map((sample) => sampleIn(sample, words))),
    formalin: words.say("formalin", {
      ratio: sampleRules.formalin.ratio,
      thickness: sampleRules.formalin.thickness,
    }),
    isKept: alarms.length > 0,
  };
}

interface Due {
  readonly due: ReadonlySet<string>;
  readonly must: ReadonlySet<string>;
}

/** A carcass that was closed is asked nothing more, however ill the others are. */
function dueIn({ one, beside }: TablePig): Due {
  const all = one.due.length === 0 ? [one] : [one, ...beside];
  return {
    due: new Set(all.flatMap(({ due }) => due.map(({ id }) => id))),
    must: new Set(all.flatMap(({ must }) => [...must].map(({ id }) => id))),
  };
}

const stepsOf = ({ due, must }: Due, words: Words): SheetStep[] =>
  necropsySteps.flatMap((step) => {
    const organs = step.organs.map(({ id }) => id).filter((id) => due.has(id));
    const named = (list: readonly string[]): string[] => list.map((id) => words.name("organs", id));
    return organs.length === 0
      ? []
      : [
          {
            title: words.name("steps", step.id),
            organs: named(organs.filter((id) => must.has(id))),
            wanted: named(organs.filter((id) => !must.has(id))),
          },
        ];
  });

/** Steps whose cautions stand on top: what must be known before the first cut. */
function cautionSteps(
  { ageClass = "weaner", ...one }: Case,
  due: ReadonlySet<string>,
  samples: readonly SampleDue[],
): string[] {
  const isReproductive = isUnborn(ageClass) || signFamilies(one.signs).includes("reproductive");
  const isSawn = protection.sawn.some((organ) => due.has(organ));
  const isSaw = isSawn && !protection.scissors.includes(ageClass);
  return [
    "before-knife",
    ...(due.has("lymphoid.spleen") ? ["spleen-and-gut-lifted"] : []),
    ...(isSaw ? ["skull-opened"] : []),
    ...(isSaw || (isReproductive && isSawn) ? ["head-off"] : []),
    ...(isReproductive ? ["bladder-and-genitals"] : []),
    ...(samples.some(({ into }) => into === "formalin") ? ["gut-pieces"] : []),
  ];
}

/** Steps whose cautions a sheet may show. */
export const stepsWithCautions = [
  "before-knife",
  "spleen-and-gut-lifted",
  "skull-opened",
  "head-off",
  "bladder-and-genitals",
  "gut-pieces",
] as const;

function factsOf({ one, tag, complaint, date, examiner }: TablePig): SheetFact[] {
  const { record, visit, farm } = one;
  const { pig, selection, death, opened } = record;
  const isLine = one.protocol.manners?.includes("slaughtered") === true;
  const list: readonly (readonly [MessageKey, string | number | undefined])[] = [
    ["farm", farm?.id],
    ["date", date ?? visit?.record.date],
    ["examiner", examiner ?? record.examiner ?? visit?.record.veterinarian],
    ["tag", tag ?? pig?.tag],
    ["group", pig?.group],
    ["age", pig?.age ?? one.ageClass],
    ["sex", pig?.sex],
    ["weight", pig?.weight],
    ["basis", selection?.basis],
    ...(isLine
      ? []
      : ([
          ["onset", selection?.onset],
          ["signs", selection?.signs?.join(", ")],
          ["treated", treatedText(selection?.treated)],
          ["death", [death?.manner, death?.method, death?.at].filter(Boolean).join(", ")],
        ] as const)),
    ["opened", opened?.at],
    ["protocol", one.protocol.id],
    ["complaint", complaint ?? visit?.record.complaint],
  ];
  return list.map(([key, value]) => ({ key, value: String(value ?? "") }));
}

/** As it is typed. */
function treatedText(treated: NonNullable<Case["record"]["selection"]>["treated"]): string | undefined {
  if (typeof treated === "object") return treated.with;
  return typeof treated === "boolean" ? (treated ? "yes" : "no") : treated;
}

function sampleIn({ from, into, for: tests, pieces = 1 }: SampleDue, words: Words): SheetSample {
  const material = capital(words.name(organById(from) === undefined ? "materials" : "organs", from));
  return {
    from: pieces > 1 ? words.say("pieces", { number: pieces, material }) : material,
    into: words.name("containers", into),
    for: tests.map((test) => words.name("tests", test)).join(", "),
  };
}

/** What goes one after the other into the same container for the same tests is one row: a sheet has two pages. */
function rowsOf(samples: readonly SheetSample[]): SheetSample[] {
  const rows: SheetSample[] = [];
  for (const one of samples) {
    const last = rows.at(-1);
    if (last?.into === one.into && last.for === one.for)
      rows[rows.length - 1] = { ...last, from: `${last.from}; ${one.from}` };
    else rows.push(one);
  }
  return rows;
}

/** Whom to call, as the settings say. */
const whom = ({ authority }: Settings, words: Words): string =>
  authority === undefined
    ? words.say("authority")
    : authority.telephone === undefined
      ? authority.name
      : words.say("telephone", { name: authority.name, number: authority.telephone });

/** The notice of open alarms, as every command says it. */
export function noticesOf(alarms: readonly OpenAlarm[], settings: Settings, words: Words): Notice[] {
  const call = words.say("call", { whom: whom(settings, words) });
  const told = (list: readonly OpenAlarm[]): string[] => [
    ...new Set(
      list.map(({ id, file, pattern, said }) => {
        if (pattern === undefined) return `${id} (${file})`;
        const diseases = pattern.diseases.map((one) => words.name("diseases", one));
        const may = words.say("may_be", { diseases: either(diseases, words.say("or")) });
        return `${id}: ${may} [${pattern.id}]${said === undefined ? "" : `, ${said.stands} ${said.at}`}`;
      }),
    ),
  ];
  const part = (list: readonly OpenAlarm[], head: MessageKey, ...orders: string[]): Notice[] =>
    list.length === 0 ? [] : [{ head: words.say(head), what: told(list), orders: orders.join(" ") }];
  const stopping = alarms.filter(({ pattern }) => pattern !== undefined && pattern.level !== "exclude");
  const shut = stopping.some(({ pattern }) => pattern?.do_not_open === true);
  return [
    ...part(stopping, "stop", words.say("stop_orders"), ...(shut ? [words.say("do_not_open")] : []), call),
    ...part(
      alarms.filter(({ pattern }) => pattern?.level === "exclude"),
      "exclude",
      words.say("exclude_orders"),
      call,
    ),
    ...part(
      alarms.filter(({ pattern }) => pattern === undefined),
      "untold",
      words.say("untold_orders"),
    ),
  ];
}

const either = (names: readonly string[], or: string): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} ${or} ${names.at(-1)}`;
