/** `carcase samples form`: what a laboratory's own form asks for, on one page. */
import { markdownOf } from "../formats/page/markdown.ts";
import { textOf } from "../formats/page/text.ts";
import { formBlocks, formDocument } from "../formats/samples/form.ts";
import { isPaper, papers } from "../formats/sheet/page.ts";
import { type Form, formOf } from "../sending/form.ts";
import { listing } from "../words/listing.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { asksForSamples } from "./samples-asked.ts";
import { UsageError } from "./usage-error.ts";

export interface SampleFormOptions extends CommonOptions {
  readonly paper: string;
}

/** By this line an earlier page is known. */
const telling = '<meta name="generator" content="carcase samples form">';

export function sampleForm(run: Run<SampleFormOptions>): number {
  const { paper, format } = run.options;
  if (!isPaper(paper))
    throw new UsageError(`--paper: there is no paper "${paper}"; write ${listing(papers, "or")}`);
  const written = run.format<(forms: readonly Form[]) => string>({
    text: (forms) => textOf(formBlocks(forms), run.style, run.width),
    markdown: (forms) => markdownOf(formBlocks(forms)),
    html: (forms) => formDocument(forms, paper),
  });
  const archive = asksForSamples(run);
  if (archive === undefined) return run.end(true);
  const forms = archive.visits.flatMap((visit) => formOf(visit) ?? []);
  if (forms.length > 0) run.write(written(forms), format === "html" ? { sample: telling } : {});
  else run.say("no sample for a laboratory is recorded in a visit here");
  return run.end();
}
