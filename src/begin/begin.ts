/** Begins a visit: the files of the farm, the visit and its pigs, with what is known, and blank what is due. */
import { type Case, type Fault, formatPath, isUnborn, type Path, readCases } from "../cases/index.ts";
import { type Form, formText } from "../cases/yaml/form.ts";
import { signFamilies } from "../knowledge/index.ts";
import { type SchemaKind, schemaLine, schemaPlace } from "../schemas/index.ts";
import { listing } from "../words/listing.ts";
import { blankCase, type Given } from "./blank-case.ts";
import type { DrawnList } from "./draw-list.ts";
import type { PigWish } from "./pig-wish.ts";

export interface VisitWish {
  /** The folder of the visit, below that of the farm. */
  readonly folder: string;
  /** What a farm file that is not there yet is called, and its folder. */
  readonly farm: { readonly id: string; readonly folder: string };
  readonly date: string;
  readonly pigs: readonly PigWish[];
  readonly draw?: DrawnList & { readonly file: string };
  /** What all pigs share. */
  readonly group?: string | undefined;
  /** Pigs in it, for a farm file that is not there yet. */
  readonly head?: string | undefined;
  readonly age?: string | undefined;
  readonly class?: string | undefined;
  readonly protocol?: string | undefined;
  readonly method?: string | undefined;
  readonly veterinarian?: string | undefined;
  readonly complaint?: string | undefined;
  /** Numbers of pigs that the visit has already. */
  readonly taken: readonly number[];
  /** Where cases of these numbers are written; in the folder of the visit where it is left out. */
  folderFor?(numbers: readonly number[]): string;
}

interface NewFile {
  readonly file: string;
  readonly text: string;
}

export interface Begun {
  /** In which the cases are written. */
  readonly folder: string;
  /** What is wider stands first: the farm, the visit, the pigs. */
  readonly files: readonly NewFile[];
  /** Cases that the visit must name itself, because its file is there already. */
  readonly unnamed: { readonly file: string; readonly cases: readonly string[] } | undefined;
  /** The first of the files about pigs, for what is said of them. */
  readonly cases: readonly string[];
}

/** A wish that does not fit, by the path in a case; the message says what to write. */
export class WishFault extends Error {
  constructor(
    readonly path: Path,
    message: string,
  ) {
    super(message);
  }
}

/** A pig of the wish, as far as it is known before it is opened. */
export interface ExpectedPig {
  readonly pig: PigWish;
  readonly id: string;
  /** Its number in the visit. */
  readonly number: string;
  readonly one: Case;
  /** The same with the signs of the visit: what a healthy pig is set beside is looked at in it as well. */
  readonly beside: Case;
}

/** @throws WishFault when a value does not fit */
export function expectedPigs(wish: VisitWish): ExpectedPig[] {
  const first = wish.taken.length === 0 ? 1 : Math.max(...wish.taken) + 1;
  const signs = signsOf(wish);
  const pigs = wish.pigs.map((pig, index) => ({
    pig,
    number: String(first + index).padStart(2, "0"),
    one: draft(wish, pig, pig.signs ?? signs),
    beside: draft(wish, pig, signs),
  }));
  const [any] = pigs;
  if (any === undefined) throw new RangeError("a visit without pigs");
  checkGroup(wish, any.one);
  const visit = visitId(wish, any.one);
  return pigs.map((pig) => ({ ...pig, id: `${visit}-${pig.number}` }));
}

const signsOf = ({ pigs }: VisitWish): string[] =>
  [...new Set(pigs.flatMap((pig) => pig.signs ?? []))].filter((sign) => sign !== "none");

const visitId = (wish: VisitWish, { visit, farm }: Case): string =>
  visit?.id ?? `${farm?.id ?? wish.farm.id}-${wish.date}`;

