/** The photographs that a case names, wherever it names them, and the files that lie beside a case. */
import { basename, dirname, extname, resolve } from "node:path";
import { isPlainFile } from "../cases/files/file-kind.ts";
import type { Case, Path } from "../cases/index.ts";
import { organById, organs, type PlacedOrgan } from "../knowledge/index.ts";
import { fact } from "./fact.ts";
import { namedOrgans } from "./named-organs.ts";
import { placedStates } from "./organs.ts";

export interface Photograph {
  readonly file: string;
  /** Where the file name stands. */
  readonly path: Path;
  /** What it shows, as written. */
  readonly shows: string | undefined;
  readonly showsPath: Path;
  /** What else is said of it. */
  readonly note: string | undefined;
  /** Whether the picture carries a scale; undefined when nothing is said. */
  readonly scale: boolean | undefined;
  /** The organs that it shows, by what is written, its place in the case, or its file name. */
  readonly organs: readonly PlacedOrgan[];
}

export const photographs = fact((one: Case): readonly Photograph[] => {
  const ofCase = (one.record.photos ?? []).map((photo, index): Photograph => {
    const path = ["photos", index];
    if (typeof photo === "string") return named(photo, path);
    const { file, shows, scale, note } = photo;
    const shown = organById(shows ?? "");
    return {
      ...named(file, [...path, "file"]),
      shows,
      showsPath: [...path, "shows"],
      note,
      scale: scale === undefined ? undefined : scale === true || scale === "yes",
      ...(shows === undefined
        ? {}
        : { organs: shown === undefined ? organs.filter(({ system }) => system === shows) : [shown] }),
    };
  });
  const ofOrgans = placedStates(one).flatMap(({ organ, state: { entry, path } }) =>
    (entry?.photos ?? []).map(
      (file, index): Photograph => ({
        ...named(file, [...path, "photos", index]),
        shows: organ.id,
        organs: [organ],
      }),
    ),
  );
  return [...ofCase, ...ofOrgans];
});

function named(file: string, path: Path): Photograph {
  const name = basename(file, extname(file));
  return {
    file,
    path,
    shows: undefined,
    showsPath: path,
    note: undefined,
    scale: undefined,
    organs: namedOrgans(name),
  };
}

/** Whether nothing says what a picture shows: neither the case nor its name. */
export const isOfUnknown = ({ shows, organs: shown, file }: Photograph): boolean =>
  shows === undefined && shown.length === 0 && !/carcass/i.test(file);

/** The tracings that a case names, with their place. */
export const tracings = fact((one: Case): readonly { readonly file: string; readonly path: Path }[] =>
  placedStates(one).flatMap(({ state: { entry, path } }) =>
    entry?.tracing === undefined ? [] : [{ file: entry.tracing, path: [...path, "tracing"] }],
  ),
);

/** A path that means something on one computer only, or an address on the net. */
export const isElsewhere = (file: string): boolean => /^([a-z]:|[/\\~]|[a-z]+:\/\/)/i.test(file);

/** A file as a path from the folder of the case. */
export const besideCase = (one: Case, file: string): string => resolve(dirname(one.file), file);

/** Whether a file that a case names is missing from its place; a folder or a pipe is no file. */
export const isAbsent = (one: Case, file: string): boolean =>
  !isElsewhere(file) && !isPlainFile(besideCase(one, file));
