// The table of docs/statistics.md, from the stored results and nothing else.

const LEAST = 0.94;
const MOST = 0.99;
const ERROR = 0.055;

/** Whether a row keeps to 94 to 99 %, or to at most 5.5 %. */
export const keeps = ({ kind, worst }) => (kind === "error" ? worst <= ERROR : worst >= LEAST);
/** Whether a row misses by no more than two standard errors of its simulation: it may be chance, of the worst of several. */
export const byChance = ({ kind, worst, runs }) => {
  if (runs === null) return false;
  const limit = kind === "error" ? ERROR : LEAST;
  return Math.abs(worst - limit) <= 2 * Math.sqrt((limit * (1 - limit)) / runs);
};
const generous = ({ kind, mean }) => kind === "coverage" && mean > MOST;

const percent = (share) => `${(share * 100).toFixed(1)} %`;

/** @param results as written by scripts/simulate.mjs */
export function tableOf({ seed, runs, rows }) {
  const line = (row) => {
    const how = row.runs === null ? "all outcomes" : `${row.runs} runs`;
    return `| ${row.printed} | ${row.design} | ${how} | ${percent(row.worst)} | ${row.worst_at} | ${percent(row.mean)} |`;
  };
  const part = (title, kind, worst) => [
    `**${title}**`,
    "",
    `| printed | pigs | by | ${worst} | there | mean |`,
    "| --- | --- | --- | ---: | --- | ---: |",
    ...rows.filter((row) => row.kind === kind).map(line),
    "",
  ];
  const outside = rows.filter((row) => !keeps(row));
  const failing = outside.filter((row) => !byChance(row));
  const chance = outside.filter(byChance);
  const wide = rows.filter(generous);
  const named = (some) => some.map(({ printed, design }) => `${printed} (${design})`).join("; ");
  const worstOf = (kind) =>
    rows
      .filter((row) => row.kind === kind)
      .reduce((worst, row) =>
        (kind === "error" ? row.worst > worst.worst : row.worst < worst.worst) ? row : worst,
      );
  const [coverage, error] = ["coverage", "error"].map(worstOf);
  return [
    `Seed ${seed}, ${runs} runs a state where not all outcomes could be counted (fewer for what is slow, and where limits are often missing: 'by' says how many the worst had; of trials a state outside was run again eight times as often, and the new runs count alone; the standard error of ${runs} is about ${percent(Math.sqrt((0.05 * 0.95) / runs))}). 'Worst' is that of all states tried, and so lies`,
    "a little below what a single state would give.",
    "",
    ...part("How often intervals of 95 % hold the truth", "coverage", "worst"),
    ...part("How often a test at 5 % finds what is not there", "error", "worst"),
    `Worst interval: ${coverage.printed}, ${coverage.design}, ${percent(coverage.worst)} at ${coverage.worst_at}. Worst test: ${error.printed}, ${error.design}, ${percent(error.worst)} at ${error.worst_at}.`,
    "",
    failing.length === 0
      ? "No interval falls below 94 % and no test lies above 5.5 % by more than two standard errors of the simulation."
      : `Below 94 %, or above 5.5 %, in some state: ${named(failing)}.`,
    chance.length === 0
      ? ""
      : `\nBelow or above by no more than two standard errors, which may be chance: ${named(chance)}.`,
    wide.length === 0 ? "" : `\nOn average above 99 %, wider than need be: ${named(wide)}.`,
  ]
    .join("\n")
    .trimEnd();
}

const START = "<!-- simulation: npm run simulate -->";
const END = "<!-- simulation ends -->";

/** The page with its table. */
export function pageWith(page, results) {
  const [from, to] = [page.indexOf(START), page.indexOf(END)];
  if (from < 0 || to < from) throw new Error("docs/statistics.md has no place for the simulation");
  return `${page.slice(0, from + START.length)}\n\n${tableOf(results)}\n\n${page.slice(to)}`;
}
