/** `carcase new`: the files of a visit, to be filled in. */
import { existsSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import {
  type Begun,
  begin as beginVisit,
  DrawError,
  type DrawnList,
  expectedPigs,
  type PigWish,
  readDraw,
  type VisitWish,
  WishFault,
} from "../begin/index.ts";
import { readText } from "../cases/files/read-text.ts";
import { readCases } from "../cases/index.ts";
import { count, listing } from "../words/listing.ts";
import { type Ask, askInTerminal, canAsk, type Question } from "./ask.ts";
import type { CommonOptions } from "./options.ts";
import { whole } from "./parsers.ts";
import { pigFiles } from "./pig-files.ts";
import type { Run } from "./run.ts";
import { writeStandardOutput } from "./streams.ts";
import { UsageError } from "./usage-error.ts";
import { folderForNew } from "./write-file.ts";

export interface NewOptions extends CommonOptions, Asked {}

/** What is asked on a terminal, or given as options. */
export interface Asked {
  readonly folder?: string;
  readonly pigs?: string;
  readonly signs?: string;
  readonly basis?: string;
  readonly healthy?: string;
  readonly draw?: string;
  readonly group?: string;
  readonly head?: string;
  readonly age?: string;
  readonly class?: string;
  readonly protocol?: string;
  readonly method?: string;
  readonly veterinarian?: string;
  readonly complaint?: string;
  readonly date?: string;
}

export async function begin(run: Run<NewOptions>, ask: Ask = askInTerminal): Promise<number> {
  const [folder] = run.paths;
  const given: Asked = { ...run.options, ...(folder !== undefined && { folder }) };
  const isWhole = folder !== undefined && [given.pigs, given.healthy, given.draw].some(Boolean);
  if (!isWhole && !canAsk())
    throw new UsageError(
      folder === undefined
        ? "name the folder of the visit, such as carcase new alder-farm/2026-03-14 --pigs 4"
        : "say how many pigs: --pigs 4, --healthy 2 or --draw draw.csv",
    );
  const asked: Asked = isWhole ? given : { ...given, ...(await ask(questions(given))) };
  const wish = wishOf(asked);
  const begun = placed(wish, beginVisit);
  run.writeNew(begun.files, begun.folder);
  writeStandardOutput(said(begun, wish));
  return run.end();
}

/** What a terminal is asked: no more than what makes the files shorter. */
const questions = (given: Asked): readonly Question[] =>
  (
    [
      { key: "folder", text: "Folder of the visit (alder-farm/2026-03-14)", check: needed },
      { key: "group", text: "Group the pigs come from (nursery-2)" },
      { key: "head", text: "How many pigs it has usually (420)", check: number },
      { key: "age", text: "Their age (58 d)", check: fitting("age") },
      { key: "signs", text: "What the ill ones show (sneezing, cough)", check: fitting("signs") },
      { key: "pigs", text: "How many of those will be opened", check: number },
      { key: "healthy", text: "How many healthy ones beside them", check: number },
      { key: "protocol", text: "Protocol (full)", check: fitting("protocol") },
      { key: "veterinarian", text: "Your name" },
      { key: "complaint", text: "What the farm reported" },
    ] as const
  ).filter(({ key }) => given[key] === undefined);

const needed = (answer: string): string | undefined =>
  answer === "" ? "It is needed: the files are written there." : undefined;
/** What a pig of that answer is refused for; it is told at once and not after the last question. */
const fitting =
  (key: keyof Asked) =>
  (answer: string): string | undefined => {
    try {
      const asked = {
        folder: join("farm", "2026-01-01"),
        pigs: "1",
        ...(answer !== "" && { [key]: answer }),
      };
      placed(wishOf(asked), expectedPigs);
      return undefined;
    } catch (error) {
      if (error instanceof UsageError) return error.message.replace(/^--[a-z]+: /, "");
      throw error;
    }
  };
const number = (answer: string): string | undefined =>
  /^\d{0,6}$/.test(answer) ? undefined : "Write a number, or nothing.";

/** @param isSaved whether files come of it, so that there must be a day. @throws UsageError when something does not fit */
export function wishOf(asked: Asked, isSaved = true): VisitWish {
  const typed = asked.folder ?? "";
  const folder = join(dirname(typed), basename(typed));
  const draw = asked.draw === undefined ? undefined : { file: asked.draw, ...drawOf(asked.draw) };
  const farmFolder = dirname(folder);
  return {
    folder,
    farm: { id: farmName(resolve(folder)), folder: farmFolder },
    date: isSaved || asked.folder !== undefined || asked.date !== undefined ? dateOf(asked, folder) : "",
    pigs: pigsOf(asked, draw),
    ...(draw !== undefined && { draw }),
    group: asked.group,
    head: asked.head === undefined ? undefined : String(whole("--head", asked.head)),
    age: asked.age,
    class: asked.class,
    protocol: asked.protocol,
    method: asked.method,
    veterinarian: asked.veterinarian,
    complaint: asked.complaint,
    taken: isSaved || asked.folder !== undefined ? takenIn(folder) : [],
    folderFor: (numbers) => folderForNew(folder, numbers),
  };
}

function pigsOf(asked: Asked, draw: DrawnList | undefined): PigWish[] {
  const signs = asked.signs
    ?.split(",")
    .map((sign) => sign.trim().replaceAll(/\s+/g, "-"))
    .filter((sign) => sign !== "");
  if (draw !== undefined) {
    if (asked.pigs !== undefined || asked.basis !== undefined || signs !== undefined)
      throw new UsageError("--draw says which pigs; leave --pigs, --basis and --signs out");
    if (asked.group !== undefined && draw.pigs.some(({ group }) => group !== undefined))
      throw new UsageError("--draw says the group of each pig; leave --group out");
  }
  const ill = asked.pigs === undefined ? 0 : whole("--pigs", asked.pigs, 0);
  const healthy = asked.healthy === undefined ? 0 : whole("--healthy", asked.healthy, 0);
  const basis = asked.basis ?? (signs === undefined || signs.includes("none") ? undefined : "clinical");
  const pigs: PigWish[] = [
    ...(draw?.pigs ?? []).map(({ tag, group, name }) => ({
      basis: "random",
      signs: undefined,
      tag,
      group,
      ...(tag === undefined && { note: `drawn as ${name}, counted through pen by pen` }),
    })),
    ...Array.from({ length: ill }, () => ({ basis, signs })),
    ...Array.from({ length: healthy }, () => ({ basis: "comparison", signs: ["none"] })),
  ];
  if (pigs.length === 0) throw new UsageError("no pig is asked for; write --pigs 4 or --healthy 2");
  if (pigs.length > mostPigs)
    throw new UsageError(
      `${pigs.length} pigs are more than anybody opens on a visit; ask for ${mostPigs} at most`,
    );
  return pigs;
}

const mostPigs = 200;

function drawOf(file: string): DrawnList {
  const read = readText(file);
  if (!read.ok) {
    const [fault] = read.faults;
    const line = fault?.place === undefined ? "" : `:${fault.place.line}:${fault.place.column}`;
    throw new UsageError(`${file}${line}: ${fault?.message ?? "it cannot be read"}`);
  }
  try {
    return readDraw(file, read.text);
  } catch (error) {
    throw error instanceof DrawError ? new UsageError(error.message) : error;
  }
}

/** The farm is called as its folder is. */
function farmName(folder: string): string {
  const name = basename(dirname(folder));
  return /^[A-Za-z0-9][A-Za-z0-9._-]{0,80}$/.test(name) ? name : "farm";
}

function dateOf({ date }: Asked, folder: string): string {
  const day = date ?? basename(folder);
  if (/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/.test(day)) return day;
  throw new UsageError(
    date === undefined
      ? `"${day}" is no day, year first; name the folder by the day of the visit, such as 2026-03-14, or write --date 2026-03-14`
      : `--date: "${date}" is no day; write it year first, such as 2026-03-14`,
  );
}

/** Numbers of pigs that lie in a folder, by the names of files and of cases. */
function takenIn(folder: string): number[] {
  const cases = existsSync(folder) ? readCases([folder]).cases : [];
  const ofNames = cases.flatMap(({ id }) => /-(\d{2,3})$/.exec(id)?.[1] ?? []);
  return [...pigFiles(folder).keys(), ...ofNames.map(Number)];
}

/** Where a value of a case comes from on the command line. */
const optionOf: Readonly<Record<string, string>> = {
  "pig.group": "--group",
  "pig.age": "--age",
  "pig.class": "--class",
  "selection.signs": "--signs",
  "selection.basis": "--basis",
  "death.method": "--method",
  protocol: "--protocol",
};

/** @throws UsageError when a value of the wish does not fit */
export function placed<Made>(wish: VisitWish, make: (wish: VisitWish) => Made): Made {
  try {
    return make(wish);
  } catch (error) {
    if (!(error instanceof WishFault)) throw error;
    const option = optionOf[error.path.slice(0, 2).join(".")];
    throw new UsageError(`${option === undefined ? "" : `${option}: `}${error.message}`);
  }
}

function said({ files, unnamed, cases }: Begun, { folder, draw }: VisitWish): string {
  const [first = ""] = cases;
  const lines = [
    ...files.map(({ file }) => file),
    "",
    `${count(files.length, "file")} to fill in. What visit.yaml says under defaults holds for each pig.`,
    ...(unnamed === undefined ? [] : [`Add to cases in ${unnamed.file}: ${unnamed.cases.join(", ")}`]),
    ...(draw === undefined || draw.reserve.length === 0
      ? []
      : [`Reserve, to be used in this order: ${listing(draw.reserve.map(({ name }) => name))}`]),
    `What is due: carcase explain ${first}`,
    `What is missing: carcase lint ${folder}`,
  ];
  return `${lines.join("\n")}\n`;
}
