/** Positive of tested, by agent and test: a column a way in which pigs were chosen, and pools beside them. */
import { type PoolCount, type ResultCount, reachOf } from "../../herd/index.ts";
import { agentName } from "../../knowledge/agents.ts";
import { grouped } from "../../words/grouped.ts";
import { count } from "../../words/listing.ts";
import { percent, percentRange } from "../../words/percent.ts";
import { type Block, remarks, table, text } from "../page/blocks.ts";

/** @param results of one place */
export function resultBlocks(results: readonly ResultCount[]): Block[] {
  if (results.length === 0) return [];
  const bases = [...new Set(results.map(({ basis }) => reachOf(basis).title))];
  const hasPools = results.some(({ pools }) => pools !== undefined);
  const rows = [...grouped(results, ({ indicator }) => indicator).values()].map((some) => {
    const [{ agent, test }] = some;
    const of = bases.map((title) => some.find(({ basis }) => reachOf(basis).title === title));
    return [
      agentName(agent).replace(/ \(.*\)$/, ""),
      test,
      ...of.map((one) => (one === undefined ? "" : counted(one))),
      ...(hasPools
        ? [some.flatMap(({ pools }) => (pools === undefined ? [] : [pooled(pools)])).join("; ")]
        : []),
    ];
  });
  return [
    text("Pigs positive of those tested:", { quiet: true }),
    ...table(
      [
        { head: "" },
        { head: "" },
        ...bases.map((head) => ({ head, right: true })),
        ...(hasPools ? [{ head: "pools", detail: true }] : []),
      ],
      rows,
      { parts: true },
    ),
    ...remarks(
      results.flatMap(({ true_prevalence: truth, wording }) => (truth === undefined ? [] : [wording])),
    ),
  ];
}

/** `3 of 10 (7 to 65 %)`; nothing where none was tested alone. */
function counted({ affected, examined, lower, upper }: ResultCount): string {
  if (examined === 0) return "";
  const range = lower === null || upper === null ? "" : ` (${percentRange(lower, upper)})`;
  return `${affected} of ${examined}${range}`;
}

function pooled({ positive, pools, size, prevalence, lower, upper }: PoolCount): string {
  const of = `${positive} of ${count(pools, "pool")}${size === null ? "" : ` of ${count(size, "pig")}`}`;
  return prevalence === null || lower === null || upper === null
    ? of
    : `${of}: ${percent(prevalence)} of pigs (${percentRange(lower, upper)})`;
}
