/** What is open, for how long, and what arrived: first what is waited for. */
import { materialTitle } from "../../record/index.ts";
import { type Arrived, soughtIn, type VisitResults } from "../../results/index.ts";
import { count, listing } from "../../words/listing.ts";
import { type Block, heading, right, table, text } from "../page/blocks.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

interface Wish {
  readonly style: Style;
  readonly width: number;
  /** Each result by itself. */
  readonly all: boolean;
}

export function resultsText(visits: readonly VisitResults[], { style, width, all }: Wish): string {
  const blocks = visits.flatMap((one) => [
    heading(`${one.visit}  ${summary(one)}`),
    ...openBlocks(one),
    ...(all ? eachArrived(one.arrived) : countedArrived(one.arrived)),
    ...(one.strays === 0
      ? []
      : [text(`${count(one.strays, "result")} of no sample of these cases: carcase lint says which`)]),
  ]);
  return textOf(blocks, style, width);
}

function summary({ asked, answered, open, arrived }: VisitResults): string {
  if (asked === 0) return `${count(arrived.length, "result")}, and no test is written down as asked`;
  const waits = open.length === 0 ? "none open" : `${open.length} open`;
  return `${count(asked, "test")} asked, ${answered} answered, ${waits}`;
}

const openBlocks = ({ open, visit }: VisitResults): Block[] =>
  table(
    [
      { head: "open" },
      { head: "pig" },
      { head: "test" },
      right("days"),
      { head: "since" },
      { head: "from", detail: true },
    ],
    open.map(({ sample, test, days, since, from, case: pig }) => [
      sample,
      pigName(pig, visit),
      test,
      days === null ? "" : String(days),
      since ?? "",
      materialTitle(from),
    ]),
  );

/** Cases are mostly called after their visit. */
const pigName = (pig: string, visit: string): string =>
  pig.startsWith(`${visit}-`) ? pig.slice(visit.length + 1) : pig;

/** By test and what was looked for, so that many pigs stay one line; pools apart, because none of them is one pig. */
function countedArrived(arrived: readonly Arrived[]): Block[] {
  const groups = new Map<string, Arrived[]>();
  for (const one of arrived) {
    const key = JSON.stringify([one.test, soughtIn(one), one.pool]);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  const rows = [...groups.values()].map((of) => {
    const [first] = of;
    const positive = of.filter(({ interpretation }) => interpretation === "positive");
    const tested = positive.length + of.filter(({ interpretation }) => interpretation === "negative").length;
    const sought = first === undefined ? "" : shortName(first);
    return [
      first?.test ?? "",
      first?.pool ? `${sought}, pools` : sought,
      String(of.length),
      tested === 0 ? "" : `${positive.length} of ${tested}`,
      listing(positive.map(sampleNames)),
    ];
  });
  return table(
    [
      { head: "arrived" },
      { head: "for" },
      right("results"),
      right("positive"),
      { head: "positive in", detail: true },
    ],
    rows,
  );
}

/** Without what stands behind the name in brackets. */
const shortName = (one: Arrived): string => soughtIn(one).replace(/ \(.*\)$/, "");

const sampleNames = ({ samples, pool }: Arrived): string =>
  pool ? `pool ${samples.join("+")}` : samples.join("+");

function eachArrived(arrived: readonly Arrived[]): Block[] {
  const rows = arrived.map((one) => [
    sampleNames(one),
    one.test,
    shortName(one),
    one.interpretation ?? "",
    measured(one),
    one.date ?? "",
    one.text ?? "",
  ]);
  return table(
    [
      { head: "sample" },
      { head: "test" },
      { head: "for", detail: true },
      { head: "result" },
      { head: "value" },
      { head: "date" },
      { head: "text", detail: true },
    ],
    rows,
  );
}

function measured({ value, unit, ct, titre }: Arrived): string {
  return [
    value === null ? "" : `${value}${unit === null || unit === "1" ? "" : ` ${unit}`}`,
    ct === null ? "" : `Ct ${ct}`,
    titre === null ? "" : `titre ${titre}`,
  ]
    .filter((one) => one !== "")
    .join(", ");
}
