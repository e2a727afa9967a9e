/** How like the published outbreaks of a disease a record is: what they had that it has, and how often. */
import { type PublishedOutbreak, publishedOutbreaks } from "../knowledge/diseases.ts";
import type { Subject } from "../patterns/index.ts";
import { fact, findingsOf, isLesion } from "../record/index.ts";
import { grouped } from "../words/grouped.ts";
import { casesOf } from "./statements.ts";

/** How many outbreaks had each thing. */
interface Tally {
  readonly outbreaks: number;
  readonly had: ReadonlyMap<string, number>;
}

export interface Published {
  readonly all: Tally;
  readonly of: ReadonlyMap<string, Tally>;
}

/** Something that the record has, and in how many of the outbreaks of a disease it was told. */
export interface Told {
  /** An organ with a lesion, an organ and a process, or a sign. */
  readonly what: string;
  readonly outbreaks: number;
  /** How many times as often as in all published outbreaks. */
  readonly times: number;
}

export interface Likeness {
  /** Published outbreaks of the disease. */
  readonly outbreaks: number;
  /** What they told much more often than all outbreaks. */
  readonly more: readonly Told[];
  /** What they told much less often than all outbreaks. */
  readonly less: readonly Told[];
}

/** How many times as often is much more often, and much less; and how many outbreaks can say that they seldom have something. */
export const likenessLimits = { more: 3, less: 2, outbreaks: 4 } as const;

/** Counts outbreaks by disease; one of several diseases counts for each. */
export function tallied(rows: readonly PublishedOutbreak[]): Published {
  const ids = [...new Set(rows.flatMap(({ diseases }) => diseases))];
  const of = ids.map((id) => [id, tallyOf(rows.filter(({ diseases }) => diseases.includes(id)))] as const);
  return { all: tallyOf(rows), of: new Map(of) };
}

function tallyOf(rows: readonly PublishedOutbreak[]): Tally {
  const had = new Map<string, number>();
  for (const row of rows) for (const what of thingsOf(row)) had.set(what, (had.get(what) ?? 0) + 1);
  return { outbreaks: rows.length, had };
}

type Picture = Pick<PublishedOutbreak, "signs" | "lesions">;

const thingsOf = ({ signs, lesions }: Picture): ReadonlySet<string> =>
  new Set([
    ...signs,
    ...Object.entries(lesions).flatMap(([organ, processes]) => [
      organ,
      ...processes.map((process) => `${organ} ${process}`),
    ]),
  ]);

/** The signs of a record, and the processes of each organ with a lesion. */
export function pictureOf(subject: Subject): Picture {
  const visit = "cases" in subject ? subject : subject.visit;
  const cases = casesOf(subject);
  const signs = [
    ...(visit?.record.signs ?? []),
    ...cases.flatMap(({ record }) => record.selection?.signs ?? []),
  ].filter((sign) => sign !== "none");
  const lesions = cases.flatMap((one) => findingsOf(one)).filter(({ finding }) => isLesion(finding));
  return {
    signs: [...new Set(signs)],
    lesions: Object.fromEntries(
      [...grouped(lesions, ({ organ }) => organ.id)].map(([organ, [first, ...others]]) => [
        organ,
        [first.finding.process, ...others.map(({ finding }) => finding.process)],
      ]),
    ),
  };
}

export const everyOutbreak: Published = tallied(publishedOutbreaks);

/** The published outbreaks of a disease. */
export const outbreaksOf = (id: string): readonly PublishedOutbreak[] =>
  publishedOutbreaks.filter(({ diseases }) => diseases.includes(id));

/**
 * What of the record speaks for a disease by its published outbreaks, and what against. An outbreak that had everything as often as
 * all of them is counted with those of the disease, so that one or two do not decide.
 */
export function likenessOf(id: string, things: readonly string[], { all, of }: Published): Likeness {
  const { outbreaks, had } = of.get(id) ?? { outbreaks: 0, had: new Map<string, number>() };
  const told = things.map((what) => {
    const usual = ((all.had.get(what) ?? 0) + 1) / (all.outbreaks + 2);
    const among = had.get(what) ?? 0;
    return { what, outbreaks: among, times: (among + usual) / (outbreaks + 1) / usual };
  });
  return {
    outbreaks,
    more: told
      .filter((one) => one.outbreaks > 0 && one.times >= likenessLimits.more)
      .sort((a, b) => b.times - a.times),
    less:
      outbreaks < likenessLimits.outbreaks
        ? []
        : told.filter(({ times }) => times <= 1 / likenessLimits.less).sort((a, b) => a.times - b.times),
  };
}

/** What a record has that outbreaks may have had. */
export const recordedThings = fact((subject: Subject): readonly string[] => [
  ...thingsOf(pictureOf(subject)),
]);
