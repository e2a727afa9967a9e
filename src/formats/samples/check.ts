/** What was due and not taken, and for what each container is still good. */
import { containerNames, materialTitle, spell, testNames } from "../../record/index.ts";
import type { ContainerLeft, MissingSample, Reckoned, SampleCheck, TestLeft } from "../../samples/index.ts";
import { listing } from "../../words/listing.ts";
import { type Block, heading, list, table, text } from "../page/blocks.ts";
import { csv } from "../page/csv.ts";
import { outputJson } from "../page/json.ts";
import { markdownOf } from "../page/markdown.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { organName, shortName } from "./names.ts";

export const checkText = (checks: readonly SampleCheck[], style: Style, width: number): string =>
  textOf(checks.flatMap(blocksOf), style, width);
export const checkMarkdown = (checks: readonly SampleCheck[]): string => markdownOf(checks.flatMap(blocksOf));

function blocksOf({ visit, due, missing, untouched, once, reckoned }: SampleCheck): Block[] {
  const lines = [
    ...(untouched.length === 0
      ? []
      : [`Nothing was taken of ${listing(untouched.map(({ id }) => shortName(id)))}.`]),
    ...(once.length === 0 ? [] : [`Not taken of the pen: ${listing(once.map(materialTitle))}.`]),
  ];
  const kinds = together(missing);
  const late = kinds.filter(isLate);
  return [
    heading(`${visit.id}  ${due - missing.length} of ${due} samples due were taken`),
    ...lines.map((line) => text(line)),
    ...table(
      [
        { head: "due and not taken" },
        { head: "into" },
        { head: "for" },
        { head: "pigs" },
        { head: "time left" },
      ],
      kinds
        .filter((kind) => !isLate(kind))
        .map(({ pigs, due: { from, into }, tests, left }) => [
          organName(from),
          containerNames([into]).replace("swab in ", ""),
          tests.map((test) => testNames([test])).join(", "),
          pigs.join(" "),
          left === undefined ? "" : duration(left),
        ]),
    ),
    ...reckoned.flatMap(reckonedBlocks),
    ...(late.length === 0 ? [] : [text(tooLate(late))]),
  ];
}

type Kind = Pick<MissingSample, "due" | "tests" | "left"> & { readonly pigs: readonly string[] };

const isLate = ({ left }: Kind): boolean => left !== undefined && left <= 0;

/** Nobody can do anything about them today: one sentence, for the next visit. */
function tooLate(kinds: readonly Kind[]): string {
  const organs = new Set(kinds.map(({ due: { from } }) => organName(from).toLowerCase()));
  const samples = kinds.reduce((sum, { pigs }) => sum + pigs.length, 0);
  return `Due, not taken and too late now: ${samples === 1 ? "a sample" : `${samples} samples`} of ${listing([...organs])}.`;
}

/** The same sample of several pigs is one line, with the time of the pig that has the least. */
function together(missing: readonly MissingSample[]): Kind[] {
  const lines = new Map<string, Kind>();
  for (const { one, due, tests, left } of missing) {
    const key = JSON.stringify([due.from, due.into, tests]);
    const known = lines.get(key) ?? { pigs: [], due, tests, left };
    const least = left === undefined ? known.left : Math.min(left, known.left ?? left);
    lines.set(key, { ...known, pigs: [...known.pigs, shortName(one.id)], left: least });
  }
  return [...lines.values()];
}

/** Days from two on: nobody counts 166 hours. */
const duration = (hours: number): string => (hours >= 48 ? `${Math.floor(hours / 24)} d` : spell(hours));

