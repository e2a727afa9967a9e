/** `carcase doctor`: is what lies around the records in its place? */
import { type Dirent, readdirSync } from "node:fs";
import { dirname, extname, join, relative, resolve } from "node:path";
import { sameFile } from "../cases/files/file-kind.ts";
import { currentFormat } from "../cases/files/format-version.ts";
import { textAt } from "../cases/files/text-at.ts";
import type { Archive, Case } from "../cases/index.ts";
import { type Checked, doctorText } from "../formats/doctor/text.ts";
import { besideCase, isElsewhere, photographs, tracings } from "../record/index.ts";
import { isSchemaOf, leadsNowhere, namedSchema, type SchemaKind, schemaText } from "../schemas/index.ts";
import { sealedStateOf } from "../seals/index.ts";
import { count, listing } from "../words/listing.ts";
import { runGit } from "./git.ts";
import { leftoversIn } from "./leftovers.ts";
import type { Run } from "./run.ts";
import { version } from "./version.ts";

export function doctor(run: Run): number {
  const archive = run.archive();
  const folders = foldersOf(archive);
  const checked = [
    versions(),
    settingsOf(archive, run),
    git(),
    records(archive),
    editorLines(archive),
    leftOver(folders),
    unlisted(archive),
    unnamed(archive.cases, folders),
    seals(archive),
  ];
  run.write(doctorText(checked, run.style, { width: run.width, quiet: run.options.quiet === true }), {
    format: "text",
  });
  return run.end(checked.some(({ todo }) => todo !== undefined));
}

const oldestNode = [20, 19] as const;

function versions(): Checked {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  const isOld = major < oldestNode[0] || (major === oldestNode[0] && minor < oldestNode[1]);
  return {
    about: "carcase",
    says: `${version}, reads format ${currentFormat}; Node ${process.versions.node} on ${process.platform}`,
    ...(isOld && { todo: `install Node ${oldestNode.join(".")} or later` }),
  };
}

function settingsOf({ cases, visits, farms }: Archive, run: Run): Checked {
  const files = [...cases, ...visits, ...farms, run.settings()].map(({ settings }) => settings.file);
  const found = [...new Set(files.filter((file) => file !== undefined))].sort();
  const says =
    found.length > 0
      ? listing(found)
      : "none found, so the defaults hold; docs/settings.md says what can be set";
  return { about: "settings", says };
}

/** What git answers; undefined where it cannot be asked, or has none. */
function gitSays(...args: string[]): string | undefined {
  const { status, stdout } = runGit(args);
  return status === 0 ? stdout.toString().replace(/\r?\n$/, "") : undefined;
}

function git(): Checked {
  const about = "git";
  const found = gitSays("--version")?.replace(/^git version /, "");
  if (found === undefined)
    return { about, says: "cannot be started", todo: "install git: it keeps the history of the records" };
  const folder = gitSays("rev-parse", "--git-path", "hooks");
  if (folder === undefined)
    return {
      about,
      says: `${found}; this folder lies in no repository, so what records said before is not kept`,
    };
  const hooks = namesIn(folder).filter(
    ({ name }) => !name.endsWith(".sample") && textAt(join(folder, name)).includes("carcase"),
  );
  const top = gitSays("rev-parse", "--show-toplevel") ?? ".";
  const runner = textAt(join(top, ".pre-commit-config.yaml")).includes("carcase")
    ? [".pre-commit-config.yaml"]
    : [];
  const all = [...hooks.map(({ name }) => name), ...runner];
  const called =
    all.length > 0 ? `carcase is called by ${listing(all)}` : "no hook calls carcase (docs/ci.md has one)";
  const merges =
    gitSays("config", "--get", "merge.carcase.driver") === undefined
      ? "records are merged line by line (carcase git enable: part by part)"
      : "records are merged part by part";
  return { about, says: `${found}; ${called}; ${merges}` };
}

const records = ({ cases, visits, farms, unreadable, passedOver }: Archive): Checked => {
  const broken = [...new Set(unreadable.map(({ file }) => file))];
  const other = passedOver.length === 0 ? "" : `; ${count(passedOver.length, "YAML file")} of other tools`;
  return {
    about: "records",
    says: `${count(cases.length, "case")}, ${count(visits.length, "visit")}, ${count(farms.length, "farm")}${other}${broken.length === 0 ? "" : `; ${broken.length} not read`}`,
    files: broken,
    ...(broken.length > 0 && { todo: "carcase lint says what is wrong with them" }),
  };
};

