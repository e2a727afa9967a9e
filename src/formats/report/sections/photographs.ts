/** The photographs of the pigs, with what the case says of them. */
import { organById, systems } from "../../../knowledge/index.ts";
import type {
  Audience,
  ReportPhotograph,
  ReportPig,
  ReportResult,
  ReportWords,
} from "../../../report/index.ts";
import { text } from "../../page/blocks.ts";
import type { Part } from "../blocks.ts";
import { latest } from "./found.ts";

/** So many are looked at by those who want to know what to do. */
const mostForFarm = 4;

interface OfPig {
  readonly pig: ReportPig;
  readonly photograph: ReportPhotograph;
}

/** Those that a reader gets: for the farm a few, one an organ, of what was found before what was not. */
export function photographsFor(report: ReportResult, audience: Audience): readonly OfPig[] {
  const all = latest(report).pigs.flatMap((pig) =>
    pig.photographs.map((photograph) => ({ pig, photograph })),
  );
  if (audience !== "farm" || all.length <= mostForFarm) return all;
  const rank = ({ pig, photograph: { shows } }: OfPig): number =>
    pig.findings.some(({ organ }) => organ === shows) ? 0 : 1;
  const told = new Set<string | null>();
  const [firsts, others]: [OfPig[], OfPig[]] = [[], []];
  for (const one of all.toSorted((a, b) => rank(a) - rank(b))) {
    (told.has(one.photograph.shows) ? others : firsts).push(one);
    told.add(one.photograph.shows);
  }
  return [...firsts, ...others].slice(0, mostForFarm);
}

export const photographs: Part = (report, words, { audience, dress }) => {
  const shown = photographsFor(report, audience);
  if (shown.length === 0) return [];
  const all = latest(report).pigs.reduce((sum, pig) => sum + pig.photographs.length, 0);
  const blocks = shown.map(({ pig, photograph }) => ({
    kind: "photograph" as const,
    caption: captionOf(pig, photograph, words),
    file: photograph.file,
    shown: dress.photographs.get(photograph.sha256 ?? "") ?? null,
  }));
  const isWhole = blocks.every((block) => block.shown !== null && "embedded" in block.shown);
  return [
    ...(shown.length < all ? [text(words.say("photographs_some", { shown: shown.length, all }))] : []),
    ...(isWhole ? [] : [text(words.say("photographs_linked"))]),
    ...blocks,
  ];
};

/** `alder-2026-03-14-03, lungs: grey, firm, cranioventral` */
function captionOf({ id }: ReportPig, { shows, note }: ReportPhotograph, words: ReportWords): string {
  const what = shows === null ? [] : [nameOf(shows, words)];
  return [[id, ...what].join(", "), ...(note === null ? [] : [note])].join(": ");
}

function nameOf(shows: string, words: ReportWords): string {
  if (organById(shows) !== undefined) return words.name("organs", shows);
  if (systems.some(({ id }) => id === shows)) return words.name("systems", shows);
  return shows === "carcass" ? words.say("carcass") : shows;
}