function reckonedBlocks({ parcel, at, containers }: Reckoned): Block[] {
  const when = at.replace("T", " ");
  return [
    heading(
      parcel === undefined
        ? `Still good for, on ${when}`
        : `Still good for, when ${parcel} arrives on ${when}`,
      { level: 3 },
    ),
    ...table(
      [{ head: "no" }, { head: "what" }, { head: "good for" }],
      containers.map((one) => [
        one.container.id,
        `${one.container.what}, ${containerNames([one.container.into ?? ""]) || "no container"}`,
        one.tests.map(goodFor).join(", ") || "no test is written down",
      ]),
    ),
    ...list("Mind", notesOf(containers), { indent: 2, bullet: "- " }),
  ];
}

function goodFor({ test, left, isTimed, worth }: TestLeft): string {
  const name = testNames([test]);
  const lost = worth.worth === "doubtful" || worth.worth === "reduced" ? ` ${worth.worth}` : "";
  if (!isTimed) return `${name}${lost || " keeps"}`;
  if (left === undefined) return `${name}${lost} (time not written)`;
  return left <= 0 ? `${name}${lost} over` : `${name}${lost} ${duration(left)}`;
}

/** Less than this is told with what to do. */
const soon = 12;

/** Why a test is worth less, and what to do where its time runs out; the same of several containers once. */
function notesOf(containers: readonly ContainerLeft[]): string[] {
  const notes = new Map<string, { readonly ids: Set<string>; readonly tests: Set<string> }>();
  const note = (says: string, id: string, test: string): void => {
    const known = notes.get(says) ?? { ids: new Set(), tests: new Set() };
    notes.set(says, { ids: known.ids.add(id), tests: known.tests.add(testNames([test])) });
  };
  for (const { container, tests } of containers)
    for (const { test, left, after, worth } of tests) {
      for (const reason of worth.reasons) note(reason, container.id, test);
      if (after !== undefined && left !== undefined && left < soon)
        note(`${left <= 0 ? "time is over" : "time ends within hours"}: ${after}`, container.id, test);
    }
  return [...notes].map(([says, { ids, tests }]) => `${listing([...ids])}, ${listing([...tests])}: ${says}`);
}

export const checkJson = (checks: readonly SampleCheck[]): string =>
  outputJson("samples-check", 1, {
    visits: checks.map(({ visit, due, missing, untouched, once, reckoned }) => ({
      visit: visit.id,
      due,
      missing: missing.map(({ one, due: { from, into, step, where, sets }, tests, left }) => ({
        case: one.id,
        from,
        into,
        tests,
        step,
        where,
        sets,
        hours_left: left ?? null,
      })),
      untouched: untouched.map(({ id }) => id),
      once,
      samples: samplesOf(reckoned),
    })),
  });

const samplesOf = (reckoned: readonly Reckoned[]) =>
  reckoned.flatMap(({ parcel, at, containers }) =>
    containers.flatMap(({ container, tests }) =>
      tests.map(({ test, left, worth, after }) => ({
        sample: container.id,
        case: container.pig,
        from: container.from,
        into: container.into ?? null,
        test,
        parcel: parcel ?? null,
        at,
        hours_left: left ?? null,
        worth: worth.worth,
        reasons: worth.reasons,
        after: after ?? null,
      })),
    ),
  );

/** A line a test of a sample that was taken, and a line a sample that was not. */
export const checkCsv = (checks: readonly SampleCheck[]): string =>
  csv(
    ["visit", "state", "case", "sample", "from", "into", "test", "at", "hours_left", "worth"],
    checks.flatMap(({ visit, missing, reckoned }) => [
      ...missing.flatMap(({ one, due, tests, left }) =>
        tests.map((test) => [
          visit.id,
          "missing",
          one.id,
          null,
          due.from,
          due.into,
          test,
          null,
          rounded(left),
          null,
        ]),
      ),
      ...samplesOf(reckoned).map((one) => [
        visit.id,
        "taken",
        one.case,
        one.sample,
        one.from,
        one.into,
        one.test,
        one.at,
        rounded(one.hours_left ?? undefined),
        one.worth,
      ]),
    ]),
  );

const rounded = (hours: number | undefined): number | null =>
  hours === undefined ? null : Math.round(hours * 60) / 60;