/** @throws WishFault when a value does not fit */
export function begin(wish: VisitWish): Begun {
  const drafts = expectedPigs(wish);
  const [any] = drafts;
  if (any === undefined) throw new RangeError("a visit without pigs");
  const { visit, farm } = any.one;
  const given: Given = visit === undefined ? newDefaults(wish, drafts) : asGiven(visit.record.defaults ?? {});
  const folder = wish.folderFor?.(drafts.map(({ number }) => Number(number))) ?? wish.folder;
  const cases = drafts.map(({ pig, id, number, one, beside }) => ({
    id,
    file: `${folder}/pig-${number}.yaml`,
    form: blankCase({
      id,
      pig,
      one,
      beside,
      given,
      known: {
        ...defined("group", pig.group ?? wish.group),
        ...defined("age", wish.age),
        ...defined("class", wish.class),
      },
    }),
  }));
  const file = (kind: SchemaKind, path: string, form: Form): NewFile => {
    const schema = schemaPlace(path, kind);
    return { file: path, text: `${schema === undefined ? "" : `${schemaLine(schema)}\n`}${formText(form)}` };
  };
  return {
    folder,
    files: [
      ...(farm === undefined
        ? [file("farm", `${wish.farm.folder}/farm.yaml`, blankFarm(wish, any.one))]
        : []),
      ...(visit === undefined
        ? [
            file(
              "visit",
              `${wish.folder}/visit.yaml`,
              blankVisit(wish, {
                id: visitId(wish, any.one),
                signs: signsOf(wish),
                given,
                cases: cases.map(({ id }) => id),
              }),
            ),
          ]
        : []),
      ...cases.map((one) => file("case", one.file, one.form)),
    ],
    unnamed:
      visit?.record.cases === undefined ? undefined : { file: visit.file, cases: cases.map(({ id }) => id) },
    cases: cases.map((one) => one.file),
  };
}

/** The case as far as it is known, so that what is due follows as it will when it is read. */
function draft(wish: VisitWish, pig: PigWish, signs: readonly string[]): Case {
  const one = draftOf(wish, pig, signs, wish.class);
  // What is due in a sow follows from her group before her age is known.
  const ofGroup = one.farm?.record.groups?.[one.record.pig?.group ?? ""]?.class;
  return one.ageClass === undefined && ofGroup !== undefined ? draftOf(wish, pig, signs, ofGroup) : one;
}

function draftOf(
  wish: VisitWish,
  pig: PigWish,
  signs: readonly string[],
  ageClass: string | undefined,
): Case {
  const manner =
    pig.basis === "found-dead" ? "found-dead" : wish.method === undefined ? undefined : "euthanised";
  const record = {
    format: 1,
    case: "draft",
    protocol: wish.protocol,
    pig: { group: pig.group ?? wish.group, age: wish.age, class: ageClass },
    selection: { basis: pig.basis, signs: signs.length === 0 ? undefined : signs },
    death: { manner, method: manner === "euthanised" ? wish.method : undefined },
  };
  const { cases, unreadable } = readCases(["-"], {
    input: { bytes: Buffer.from(JSON.stringify(record)), name: `${wish.folder}/pig.yaml` },
  });
  const [one] = cases;
  const faults: readonly Fault[] = [
    ...unreadable,
    ...(one?.faults ?? []),
    ...(one?.visit?.faults ?? []),
    ...(one?.farm?.faults ?? []),
  ];
  const [fault] = faults;
  if (fault !== undefined) {
    const isOwn = fault.file === one?.file;
    throw new WishFault(
      isOwn ? fault.path : [],
      isOwn
        ? fault.message.replace(`${formatPath(fault.path)}: `, "")
        : `${fault.file}:${fault.line}:${fault.column}: ${fault.message}`,
    );
  }
  if (one === undefined) throw new Error("the draft of a case cannot be read");
  if (one.unknownProtocol !== undefined)
    throw new WishFault(
      ["protocol"],
      `there is no protocol "${one.unknownProtocol}"; there are ${listing([...one.settings.protocols.keys()])}`,
    );
  return one;
}

function checkGroup(wish: VisitWish, { farm }: Case): void {
  const groups = farm?.record.groups;
  if (groups === undefined) return;
  const names = [wish.group, ...wish.pigs.map(({ group }) => group)];
  const unknown = names.find((name) => name !== undefined && !Object.hasOwn(groups, name));
  if (unknown !== undefined)
    throw new WishFault(
      ["pig", "group"],
      `there is no group "${unknown}" in ${farm?.file}; there are ${listing(Object.keys(groups))}`,
    );
}

/** Facts of a new visit: known, or to be filled in once for all pigs. */
function newDefaults(wish: VisitWish, drafts: readonly ExpectedPig[]): Given {
  const isDue = (id: string): boolean =>
    drafts.some(({ one, beside }) => [...one.must, ...beside.must].some((organ) => organ.id === id));
  const isBorn = drafts.some(({ one }) => !isUnborn(one.ageClass));
  const isLine = drafts.every(({ one }) => one.protocol.manners?.includes("slaughtered") === true);
  const isKilled = wish.pigs.some(({ basis }) => basis !== "found-dead");
  const section = isDue("respiratory.turbinates");
  return new Map<string, string | undefined>([
    ...given("protocol", wish.protocol),
    ...given("pig.group", wish.group),
    ...given("pig.age", wish.age),
    ...given("pig.class", wish.class),
    ...(isKilled ? [["death.manner", wish.method === undefined ? undefined : "euthanised"] as const] : []),
    ...(isKilled && !isLine && isBorn ? [["death.method", wish.method] as const] : []),
    ...(isLine ? [["opened.at", undefined] as const] : []),
    ...(isLine || !isBorn ? [] : [["opened.ambient", undefined] as const]),
    ...(section ? [["respiratory.turbinates.section", undefined] as const] : []),
  ]);
}

