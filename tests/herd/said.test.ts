/** What may be said of a number: a walk over designs, and a list of all sentences with the conditions under which they stand. */
import { describe, expect, test } from "vitest";
import { cautionsOf, compareFarms } from "../../src/compare/index.ts";
import { herdCsv } from "../../src/formats/herd/csv.ts";
import { herdMarkdown, herdText } from "../../src/formats/herd/document.ts";
import { herdJson } from "../../src/formats/herd/json.ts";
import { herdPlot } from "../../src/formats/herd/plot.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { displayWidth, wrapped } from "../../src/formats/page/width.ts";
import { scoreText } from "../../src/formats/score/text.ts";
import {
  type Estimate,
  type HerdOptions,
  type HerdReport,
  type HerdScores,
  herdEstimates,
} from "../../src/herd/index.ts";
import { selectionBases } from "../../src/knowledge/index.ts";
import { scoreCases } from "../../src/score/index.ts";
import { grouped } from "../../src/words/grouped.ts";
import { affected } from "../compare/farm.ts";
import { examplePractice, inPens, practiceOf } from "../compare/practice.ts";
import { archiveOf, farm } from "./archive.ts";

const plain = makeStyle(false);

/** How pigs came to be counted together. */
interface Design {
  readonly basis: string;
  readonly slaughtered: "slaughtered" | "at a visit";
  readonly groups: "1 group" | "2 groups";
  readonly heads: "head counts known" | "no head counts" | "more in the group";
  readonly visits: "1 visit" | "2 visits";
  readonly pigs: keyof typeof seen;
}

/** Grades in each group of each visit; `blank` was not looked at, `half` was not graded. */
const seen = {
  "none examined": ["blank", "blank"],
  "one pig, affected": [3],
  "one pig, free": [0],
  "none affected": [0, 1, 0, 1],
  "some affected": [0, 3, 2, 1],
  "all affected": [3, 2, 4, 2],
  "some affected, one not examined": [0, 3, 2, 1, "blank"],
  "some affected, one not graded": [0, 3, 2, 1, "half"],
} as const;

const entry = (grade: number | "blank" | "half") =>
  grade === "blank"
    ? { not_examined: "sold with the head" }
    : grade === "half"
      ? { section: "premolar-1" }
      : { section: "premolar-1", grades: { "maff-1978": grade, "embrapa-1993": Math.min(grade, 3) } };

const unrecorded = "not recorded";

const designs: readonly Design[] = [...Object.keys(selectionBases), unrecorded].flatMap((basis) =>
  (["at a visit", "slaughtered"] as const).flatMap((slaughtered) =>
    (["1 group", "2 groups"] as const).flatMap((groups) =>
      (["head counts known", "no head counts", "more in the group"] as const).flatMap((heads) =>
        (["1 visit", "2 visits"] as const).flatMap((visits) =>
          (Object.keys(seen) as Design["pigs"][]).flatMap((pigs): Design[] =>
            // Slaughter changes nothing that depends on the other conditions.
            slaughtered === "slaughtered" &&
            (groups !== "1 group" || visits !== "1 visit" || heads !== "head counts known")
              ? []
              : [{ basis, slaughtered, groups, heads, visits, pigs }],
          ),
        ),
      ),
    ),
  ),
);

function casesOf({ basis, slaughtered, groups, heads, visits, pigs }: Design, question?: object) {
  const names = groups === "1 group" ? ["a"] : ["a", "b"];
  const days = visits === "1 visit" ? ["2026-03-14"] : ["2026-03-14", "2026-09-19"];
  const size = basis === "complete" && heads === "head counts known" ? seen[pigs].length : 200;
  return archiveOf({
    "farm.yaml": {
      ...farm("alder"),
      groups: Object.fromEntries(
        names.map((name) => [name, heads === "no head counts" ? {} : { head: size }]),
      ),
    },
    ...Object.fromEntries(
      days.flatMap((date, visit) => [
        [
          `${date}/visit.yaml`,
          { format: 1, visit: `visit-${visit + 1}`, date, ...(question !== undefined && { question }) },
        ],
        ...names.flatMap((group) =>
          seen[pigs].map((grade, index) => [
            `${date}/${group}-${index}.yaml`,
            {
              format: 1,
              case: `${date}-${group}-${index}`,
              pig: { group, age: "60 d" },
              ...(basis !== unrecorded && { selection: { basis } }),
              ...(slaughtered === "slaughtered" && { death: { manner: "slaughtered" } }),
              respiratory: { turbinates: entry(grade) },
            },
          ]),
        ),
      ]),
    ),
  }).cases;
}

