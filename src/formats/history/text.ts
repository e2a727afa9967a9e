/** Differences and histories as text of 80 columns, as Markdown, and as JSON. */
import { formatPath, type Path } from "../../cases/index.ts";
import { type Change, type RecordChange, sentence } from "../../history/index.ts";
import { outputJson } from "../page/json.ts";
import { markdownOf } from "../page/markdown.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { type CaseLog, type Differences, differenceBlocks, logBlocks, sentencesOf } from "./blocks.ts";

export const differencesText = (found: Differences, style: Style, width: number, quiet: boolean): string =>
  textOf(differenceBlocks(found, quiet), style, width);

export const differencesMarkdown = (found: Differences): string => markdownOf(differenceBlocks(found));

export const differencesJson = ({ from, to, records, others }: Differences): string =>
  outputJson("diff", 1, { from, to, records: records.map(recordJson), other_files: others });

export const logText = (log: CaseLog, style: Style, width: number): string =>
  textOf(logBlocks(log), style, width);

export const logMarkdown = (log: CaseLog): string => markdownOf(logBlocks(log));

export const logJson = ({ id, file, entries }: CaseLog): string =>
  outputJson("log", 1, {
    case: id,
    file,
    entries: entries.map(({ commit, record }) => ({
      commit: commit?.id ?? null,
      author: commit?.author ?? null,
      at: commit?.at ?? null,
      subject: commit?.subject ?? null,
      ...recordJson(record),
    })),
  });

const recordJson = (record: RecordChange) => ({
  kind: record.kind,
  id: record.id,
  file: record.file,
  moved_from: record.movedFrom ?? null,
  change: record.change,
  says: sentencesOf(record),
  changes: record.changes.map((one) => ({
    change: one.change,
    path: formatPath(pathOf(one)),
    before: one.before ?? null,
    after: one.after ?? null,
    says: sentence(record.kind, one),
  })),
});

const pathOf = ({ at }: Change): Path => at.map((step) => (typeof step === "string" ? step : step.index));
