/** `carcase report`: what was found, how sure it is, whether it got better and what comes next, as a page to hand over. */
import { createHash } from "node:crypto";
import { basename, dirname, join } from "node:path";
import { openAlarmsOf } from "../alarms/index.ts";
import type { Archive, Case } from "../cases/index.ts";
import { pageMark } from "../formats/page/html-page.ts";
import { outputJson } from "../formats/page/json.ts";
import { portablePath } from "../formats/page/portable-path.ts";
import { type Dress, plain } from "../formats/report/dress.ts";
import { reportHtml } from "../formats/report/html.ts";
import { reportMarkdown } from "../formats/report/markdown.ts";
import { archivePages } from "../formats/report/pages.ts";
import {
  type Audience,
  audiences,
  makeReport,
  type ReportResult,
  type ReportWords,
  reportWords,
} from "../report/index.ts";
import { isLanguage, languages } from "../sheet/index.ts";
import { count, listing } from "../words/listing.ts";
import type { CommonOptions } from "./options.ts";
import { oneOf } from "./parsers.ts";
import { printPdf } from "./print-pdf.ts";
import {
  linkedPhotographs,
  type ReadPhotographs,
  readPhotographs,
  shownPhotographs,
} from "./report-photographs.ts";
import { practiceOf } from "./report-practice.ts";
import type { Run } from "./run.ts";
import { Unusable } from "./unusable.ts";
import { UsageError } from "./usage-error.ts";
import { version } from "./version.ts";
import { writeFolder } from "./write-file.ts";

export interface ReportOptions extends CommonOptions {
  readonly for: string;
  readonly language: string;
  readonly pages?: string;
  readonly photos: string;
}

/** In the page itself, or where a link leads. */
const placesOfPhotos = ["embed", "link"] as const;

type Write = (report: ReportResult, audience: Audience, words: ReportWords, dress: Dress) => void;

export async function report(run: Run<ReportOptions>): Promise<number> {
  const { language, pages } = run.options;
  const audience: Audience = oneOf("--for", run.options.for, audiences, "reader");
  if (!isLanguage(language))
    throw new UsageError(`--language: there is no "${language}"; write ${listing(languages, "or")}`);
  const photos = oneOf("--photos", run.options.photos, placesOfPhotos, "place");
  const write = writerOf(run);
  const archive = await run.countable();
  if (openAlarmsOf(archive).length > 0) {
    run.say("no report while an alarm stands; record what the authority says, and write it then");
    return 1;
  }
  const words = reportWords(language);
  const [first] = archive.cases;
  if (first === undefined) return run.end();
  try {
    const photographs = readPhotographs(archive, run.paths);
    const { digests } = photographs;
    if (pages !== undefined) writePages(archive, pages, words, photographs, run);
    else {
      const made = makeReport(archive, { version, files: filesOf(archive, archive.cases), digests });
      const asked = [made, words, audience] as const;
      const dress =
        run.options.format === "json"
          ? plain
          : {
              ...(await practiceOf(first.settings, asked)),
              photographs: await shownPhotographs(run, asked, photographs, photos === "embed"),
            };
      write(made, audience, words, dress);
    }
  } catch (error) {
    if (!(error instanceof Unusable)) throw error;
    run.faults(error.faults);
  }
  return run.end();
}

/** @throws UsageError for what does not go together */
function writerOf(run: Run<ReportOptions>): Write {
  const { output, format, pages } = run.options;
  if (pages !== undefined && output !== undefined)
    throw new UsageError("--pages writes a folder of pages; leave out -o");
  if (
    output === undefined &&
    pages === undefined &&
    (format === "pdf" || (format === "html" && process.stdout.isTTY === true))
  )
    throw new UsageError(`a report is a page: write -o report.${format}, and open that file`);
  return run.format<Write>({
    html: (made, audience, words, dress) =>
      run.write(reportHtml(made, audience, words, [], dress), { sample: pageMark("report") }),
    markdown: (made, audience, words, dress) => writeMarkdown(made, audience, words, dress, run),
    json: (made) => run.write(outputJson("report", 1, made)),
    pdf: (made, audience, words, dress) => writePdf(reportHtml(made, audience, words, [], dress), run),
  });
}

/** The figures go into a folder beside the text; on standard output the text stands alone. */
function writeMarkdown(
  made: ReportResult,
  audience: Audience,
  words: ReportWords,
  dress: Dress,
  run: Run<ReportOptions>,
): void {
  const { output } = run.options;
  const folder = output === undefined ? "figures" : `${basename(output).replace(/\.[^.]*$/, "")}-figures`;
  const { text, figures } = reportMarkdown(made, audience, words, folder, dress);
  if (output !== undefined)
    writeFolder(
      join(dirname(output), folder),
      figures.map(({ name, svg }) => ({ name, text: svg })),
      { file: "index.html", isOurs: (names) => names.every((name) => name.endsWith(".svg")) },
    );
  run.write(text);
}

function writePdf(html: string, run: Run<ReportOptions>): void {
  const pdf = printPdf(html);
  for (const { file, option } of run.output)
    run.replace(file, pdf, (there) =>
      there === undefined || there.subarray(0, 5).toString() === "%PDF-"
        ? undefined
        : `${option}: that file is already there and is no PDF; nothing was written. Give the report a name of its own.`,
    );
}

function writePages(
  archive: Archive,
  folder: string,
  words: ReportWords,
  photographs: ReadPhotographs,
  run: Run<ReportOptions>,
): void {
  let pages = 0;
  const counted = function* () {
    for (const page of archivePages(archive, {
      version,
      words,
      filesOf: (cases) => filesOf(archive, cases),
      digests: photographs.digests,
      dress: { ...plain, photographs: linkedPhotographs(photographs, folder) },
    })) {
      pages++;
      yield page;
    }
  };
  const written = writeFolder(folder, counted(), {
    file: "index.html",
    isOurs: (names, index) => names.every(isPage) && index.includes(pageMark("report")),
  });
  if (run.options.quiet !== true)
    run.say(
      `${folder}: ${count(pages, "file")}, ${written === pages ? "all" : written} written; open ${join(folder, "index.html")}`,
    );
}

const isPage = (name: string): boolean =>
  /^(?:index|(?:farm|visit|pig|organ)-.+)\.html$|^search\.js$/.test(name);

/** Every file that some cases rest on, with the digest of what was read. */
function filesOf({ visits, farms }: Archive, cases: readonly Case[]): ReportResult["files"] {
  const used = new Set(cases.flatMap(({ visit, farm }) => [visit?.file, farm?.file]));
  const above = [...farms, ...visits].filter(({ file }) => used.has(file));
  const texts = new Map(
    [...above, ...cases].map(({ file, document }) => [portablePath(file), document.text]),
  );
  return [...texts]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([file, text]) => ({ file, sha256: createHash("sha256").update(text).digest("hex") }));
}