const asked: HerdOptions = { indicators: ["snout-grade-2-up"], scales: ["maff-1978", "embrapa-1993"] };
const drawn = (basis: string): boolean => basis === "random" || basis === "complete";

/** Whether these pigs together may be called what they were drawn for: written anew here, from the issue and not the code. */
function mayBePrevalence({ basis, groups, heads, visits, pigs }: Design): boolean {
  const read =
    seen[pigs].filter((grade) => typeof grade === "number").length * (groups === "1 group" ? 1 : 2);
  if (!drawn(basis) || visits === "2 visits" || read < 2) return false;
  if (basis === "complete") return heads !== "more in the group";
  return groups === "1 group" || heads !== "no head counts";
}

/** Whether nothing is unknown of the share that is told. */
const isExact = (design: Design): boolean =>
  !mayBePrevalence(design) || (design.basis === "complete" && !design.pigs.includes(", one not "));

/** Every text about these numbers. */
const textsOf = (report: HerdReport): Record<string, string> => ({
  text: herdText(report, plain),
  quiet: herdText(report, plain, { quiet: true }),
  all: herdText(report, plain, { all: true }),
  markdown: herdMarkdown(report, { all: true }),
  plot: herdPlot(report, plain),
  csv: herdCsv(report),
  json: herdJson(report, []),
});

const only = ({ estimates }: HerdReport): Estimate => {
  const [one] = estimates;
  if (one === undefined || estimates.length !== 1) throw new Error(`${estimates.length} estimates`);
  return one;
};

const reports = designs.map((design) => {
  const cases = casesOf(design);
  return {
    design,
    together: herdEstimates(cases, { ...asked, by: [] }),
    apart: herdEstimates(cases, asked),
  };
});

describe("a walk over designs", () => {
  const every = (check: (one: (typeof reports)[number]) => void): void => {
    for (const one of reports)
      try {
        check(one);
      } catch (error) {
        throw new Error(`${JSON.stringify(one.design)}: ${String(error)}`);
      }
  };

  test("walks over hundreds of them, and some may be called what others may not", () => {
    expect(designs.length).toBeGreaterThan(300);
    expect(designs.filter(mayBePrevalence).length).toBeGreaterThan(20);
  });

  test("never 'prevalence' without random or whole group, and weights", () =>
    every(({ design, together }) => {
      const may = mayBePrevalence(design);
      expect(only(together).reach).toBe(may ? "prevalence" : "these-pigs");
      for (const [format, text] of Object.entries(textsOf(together))) {
        const said =
          format === "json" ? JSON.stringify(together.estimates.map(({ wording }) => wording)) : text;
        if (!may) expect(said, format).not.toMatch(/prevalence/i);
      }
      if (may) expect(only(together).wording).toContain("prevalence");
      if (may) expect(textsOf(together).all).toContain("prevalence");
    }));

  test("never an interval on a share that is known exactly", () =>
    every(({ design, together }) => {
      const { lower, upper, one_sided, method } = only(together);
      const limits = [lower, upper, method].map((one) => one !== null);
      expect(limits).toEqual(Array<boolean>(3).fill(!isExact(design)));
      if (!isExact(design)) return;
      expect(one_sided).toBeNull();
      for (const score of together.scores) {
        expect([score.mean_interval?.lower, score.mean_interval?.upper]).toEqual([null, null]);
        for (const grade of score.at_or_above ?? []) expect([grade.lower, grade.upper]).toEqual([null, null]);
      }
      // Groups that cannot be added up are told each for itself, with the limits of its own.
      if (design.basis === "random" && design.groups === "2 groups" && design.visits === "1 visit") return;
      for (const [format, text] of Object.entries(textsOf(together)))
        if (format !== "json" && format !== "csv")
          expect(text, format).not.toMatch(/to [<>]?[\d.]+ %|95 %|confidence|\bCI\b/);
    }));

  test("never 'changed' from one visit", () =>
    every(({ design, together, apart }) => {
      if (design.visits !== "1 visit") return;
      for (const report of [together, apart])
        for (const text of Object.values(textsOf(report)))
          expect(text).not.toMatch(/chang|better|worse|improve|fewer than before/i);
    }));

  test("one pig gives no percentage", () =>
    every(({ design, together }) => {
      if (!design.pigs.startsWith("one pig") || design.groups !== "1 group" || design.visits !== "1 visit")
        return;
      expect(only(together).proportion).toBeNull();
      const { json: _, csv: __, plot, ...texts } = textsOf(together);
      for (const [format, text] of Object.entries(texts)) expect(text, format).not.toContain("%");
      expect(plot).not.toMatch(/1 +[\d.]+ %/);
    }));

  test("slaughter changes no sentence", () => {
    const bySlaughter = new Map(reports.map((one) => [JSON.stringify(one.design), one]));
    every(({ design, together }) => {
      if (design.slaughtered === "at a visit") return;
      const same = bySlaughter.get(JSON.stringify({ ...design, slaughtered: "at a visit" }));
      expect(only(together).wording).toBe(same && only(same.together).wording);
    });
  });

  test("no format has a line over 80 columns", () =>
    every(({ together, apart }) => {
      for (const report of [together, apart]) {
        const { text = "", quiet = "", all = "", plot = "" } = textsOf(report);
        for (const line of [text, quiet, all, plot].join("\n").split("\n"))
          expect(displayWidth(line)).toBeLessThanOrEqual(80);
      }
    }));
});