const defined = <Key extends string>(key: Key, value: string | undefined): { [one in Key]?: string } =>
  (value === undefined ? {} : { [key]: value }) as { [one in Key]?: string };

const given = (key: string, value: string | undefined) =>
  value === undefined ? [] : [[key, value] as const];

/** Defaults of a visit that is there already, by their paths; what it leaves blank is written in the pig. */
function asGiven(defaults: object, path = ""): Given {
  const all = new Map<string, string | undefined>();
  for (const [key, value] of Object.entries(defaults)) {
    const at = path === "" ? key : `${path}.${key}`;
    if (typeof value === "object" && value !== null && !Array.isArray(value))
      for (const [below, inside] of asGiven(value, at)) all.set(below, inside);
    else all.set(at, String(value));
  }
  return all;
}

/** A group is not there without its head count, so where that is not known the line for it is a comment. */
function blankFarm({ farm, head, ...wish }: VisitWish, { ageClass }: Case): Form {
  const groups = groupsOf(wish).map((name): Form[number] => {
    const shape: Form = [
      ["head", head === undefined ? undefined : { word: head }],
      ["class", ageClass === undefined ? undefined : { word: ageClass }],
      ["pens", undefined],
    ];
    return head === undefined
      ? ["#", formText([[name, { flow: shape }]]).trimEnd()]
      : [name, { flow: shape }];
  });
  return [
    ["format", { word: "1" }],
    ["farm", farm.id],
    groups.length === 0 ? ["groups", undefined] : ["groups", { block: groups }],
  ];
}

const groupsOf = ({ group, pigs }: Pick<VisitWish, "group" | "pigs">): string[] =>
  [...new Set([group, ...pigs.map((pig) => pig.group)])].filter((one) => one !== undefined);

function blankVisit(
  wish: VisitWish,
  about: {
    readonly id: string;
    readonly signs: readonly string[];
    readonly given: Given;
    readonly cases: readonly string[];
  },
): Form {
  const { draw } = wish;
  const groups = groupsOf(wish);
  const counts: Form = ["at_risk", "affected", "dead", "onset"].map((key) => [key, undefined] as const);
  const isAir = signFamilies(about.signs).some((family) => family === "respiratory" || family === "nasal");
  return [
    ["format", { word: "1" }],
    ["visit", about.id],
    ["date", wish.date],
    ["veterinarian", wish.veterinarian],
    ["complaint", wish.complaint],
    ...(about.signs.length === 0 ? [] : [["signs", about.signs] as const]),
    groups.length === 0
      ? (["groups", undefined] as const)
      : (["groups", { block: groups.map((one) => [one, { flow: counts }] as const) }] as const),
    ...(isAir ? [["environment", undefined] as const] : []),
    ["treatments", undefined],
    ["vaccinations", undefined],
    ...(draw === undefined ? [] : [["pigs", { block: [["drawn", drawnText(draw)]] }] as const]),
    ["defaults", { block: nested(about.given) }],
    ["cases", about.cases],
  ];
}

function drawnText({ file, seed, reserve, pigs }: NonNullable<VisitWish["draw"]>): string {
  const from = seed === undefined ? "" : `, seed ${seed}`;
  const spare =
    reserve.length === 0 ? "" : `; reserve, in order: ${reserve.map(({ name }) => name).join(", ")}`;
  return `${pigs.length} by lot from the list ${file.replace(/^.*[\\/]/, "")}${from}${spare}`;
}

/** Groups of keys from paths: one line for a group whose keys hold no others. */
function nested(values: Given): Form {
  const groups = new Map<string, Map<string, string | undefined>>();
  for (const [path, value] of values) {
    const [top = "", ...below] = path.split(".");
    const inside = groups.get(top) ?? new Map<string, string | undefined>();
    inside.set(below.join("."), value);
    groups.set(top, inside);
  }
  return [...groups].map(([key, inside]) =>
    inside.has("") ? ([key, inside.get("")] as const) : ([key, { flow: nested(inside) }] as const),
  );
}
