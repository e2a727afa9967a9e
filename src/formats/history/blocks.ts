/** What changed in records, and the history of a case, for people: a sentence a change. */
import { type RecordChange, type RecordKind, recordWords, sentence } from "../../history/index.ts";
import { count, listing } from "../../words/listing.ts";
import { type Block, heading, list, text } from "../page/blocks.ts";

/** What is set against what, and what was found. */
export interface Differences {
  /** As it was typed: a revision, or a file. */
  readonly from: string;
  /** Null where it is the folder as it is. */
  readonly to: string | null;
  readonly records: readonly RecordChange[];
  /** Files that changed and are no records of ours. */
  readonly others: readonly string[];
}

/** One state of a case that was kept, with what changed in it. */
export interface LogEntry {
  /** Undefined for what is not committed yet. */
  readonly commit:
    | { readonly id: string; readonly author: string; readonly at: string; readonly subject: string }
    | undefined;
  /** Whether it brought two lines of work together: its changes are then those that neither brought. */
  readonly isMerge: boolean;
  readonly record: RecordChange;
}

export interface CaseLog {
  readonly id: string;
  readonly file: string;
  /** The newest first. */
  readonly entries: readonly LogEntry[];
}

const kindTitles: Readonly<Record<RecordKind, string>> = {
  case: "Pig",
  visit: "Visit",
  farm: "Farm",
  results: "Results",
};

export function differenceBlocks({ from, to, records, others }: Differences, quiet = false): Block[] {
  const against = `from ${from} to ${to ?? "the files as they are"}`;
  const number = records.reduce(
    (sum, { change, changes }) => sum + (change === "changed" ? changes.length : 1),
    0,
  );
  const end =
    records.length === 0
      ? `No record changed ${against}.`
      : `${count(number, "change")} in ${count(records.length, "record")} ${against}.`;
  return [
    ...records.flatMap(recordBlocks),
    ...(quiet
      ? []
      : [
          text(end, { indent: 0, quiet: true }),
          ...(others.length === 0
            ? []
            : [
                text(
                  `${count(others.length, "other YAML file")} changed, no ${others.length === 1 ? "record" : "records"}: ${listing(others)}.`,
                  {
                    indent: 0,
                    quiet: true,
                  },
                ),
              ]),
        ]),
  ];
}

const recordBlocks = (record: RecordChange): Block[] => [
  heading(`${record.id} · ${record.file}`),
  ...list(null, sentencesOf(record), { bullet: "", indent: 0 }),
];

/** Everything that became of a record, a sentence each. */
export function sentencesOf({ change, kind, record, movedFrom, changes }: RecordChange): string[] {
  const who = recordWords(kind, record);
  if (change !== "changed")
    return [
      `${kindTitles[kind]} ${change === "added" ? "added" : "taken out"}${who === "" ? "" : `: ${who}`}`,
    ];
  const moved = movedFrom === undefined ? [] : [`The file was ${movedFrom}`];
  const said = [...moved, ...changes.map((one) => sentence(kind, one))];
  return said.length === 0 ? ["Nothing but comments or the layout"] : said;
}

export function logBlocks({ id, file, entries }: CaseLog): Block[] {
  return [
    heading(`${id} · ${file}`),
    ...entries.flatMap(({ commit, isMerge, record }) => [
      heading(
        commit === undefined ? "not committed yet" : [commit.at, commit.author, commit.subject].join(" · "),
        {
          level: 3,
        },
      ),
      ...list(
        null,
        isMerge && record.changes.length === 0
          ? ["Two lines of work were brought together"]
          : sentencesOf(record),
      ),
    ]),
  ];
}