/** Where all that there is of a condition holds. */
const whatever = [
  { name: "any basis", all: [...Object.keys(selectionBases), unrecorded] },
  { name: "any groups", all: ["1 group", "2 groups"] },
  { name: "any head counts", all: ["head counts known", "no head counts", "more in the group"] },
  { name: "any visits", all: ["1 visit", "2 visits"] },
  { name: "any pigs", all: Object.keys(seen) },
];

/** Conditions in few lines: those that differ in one part only are said together, part by part. */
function conditions(some: readonly (readonly string[])[]): string[] {
  const parts = some[0]?.length ?? 0;
  let lines: string[][][] = some.map((when) => when.map((word) => [word]));
  for (let at = parts - 1; at >= 0; at--)
    lines = [...grouped(lines, (line) => JSON.stringify(line.with(at, []))).values()].map((same) =>
      same[0].with(at, [...new Set(same.flatMap((line) => line[at] ?? []))]),
    );
  const anyOf = (words: readonly string[]): string =>
    whatever.find(({ all }) => all.length === words.length && all.every((word) => words.includes(word)))
      ?.name ?? words.join(" or ");
  return lines.map((line) => `when ${line.map(anyOf).join("; ")}`);
}

/** The title and the numbers of a sentence are those of the design. */
const withoutNumbers = (text: string): string =>
  text
    .replace(/^Snout grade 2 or more: /, "")
    .replaceAll(/95 %/g, "level")
    .replaceAll(/[<>]?\b\d+(?:\.\d+)?\b/g, "#")
    .replaceAll("level", "95 %");

/** Each sentence with the conditions under which it stands. */
function listed(said: readonly { readonly text: string; readonly when: readonly string[] }[]): string {
  return [...grouped(said, ({ text }) => withoutNumbers(text))]
    .flatMap(([text, some]) => [
      ...wrapped(text, "", 80, "  "),
      ...conditions(some.map(({ when }) => when)).flatMap((line) => wrapped(line, "    ", 80)),
    ])
    .map((line) => `${line}\n`)
    .join("");
}

/** Slaughter is left out: it changes no sentence, as is tested above. */
const whenOf = ({ basis, groups, heads, visits, pigs }: Design): string[] => [
  basis,
  groups,
  heads,
  visits,
  pigs,
];

/** A row of grades in each pen of one group. */
const penned = (...pens: readonly (readonly number[])[]) =>
  archiveOf({
    "farm.yaml": { ...farm("alder"), groups: { a: { head: 200 } } },
    "v/visit.yaml": { format: 1, visit: "visit-1", date: "2026-03-14" },
    ...Object.fromEntries(
      pens.flatMap((grades, pen) =>
        grades.map((grade, index) => [
          `v/${pen}-${index}.yaml`,
          {
            format: 1,
            case: `${pen}-${index}`,
            pig: { group: "a", age: "60 d", pen: pen + 1 },
            selection: { basis: "random" },
            respiratory: { turbinates: entry(grade) },
          },
        ]),
      ),
    ),
  }).cases;

/** What score says of grades on a scale. */
function scoreSentences(organ: string, scale: string, entries: readonly object[]): string[] {
  const [system = "", key = ""] = organ.split(".");
  const archive = archiveOf(
    Object.fromEntries(
      entries.map((one, index) => [
        `${index}.yaml`,
        { format: 1, case: `p${index}`, [system]: { [key]: one } },
      ]),
    ),
  );
  const { cases } = scoreCases(archive, { scales: [scale] });
  const [, ...lines] = scoreText(cases, archive, plain, { all: true, quiet: true, width: 400 })
    .trimEnd()
    .split("\n");
  return lines.map((line) => line.trim().replace(/^.*?: /, ""));
}

