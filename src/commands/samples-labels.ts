/** `carcase samples labels`: labels for the containers of a visit, to print. */
import { extname } from "node:path";
import { type Fault, placedFault } from "../cases/index.ts";
import { drawLabel, type LabelWish, labelDocument, labelPage } from "../formats/samples/labels.ts";
import { type CodeKind, labelCodes, labelSheets } from "../knowledge/label-sheets.ts";
import { containersOfCase } from "../record/index.ts";
import { labelOf, onSheets, sameNumbers } from "../sending/labels.ts";
import { count } from "../words/listing.ts";
import type { CommonOptions } from "./options.ts";
import { oneOf, whole } from "./parsers.ts";
import type { Run } from "./run.ts";
import { asksForSamples } from "./samples-asked.ts";
import { UsageError } from "./usage-error.ts";

export interface SampleLabelsOptions extends CommonOptions {
  readonly sheet: string;
  readonly code: string;
  readonly start?: string;
  readonly copies?: string;
  readonly edges?: true;
}

const title = "Labels of samples";
/** By this line earlier sheets are known. */
const telling = `<title>${title}</title>`;
const most = 100;

export function sampleLabels(run: Run<SampleLabelsOptions>): number {
  const { options } = run;
  const isHtml = run.format({ html: true, svg: false });
  const code: CodeKind = oneOf("--code", options.code, Object.keys(labelCodes) as CodeKind[], "code");
  if (options.output === undefined && process.stdout.isTTY === true)
    throw new UsageError("labels are a page to print: write -o labels.html, and open that file in a browser");
  const copies = whole("--copies", options.copies ?? "1", 1, most);
  const archive = asksForSamples(run);
  if (archive === undefined) return run.end(true);
  const own = new Map(archive.cases.flatMap(({ settings }) => [...settings.labelSheets]));
  const sheets = new Map([...labelSheets, ...run.settings().settings.labelSheets, ...own]);
  const name = oneOf("--sheet", options.sheet, [...sheets.keys()], "sheet of labels");
  const sheet = sheets.get(name);
  if (sheet === undefined) return run.end();
  const places = sheet.columns * sheet.rows;
  const start = whole("--start", options.start ?? "1", 1, places);
  const wish: LabelWish = { sheet, code, edges: options.edges === true };
  const containers = archive.cases.flatMap(containersOfCase);
  const faults: Fault[] = sameNumbers(containers).map(({ id, one, index }) =>
    placedFault(
      one,
      ["samples", index, "id"],
      `${id} is the number of another container of this visit, and both labels would be read alike. Give one of them a number of its own.`,
    ),
  );
  const drawn = containers.map((container) => {
    const label = drawLabel(labelOf(container), wish);
    if (typeof label !== "string") return label;
    const { id, one, index } = container;
    faults.push(
      placedFault(
        one,
        ["samples", index, "id"],
        `${id} does not fit a label of ${sheet.width} by ${sheet.height} mm: ${label}. Write a shorter number, or take larger labels with --sheet.`,
      ),
    );
    return undefined;
  });
  // A sheet without some of its labels would be stuck on the wrong pots.
  run.faults(faults);
  if (faults.length > 0) return run.end();
  if (drawn.length === 0) {
    run.say("no sample is recorded here, so there is nothing to label");
    return run.end();
  }
  const pages = onSheets(drawn, { places, start, copies }).map((labels) => labelPage(labels, wish, title));
  if (isHtml) run.write(labelDocument(pages, wish, title), { sample: telling, format: "html" });
  else
    writePictures(
      run,
      pages.map(({ text }) => `${text}\n`),
    );
  if (options.output !== undefined && options.quiet !== true)
    run.say(
      `${options.output}: ${count(drawn.length * copies, "label")} on ${count(pages.length, "sheet")} (${sheet.title}); print ${isHtml ? "it from a browser " : ""}at 100 %, without margins`,
    );
  return run.end();
}

/** A file a sheet: labels.svg, labels-2.svg. */
function writePictures(run: Run<SampleLabelsOptions>, pages: readonly string[]): void {
  const { output } = run.options;
  const [first = "", ...more] = pages;
  if (output === undefined && more.length > 0)
    throw new UsageError(
      `a picture is one sheet, and these labels fill ${pages.length}: write -o labels.svg, and each sheet gets a file of its own`,
    );
  const ending = extname(output ?? "");
  const files = more.map((text, index) => {
    const file = `${(output ?? "").slice(0, (output ?? "").length - ending.length)}-${index + 2}${ending}`;
    return { text, result: { option: `--output ${file}`, file } };
  });
  for (const { result } of files) run.checkResult(result, telling);
  run.write(first, { sample: telling, format: "svg" });
  for (const { text, result } of files) run.writeResult(result, text, { sample: telling, format: "svg" });
}