/** Whether editors find a schema, and the one of this version. */
function editorLines({ cases, visits, farms }: Archive): Checked {
  const all = [
    ...cases.map((one) => ({ kind: "case" as const, ...one })),
    ...visits.map((one) => ({ kind: "visit" as const, ...one })),
    ...farms.map((one) => ({ kind: "farm" as const, ...one })),
  ];
  const texts = new Map<string, boolean>();
  const states = all.map(({ file, document, kind }) => {
    const schema = namedSchema(document.text)?.schema;
    if (schema === undefined) return { file, state: "none" } as const;
    if (leadsNowhere(file, schema)) return { file, state: "astray" } as const;
    const location = resolve(dirname(file), schema.split("#")[0] ?? "");
    if (!texts.has(location)) texts.set(location, isOlder(location, kind));
    return { file, state: texts.get(location) === true ? "older" : "right" } as const;
  });
  const many = (wanted: (typeof states)[number]["state"]): number =>
    states.filter(({ state }) => state === wanted).length;
  const amiss = [
    ...(many("none") > 0 ? [`${many("none")} without the line for editors`] : []),
    ...(many("astray") > 0 ? [`${many("astray")} whose line leads nowhere`] : []),
    ...(many("older") > 0 ? [`${many("older")} with the schema of another version`] : []),
  ];
  const { length } = states;
  const says =
    amiss.length === 0
      ? `${count(length, "record")} with a schema for editors`
      : `${listing(amiss)}, of ${count(length, "record")}`;
  return {
    about: "editors",
    says,
    ...(amiss.length > 0 && {
      todo: "carcase schema --write schemas, then carcase lint --fix",
    }),
  };
}

/** An address on the net, or what is no schema of ours, is not judged. */
function isOlder(location: string, kind: SchemaKind): boolean {
  const there = textAt(location);
  return isSchemaOf(there, kind) && there !== schemaText(kind);
}

function leftOver(folders: readonly string[]): Checked {
  const files = folders.flatMap((folder) => leftoversIn(folder)).map(shown);
  const says = files.length === 0 ? "nothing of a run that was cut off" : "of a run that was cut off";
  return {
    about: "left over",
    says,
    files,
    ...(files.length > 0 && { todo: "delete them, or carcase lint --fix does; the records are whole" }),
  };
}

/** A case that no visit lists is not counted by whoever goes by the list. */
function unlisted({ cases, visits }: Archive): Checked {
  const listed = new Map(visits.map(({ file, record }) => [file, record.cases]));
  const files = cases
    .filter(({ visit, id }) => visit === undefined || listed.get(visit.file)?.includes(id) === false)
    .map(({ file }) => file);
  return {
    about: "visits",
    says: files.length === 0 ? "have all cases" : `${count(files.length, "case")} that no visit lists`,
    files,
    ...(files.length > 0 && { todo: "add their ids to cases in visit.yaml, or put them beside one" }),
  };
}

const pictures = /^\.(?:jpe?g|png|heic|heif|webp|tiff?|svg|geojson)$/i;

function unnamed(cases: readonly Case[], folders: readonly string[]): Checked {
  const named = new Set(
    cases.flatMap((one) =>
      [...photographs(one), ...tracings(one)]
        .filter(({ file }) => !isElsewhere(file))
        .map(({ file }) => sameFile(besideCase(one, file))),
    ),
  );
  const files = folders
    .flatMap((folder) =>
      namesIn(folder)
        .filter((entry) => entry.isFile() && pictures.test(extname(entry.name)))
        .map(({ name }) => join(folder, name)),
    )
    .filter((file) => !named.has(sameFile(file)))
    .map(shown);
  return {
    about: "pictures",
    says:
      files.length === 0
        ? `${named.size === 0 ? "none" : named.size} named, and no other lies there`
        : `${count(files.length, "photograph or tracing", "photographs or tracings")} that no case names`,
    files,
    ...(files.length > 0 && { todo: "name them under photos or tracing, or move them away" }),
  };
}

function seals({ cases, visits }: Archive): Checked {
  const all = [...visits, ...cases].map((one) => ({ file: one.file, ...sealedStateOf(one) }));
  const broken = all.filter(({ state }) => state === "broken");
  const signed = all.filter(({ state }) => state === "sealed" || state === "amended").length;
  return {
    about: "seals",
    says: `${signed} of ${count(all.length, "record")} as signed${broken.length === 0 ? "" : `; ${broken.length} changed since`}`,
    files: broken.map(({ file }) => file),
    ...(broken.length > 0 && { todo: "carcase verify says what changed, carcase seal --amend signs it" }),
  };
}

/** The folders in which records lie, with all below them that are not hidden. */
function foldersOf({ cases, visits, farms }: Archive): string[] {
  const tops = [...cases, ...visits, ...farms].map(({ file }) => resolve(dirname(file)));
  const seen = new Set<string>();
  const look = (folder: string): void => {
    if (seen.has(folder)) return;
    seen.add(folder);
    for (const entry of namesIn(folder))
      if (entry.isDirectory() && !entry.name.startsWith(".") && entry.name !== "node_modules")
        look(join(folder, entry.name));
  };
  for (const top of tops) look(top);
  return [...seen].sort();
}

/** From the current folder, as files are named everywhere. */
const shown = (file: string): string => relative(".", file) || file;

function namesIn(folder: string): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    return [];
  }
}