test("the list of all sentences", async () => {
  const estimates = reports.map(({ design, together }) => ({
    text: only(together).wording,
    when: whenOf(design),
  }));
  const answers = reports.flatMap(({ design, apart }) =>
    apart.answers.map(({ title, text }) => ({ text: `${title}: ${text}`, when: whenOf(design) })),
  );
  const some: Design = {
    basis: "random",
    slaughtered: "at a visit",
    groups: "1 group",
    heads: "head counts known",
    visits: "1 visit",
    pigs: "some affected",
  };
  const questions = ["fewer", "more", "either", undefined].map((direction) => {
    const question = { indicator: "snout-grade-2-up", ...(direction !== undefined && { direction }) };
    const [answer] = herdEstimates(casesOf(some, question), asked).answers;
    return {
      text: `${answer?.title}: ${answer?.text}`,
      when: [`the visit asks ${direction ?? "how common"}`],
    };
  });
  const known = { sensitivity: 0.9, specificity: 0.98 };
  const counts = { sensitivity: { right: 45, of: 50 }, specificity: { right: 98, of: 100 } };
  const options: readonly [string, HerdOptions, Partial<Design>][] = [
    ["--finite", { finite: true }, {}],
    ["--finite", { finite: true }, { heads: "no head counts" }],
    ["--finite", { finite: true }, { pigs: "none affected" }],
    ["--finite", { finite: true }, { pigs: "all affected" }],
    ["--cluster pen, no pen recorded", { cluster: "pen" }, {}],
    ["--cluster room", { cluster: "room" }, {}],
    ["--cluster room", { cluster: "room", by: [] }, { groups: "2 groups" }],
    ["--sensitivity and --specificity as shares", { test: known }, {}],
    ["--sensitivity and --specificity as shares", { test: known }, { pigs: "none affected" }],
    ["--sensitivity and --specificity as counts", { test: counts }, {}],
    ["--sensitivity and --specificity as counts", { test: counts }, { pigs: "none affected" }],
    ["--sensitivity and --specificity as shares", { test: known }, { basis: "clinical" }],
    ["--sensitivity and --specificity as shares", { test: known }, { basis: "complete" }],
  ];
  const chosen = options.map(([name, option, change]) => {
    const design = { ...some, ...change };
    const { estimates: found } = herdEstimates(casesOf(design), { ...asked, ...option });
    return { text: found[0]?.wording ?? "", when: [name, ...whenOf(design)] };
  });
  const six = [
    [3, 2, 0],
    [3, 3, 3],
    [0, 0, 0],
    [0, 3, 0],
    [2, 0, 3],
    [0, 0, 2],
  ] as const;
  const pens: readonly [string, readonly (readonly number[])[], HerdOptions][] = [
    ["pigs share pens", six, {}],
    ["--cluster pen, six pens", six, { cluster: "pen" }],
    ["--cluster pen, three pens", six.slice(0, 3), { cluster: "pen" }],
    ["--cluster pen, one pen", six.slice(0, 1), { cluster: "pen" }],
    [
      "--cluster pen, none affected",
      [
        [0, 1],
        [0, 0],
        [1, 0],
      ],
      { cluster: "pen" },
    ],
    [
      "--cluster pen, all affected",
      [
        [2, 3],
        [2, 2],
        [3, 2],
      ],
      { cluster: "pen" },
    ],
    [
      "--cluster pen, all pens alike",
      [
        [0, 2],
        [0, 2],
        [2, 0],
      ],
      { cluster: "pen" },
    ],
  ];
  const byPen = pens.map(([name, grades, option]) => ({
    text: herdEstimates(penned(...grades), { ...asked, ...option }).estimates[0]?.wording ?? "",
    when: [name],
  }));
  const graded = (...grades: readonly number[]) =>
    grades.map((grade) => ({ section: "premolar-1", grades: { "maff-1978": grade } }));
  const ulcers = (...some: readonly object[]) => some;
  const abscesses = (...grades: readonly number[]) =>
    grades.map((grade) => ({ grades: { "carcass-abscess": grade } }));
  const ofScore: readonly [string, string, string, readonly object[]][] = [
    ["several pigs, a scale with classes", "respiratory.turbinates", "maff-1978", graded(0, 1, 3)],
    ["all the same", "respiratory.turbinates", "maff-1978", graded(1, 1)],
    ["one pig", "respiratory.turbinates", "maff-1978", graded(2)],
    ["some not graded", "respiratory.turbinates", "maff-1978", [...graded(1, 2), { section: "premolar-1" }]],
    ["grades that are names", "external.subcutis", "carcass-abscess", abscesses(0, 2, 4)],
    [
      "some with a range only",
      "stomach.pars_oesophagea",
      "swaby-gregory-2012",
      ulcers({ keratin: 30, erosion: 0 }, { keratin: 0, erosion: 0, ulcer: 0 }, { ulcer: 10 }),
    ],
  ];
  const scored = ofScore.flatMap(([name, organ, scale, entries]) =>
    scoreSentences(organ, scale, entries).map((text) => ({ text, when: [name] })),
  );
  const combined = [
    {},
    { heads: "no head counts" },
    { groups: "1 group" },
    { basis: "clinical" },
    { basis: "complete" },
    { pigs: "none examined" },
  ].map((change) => {
    const design = { ...some, groups: "2 groups", ...change } as Design;
    const report = herdEstimates(casesOf(design), { ...asked, combine: true });
    return { text: report.combined?.[0]?.wording ?? "", when: ["--combine", ...whenOf(design)] };
  });
  const ofScores = (wordsOf: (score: HerdScores) => readonly (string | null | undefined)[]) =>
    reports.flatMap(({ design, together }) =>
      together.scores.flatMap((score) =>
        wordsOf(score).flatMap((text) => (text == null ? [] : [{ text, when: whenOf(design) }])),
      ),
    );
  const indexWords = ({ indices }: HerdScores) =>
    indices.flatMap(({ no_class: withheld, caution }) => [withheld, caution]);
  const visited = (...counts: readonly (readonly [number, number])[]) =>
    Object.fromEntries(
      counts.map(([yes, of], at) => [`farm${"abcdefgh"[at]}`, { "2026-09-01": affected(yes, of) }]),
    );
  const alike = [
    [3, 30],
    [6, 30],
    [4, 30],
    [2, 30],
    [5, 30],
  ] as const;
  const ill = { "2026-09-01": affected(2, 4, { basis: "clinical" }) };
  const manyFarms: readonly [string, Parameters<typeof practiceOf>[0]][] = [
    ["one farm stands out, pens shared in another", examplePractice],
    ["two farms stand out", visited(...alike, ...alike.slice(0, 1), [29, 30], [30, 30])],
    ["none stands out", visited(...alike)],
    ["four farms", visited(...alike.slice(1))],
    ["one farm can be ranked", { ...visited([3, 30]), ill }],
    ["no farm can be ranked", { ill, other: ill }],
    [
      "another place",
      { ...visited(...alike), line: { "2026-09-01": affected(1, 9, { manner: "slaughtered" }) } },
    ],
    [
      "another examiner",
      { ...visited(...alike), teal: { "2026-09-01": affected(1, 9, { examiner: "J. Teal" }) } },
    ],
    ["three pens", { ...visited(...alike), pens: { "2026-09-01": inPens([2, 4], [0, 4], [1, 4]) } }],
    [
      "six pens, none affected",
      { ...visited(...alike), pens: { "2026-09-01": inPens(...six.map(() => [0, 3] as const)) } },
    ],
  ];
  const ofFarms = manyFarms.flatMap(([name, visits]) => {
    const { rankings } = compareFarms(archiveOf(practiceOf(visits)), { indicators: ["snout-grade-2-up"] });
    return rankings.flatMap((one) =>
      [one.answer, ...(one.farms.length < 2 ? [] : cautionsOf(one))].map((text) => ({ text, when: [name] })),
    );
  });
  const parts = [
    ["Sentences that may be quoted (wording), of all pigs together", listed(estimates)],
    ["The answer of each visit (herd)", listed(answers)],
    ["Where a visit asked something", listed(questions)],
    ["With options, and of pigs from pens", listed([...chosen, ...combined, ...byPen])],
    ["What score says of a scale", listed(scored)],
    ["Why a mean has no interval", listed(ofScores((score) => [score.mean_interval?.reason]))],
    ["Why an index has no class, and what to mind of one", listed(ofScores(indexWords))],
    ["Many farms (compare --between farms)", listed(ofFarms)],
  ];
  const text = parts.map(([head, body]) => `${head}\n\n${body}`).join("\n");
  await expect(text).toMatchFileSnapshot("../fixtures/golden/said-of-numbers.txt");
});
