/** What the settings of the practice put into a report: letterhead, sections of its own, templates. */
import { readdirSync } from "node:fs";
import { basename, dirname, join, relative, resolve } from "node:path";
import { fileFault } from "../cases/faults/fault.ts";
import { sameFile } from "../cases/files/file-kind.ts";
import { readInput } from "../cases/files/input.ts";
import { readDocument } from "../cases/files/read-file.ts";
import { decode } from "../cases/files/read-text.ts";
import { Repository } from "../cases/files/repository.ts";
import { isInside } from "../cases/files/shown-paths.ts";
import { type Path, placedFault, type Settings } from "../cases/index.ts";
import type { Html } from "../formats/page/html.ts";
import { portablePath } from "../formats/page/portable-path.ts";
import type { Dress, Letterhead, OwnSection } from "../formats/report/dress.ts";
import { isTemplateFile } from "../knowledge/index.ts";
import type { Audience, ReportResult, ReportWords } from "../report/index.ts";
import { pictureKind } from "./picture-kind.ts";
import { Unusable } from "./unusable.ts";

type Practice = Omit<Dress, "photographs">;

/** The report that is made, in which words and for whom. */
export type Asked = readonly [made: ReportResult, words: ReportWords, audience: Audience];

/** Bytes of a logo, and of a text. */
const most = { logo: 1024 * 1024, text: 200 * 1024 };

/** @throws Unusable for the first file that cannot be used */
export async function practiceOf(
  { report: { letterhead, extra = {}, order = {}, templates = {} }, file }: Settings,
  asked: Asked,
): Promise<Practice> {
  const files = new PracticeFiles(file ?? "carcase.yaml");
  const named = [
    ...Object.entries(templates).map(([id, one]) => ({ path: ["report", "templates", id], file: one })),
    ...Object.entries(extra).map(([id, one]) => ({
      path: ["report", "extra", id, "file"],
      file: one.file,
    })),
  ].filter((one) => isTemplateFile(one.file));
  const make = named.length === 0 ? () => undefined : await making(files, named, asked);
  const own = ([id, one]: [string, { title: string; file: string }]): [string, OwnSection] => [
    id,
    {
      title: one.title,
      body: make(one.file) ?? paragraphs(files.text(["report", "extra", id, "file"], one.file)),
    },
  ];
  return {
    letterhead: letterhead === undefined ? null : letterheadOf(letterhead, files),
    extra: new Map(Object.entries(extra).map(own)),
    order,
    replaced: new Map(
      Object.entries(templates).flatMap(([id, one]): [string, Html][] => {
        const made = make(one);
        return made === undefined ? [] : [[id, made]];
      }),
    ),
  };
}

const paragraphs = (text: string): string[] =>
  text
    .split(/\n[ \t]*\n/)
    .map((paragraph) => paragraph.replaceAll(/\s+/g, " ").trim())
    .filter((paragraph) => paragraph !== "");

function letterheadOf(
  { name, address = [], telephone, logo }: NonNullable<Settings["report"]["letterhead"]>,
  files: PracticeFiles,
): Letterhead {
  return {
    name,
    address,
    telephone: telephone ?? null,
    logo: logo === undefined ? null : files.picture(["report", "letterhead", "logo"], logo),
  };
}

/** Reads the templates that are named and those beside them, and makes one when it is asked for. */
async function making(
  files: PracticeFiles,
  named: readonly { readonly path: Path; readonly file: string }[],
  asked: Asked,
): Promise<(file: string) => Html | undefined> {
  const texts = new Map<string, string>();
  const add = (path: Path, file: string): void => {
    if (!texts.has(portablePath(file))) texts.set(portablePath(file), files.text(path, file));
  };
  for (const { path, file } of named) {
    add(path, file);
    for (const beside of files.beside(path, file)) add(path, beside);
  }
  const { TemplateFault, templates } = await import("../formats/report/template.ts");
  const make = templates(texts, ...asked);
  return (file) => {
    if (!isTemplateFile(file)) return undefined;
    try {
      return make(portablePath(file));
    } catch (error) {
      if (!(error instanceof TemplateFault)) throw error;
      const { place = { line: 0, column: 0 } } = error;
      throw new Unusable([
        {
          ...fileFault(files.shown(error.file), error.message),
          ...place,
          length: 1,
          excerpt: texts.get(error.file)?.split("\n")[place.line - 1] ?? "",
          kind: "format",
        },
      ]);
    }
  };
}

/** The files that settings name, all of them in the folder of the settings. */
class PracticeFiles {
  readonly #settings: string;
  readonly #folder: string;

  constructor(settings: string) {
    this.#settings = settings;
    this.#folder = dirname(sameFile(resolve(settings)));
  }

  /** The path of a file as shown to people. */
  shown(file: string): string {
    return join(dirname(this.#settings), file);
  }

  /** Other templates in the folder of one, by their path from the settings. */
  beside(path: Path, file: string): string[] {
    const folder = dirname(this.#locate(path, file));
    return readdirSync(folder)
      .filter((name) => isTemplateFile(name) && name !== basename(file))
      .sort()
      .map((name) => join(dirname(file), name));
  }

  text(path: Path, file: string): string {
    const text = decode(this.#bytes(path, file, most.text));
    if (text.ok) return text.text.replaceAll("\r\n", "\n");
    throw new Unusable(
      text.faults.map(({ message, place, excerpt = "" }) => ({
        ...fileFault(this.shown(file), message.replace(/; a case.*/, "")),
        ...place,
        excerpt,
      })),
    );
  }

  picture(path: Path, file: string): string {
    const bytes = this.#bytes(path, file, most.logo);
    const kind = pictureKind(bytes);
    if (kind === undefined || kind === "HEIC")
      throw this.#fault(path, `${file} is no picture in JPEG, PNG or WebP; export it as PNG.`);
    return `data:${kind};base64,${bytes.toString("base64")}`;
  }

  #bytes(path: Path, file: string, limit: number): Buffer {
    const read = readInput(this.#locate(path, file), limit);
    if (read.ok) return read.bytes;
    throw this.#fault(path, `${file}: ${read.message}; the path starts from the folder of this file.`);
  }

  #locate(path: Path, file: string): string {
    const location = resolve(this.#folder, file);
    if (!isInside(relative(this.#folder, sameFile(location))))
      throw this.#fault(path, `${file} lies outside the folder of this file, and is not read.`);
    return location;
  }

  #fault(path: Path, message: string): Unusable {
    const file = this.#settings;
    const read = readDocument(file, resolve(file), new Repository(".", [file]));
    return new Unusable([
      read.ok
        ? placedFault({ file, document: read.result.document }, path, message)
        : fileFault(file, message),
    ]);
  }
}
