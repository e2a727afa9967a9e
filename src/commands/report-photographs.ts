/** The photographs that cases name, for a report: what they are is looked at, and those that are shown are made small. */
import { createHash } from "node:crypto";
import { dirname, relative } from "node:path";
import { readInput } from "../cases/files/input.ts";
import { Repository } from "../cases/files/repository.ts";
import { type Archive, type Fault, placedFault } from "../cases/index.ts";
import { fileUri } from "../formats/page/portable-path.ts";
import type { Shown } from "../formats/report/dress.ts";
import { photographsFor } from "../formats/report/sections/photographs.ts";
import { besideCase, isElsewhere, photographs } from "../record/index.ts";
import { pictureKind } from "./picture-kind.ts";
import type { Asked } from "./report-practice.ts";
import type { Run } from "./run.ts";
import { Unusable } from "./unusable.ts";

/** A camera's file; beyond this it is something else. */
const mostBytes = 64 * 1024 * 1024;
/** Of the longer side, in points. */
const longSide = 1200;

export interface ReadPhotographs {
  /** By where they lie. */
  readonly digests: ReadonlyMap<string, string>;
  /** What names a photograph, by its digest. */
  readonly named: ReadonlyMap<string, Named>;
}

interface Named {
  readonly location: string;
  fault(why: string): Fault;
}

/**
 * Looks at each photograph once and keeps none of them.
 * @throws Unusable for all that cannot be shown
 */
export function readPhotographs({ cases }: Archive, paths: readonly string[]): ReadPhotographs {
  const repository = new Repository(".", paths);
  const digests = new Map<string, string>();
  const named = new Map<string, Named>();
  const faults: Fault[] = [];
  for (const one of cases)
    for (const { file, path } of photographs(one)) {
      const location = besideCase(one, file);
      const fault = (why: string): Fault => placedFault(one, path, `${file}: ${why}`);
      if (digests.has(location)) continue;
      const read = isElsewhere(file)
        ? "write its path from the folder of the case, such as photos/03-lungs.jpg"
        : digestOf(location, repository);
      if (typeof read === "string") faults.push(fault(read));
      else {
        digests.set(location, read.sha256);
        named.set(read.sha256, { location, fault });
      }
    }
  if (faults.length > 0) throw new Unusable(faults);
  return { digests, named };
}

function digestOf(location: string, repository: Repository): string | { readonly sha256: string } {
  if (!repository.holds(location)) return "it lies outside the repository, and is not shown";
  const read = readInput(location, mostBytes);
  if (!read.ok) return read.message;
  const kind = pictureKind(read.bytes);
  if (kind === "HEIC") return "it is a HEIC picture, which browsers do not show; export it as JPEG";
  if (kind === undefined) return "it is no photograph in JPEG, PNG or WebP, whatever its name says";
  return { sha256: createHash("sha256").update(read.bytes).digest("hex") };
}

/**
 * The photographs that a reader gets, by their digest: in the page itself, small, upright and without what the camera wrote
 * of place and device; or where a link leads.
 * @throws Unusable for the first that cannot be made small
 */
export async function shownPhotographs(
  run: Run,
  [made, , audience]: Asked,
  photographs: ReadPhotographs,
  isToEmbed: boolean,
): Promise<ReadonlyMap<string, Shown>> {
  const shown = new Map<string, Shown>();
  const wanted = photographsFor(made, audience).flatMap(({ photograph: { sha256 } }) => sha256 ?? []);
  if (wanted.length === 0) return shown;
  const { format, output = "x", quiet } = run.options;
  const shrink = isToEmbed && format !== "markdown" ? await shrinking() : undefined;
  if (shrink === undefined) {
    if (isToEmbed && format !== "markdown" && quiet !== true)
      run.say(
        "photographs are linked and not put in, as the package sharp is not there: npm install --global sharp",
      );
    // Paper has no links; there the name of the file is told.
    return format === "pdf" ? shown : linkedPhotographs(photographs, dirname(output));
  }
  for (const sha256 of new Set(wanted)) {
    const one = photographs.named.get(sha256);
    if (one === undefined) continue;
    const read = readInput(one.location, mostBytes);
    if (!read.ok) throw new Unusable([one.fault(read.message)]);
    const small = await shrink(read.bytes).catch(() => undefined);
    if (small === undefined)
      throw new Unusable([one.fault("it is no whole picture; export it anew as JPEG")]);
    shown.set(sha256, small);
  }
  return shown;
}

/** All of them, as links from the folder of a page. */
export const linkedPhotographs = ({ named }: ReadPhotographs, folder: string): ReadonlyMap<string, Shown> =>
  new Map(
    [...named].map(([sha256, { location }]) => [sha256, { link: fileUri(relative(folder, location)) }]),
  );

/** Undefined where the package for it is not installed, or not for this machine. */
async function shrinking(): Promise<((bytes: Buffer) => Promise<Shown>) | undefined> {
  const sharp = await import("sharp").then(
    (loaded) => loaded.default,
    () => undefined,
  );
  if (sharp === undefined) return undefined;
  return async (bytes) => {
    const { data, info } = await sharp(bytes, { failOn: "error", limitInputPixels: 1e8 })
      .rotate()
      .resize({ width: longSide, height: longSide, fit: "inside", withoutEnlargement: true })
      .flatten({ background: "#fff" })
      .jpeg({ quality: 80 })
      .toBuffer({ resolveWithObject: true });
    return {
      embedded: `data:image/jpeg;base64,${data.toString("base64")}`,
      width: info.width,
      height: info.height,
    };
  };
}
