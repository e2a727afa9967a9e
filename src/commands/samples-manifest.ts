/** `carcase samples manifest`: what was taken, a line a container. */
import {
  type Manifest,
  manifestCsv,
  manifestJson,
  manifestMarkdown,
  manifestText,
} from "../formats/samples/manifest.ts";
import { containersOf } from "../record/index.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";

export function samplesManifest(run: Run<CommonOptions>): number {
  const written = run.format<(all: readonly Manifest[]) => string>({
    text: (all) => manifestText(all, run.style, run.width),
    json: manifestJson,
    csv: manifestCsv,
    markdown: manifestMarkdown,
  });
  const { visits } = run.soundArchive();
  const all = visits.map((visit) => ({
    visit: visit.id,
    date: visit.record.date,
    containers: containersOf(visit),
  }));
  if (all.length === 0 && !run.failed) run.say("no visit is here; name the folder of one");
  if (all.length > 0 || run.options.format !== "text") run.write(written(all));
  return run.end();
}
