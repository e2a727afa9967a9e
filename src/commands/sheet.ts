/** `carcase sheet`: sheets for the table, as HTML to print. */
import { existsSync } from "node:fs";
import { openAlarmsOf } from "../alarms/index.ts";
import { expectedPigs } from "../begin/index.ts";
import type { Archive, Case } from "../cases/index.ts";
import { csv } from "../formats/page/csv.ts";
import { pigSheets, tallySheet as tallyHtml } from "../formats/sheet/html-sheet.ts";
import { isPaper, papers } from "../formats/sheet/page.ts";
import {
  isLanguage,
  languages,
  pigSheet,
  type TablePig,
  tallyRows,
  tallySheet,
  wordsIn,
} from "../sheet/index.ts";
import { emptyTable } from "../tally/index.ts";
import { count, listing } from "../words/listing.ts";
import { type Asked, placed, wishOf } from "./new.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { withoutFormatFaults } from "./sound-cases.ts";
import { UsageError } from "./usage-error.ts";

export interface SheetOptions extends CommonOptions, Asked {
  readonly tally?: true;
  readonly csv?: true;
  readonly paper: string;
  readonly language: string;
}

/** By this an earlier sheet is known. */
const telling = '<meta name="generator" content="carcase sheet">';

export function sheet(run: Run<SheetOptions>): number {
  const { paper, language, tally, output } = run.options;
  if (run.options.csv && !tally) throw new UsageError("--csv is the table of a tally; write --tally as well");
  if (!isPaper(paper))
    throw new UsageError(`--paper: there is no paper "${paper}"; write ${listing(papers, "or")}`);
  if (!isLanguage(language))
    throw new UsageError(`--language: there is no "${language}"; write ${listing(languages, "or")}`);
  if (output === undefined && process.stdout.isTTY === true && !run.options.csv)
    throw new UsageError("a sheet is a page to print: write -o sheet.html, and open that file in a browser");
  const words = wordsIn(language);
  const pigs = tablePigs(run);
  if (run.failed && pigs.length === 0) return run.end();
  if (run.options.csv) {
    run.write(emptyTally(pigs), { format: "csv" });
    return run.end();
  }
  const text =
    tally === true
      ? tallyHtml(tallySheet(pigs, words), paper, words)
      : pigSheets(
          pigs.map((pig) => pigSheet(pig, words)),
          paper,
          words,
        );
  run.write(text, { sample: telling, format: "html" });
  if (output !== undefined && run.options.quiet !== true) {
    const pages = text.split('<section class="page">').length - 1;
    run.say(
      `${output}: ${count(pigs.length, "pig")} on ${count(pages, "page")}; print it from a browser on ${paper === "a4" ? "A4" : "Letter"} at 100 %${pages > 1 && tally !== true ? ", on both sides" : ""}`,
    );
  }
  return run.end();
}

/** The same pigs as an empty table, for carcase import. */
function emptyTally(pigs: readonly TablePig[]): string {
  const rows = tallyRows(pigs);
  const { head, rows: blank } = emptyTable({
    pigs: rows.map(({ number }) => Number(number)),
    defaults: pigs[0]?.one.visit?.record.defaults,
  });
  return csv(
    head,
    blank.map((cells, row) =>
      cells.map((cell, column) => (head[column] === "tag" ? (rows[row]?.tag ?? null) || null : cell)),
    ),
  );
}

function tablePigs(run: Run<SheetOptions>): TablePig[] {
  const { options, paths } = run;
  const isToCome = [options.pigs, options.healthy, options.draw].some(Boolean);
  if (!isToCome && paths.length > 0) {
    // A file in which an alarm cannot be told has no sheet, and stops the others all the same.
    const archive = run.archive();
    const sound = withoutFormatFaults(archive);
    run.faults(sound.faults);
    return sound.archive.cases.map((one) => ofCase(one, archive));
  }
  if (!isToCome && options.tally !== true)
    throw new UsageError(
      "name the folder of a visit or its cases, such as carcase sheet alder-farm/2026-03-14, or say how many pigs: --pigs 4",
    );
  const [folder, second] = paths;
  if (second !== undefined)
    throw new UsageError(`pigs to come belong to one visit; leave "${second}" out, or --pigs`);
  const asked: Asked = {
    ...options,
    ...(folder !== undefined && { folder }),
    ...(!isToCome && { pigs: "30" }),
    // A tally is mostly one of the line.
    ...(options.tally && options.protocol === undefined && { protocol: "slaughter-check" }),
  };
  const wish = wishOf(asked, false);
  // An alarm of a visit that has begun stands for the pigs that are added to it.
  const alarms =
    folder !== undefined && existsSync(folder) ? openAlarmsOf(run.archive({ paths: [folder] })) : [];
  return placed(wish, expectedPigs).map(({ pig, id, number, one, beside }) => ({
    id: wish.date === "" ? number : id,
    one,
    beside: pig.basis === "comparison" ? [beside] : [],
    alarms,
    tag: pig.tag,
    complaint: wish.complaint,
    date: wish.date,
    examiner: wish.veterinarian,
  }));
}

function ofCase(one: Case, { cases, visits }: Archive): TablePig {
  const mates = cases.filter(({ visit }) => visit !== undefined && visit.file === one.visit?.file);
  return {
    id: one.id,
    one,
    beside:
      one.record.selection?.basis === "comparison"
        ? mates.filter((mate) => mate.ageClass === one.ageClass && mate.due.length > 0)
        : [],
    // What was seen in one pig of a visit stops the others as well.
    alarms: openAlarmsOf({
      cases: mates.length > 0 ? mates : [one],
      visits: visits.filter(({ id }) => id === one.visit?.id),
    }),
  };
}
