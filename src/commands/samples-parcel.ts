/** `carcase samples parcel`: what is in each parcel, how it is packed, and what stands on it. */
import { markdownOf } from "../formats/page/markdown.ts";
import { textOf } from "../formats/page/text.ts";
import { parcelBlocks } from "../formats/samples/parcel.ts";
import { type PackedVisit, packedVisit } from "../sending/parcel.ts";
import type { CommonOptions } from "./options.ts";
import { oneOf } from "./parsers.ts";
import type { Run } from "./run.ts";
import { asksForSamples } from "./samples-asked.ts";

export interface SampleParcelOptions extends CommonOptions {
  readonly by?: string;
}

export function sampleParcel(run: Run<SampleParcelOptions>): number {
  const { by } = run.options;
  const way = by === undefined ? undefined : oneOf("--by", by, ["road", "air", "hand"] as const, "way");
  const written = run.format<(visits: readonly PackedVisit[]) => string>({
    text: (visits) => textOf(parcelBlocks(visits), run.style, run.width),
    markdown: (visits) => markdownOf(parcelBlocks(visits)),
  });
  const archive = asksForSamples(run);
  if (archive === undefined) return run.end(true);
  const visits = archive.visits.flatMap((visit) => packedVisit(visit, way) ?? []);
  if (visits.length > 0) run.write(written(visits));
  else run.say("no sample for a laboratory and no parcel is recorded here");
  // A proposal is no record that something is wrong with.
  return run.end(
    visits.some(
      ({ proposed, parcels, besides }) =>
        !proposed &&
        [...parcels.flatMap(({ findings }) => findings), ...besides].some(({ level }) => level === "error"),
    ),
  );
}
