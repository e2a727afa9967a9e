/** What of a case a column of a table can hold: each value by its path, with the name that heads its column. */
import { alarmSigns, organs, type PlacedOrgan, recordedGrades } from "../../knowledge/index.ts";
import { type Path, pathOf } from "../model/path.ts";

/**
 * serial: the number of the pig in its visit. state: what is said of a whole organ. quantity: a number with a unit.
 * word: one of the format; it is written in small letters. list: several of them. choices: one or several.
 */
type ColumnKind =
  | "serial"
  | "state"
  | "number"
  | "quantity"
  | "moment"
  | "word"
  | "text"
  | "list"
  | "choices";

export interface CaseColumn {
  /** As in a case, `respiratory.lungs.consolidation.left_cranial`; `pig` is the number of the pig. */
  readonly id: string;
  readonly path: Path;
  /** What heads the column in the empty table: `lungs consolidation left cranial`. */
  readonly name: string;
  readonly kind: ColumnKind;
  /** Of a quantity, the one that is usual. */
  readonly unit: string | undefined;
  /** How people call it, for the search after what another table calls so. */
  readonly title: string;
  /** Belongs to the usual tally; other columns are asked for by name. */
  readonly usual: boolean;
}

/** The word of the settings for a column that is not read. */
export const skipped = "skip";

/** Facts of the pig, in the order of a case; the number of the pig first. */
const facts: readonly (readonly [kind: ColumnKind, ids: readonly string[]])[] = [
  ["serial", ["pig"]],
  ["text", ["case"]],
  ["word", ["protocol"]],
  ["text", ["examiner", "pig.tag"]],
  ["word", ["pig.group"]],
  ["text", ["pig.pen", "pig.litter"]],
  ["quantity", ["pig.age"]],
  ["word", ["pig.class", "pig.sex"]],
  ["quantity", ["pig.weight", "pig.temperature", "pig.crown_rump", "pig.since_weaning"]],
  ["number", ["pig.condition", "pig.parity", "pig.dam_parity"]],
  ["word", ["selection.basis"]],
  ["list", ["selection.signs"]],
  ["word", ["selection.treated", "selection.typical"]],
  ["text", ["selection.note"]],
  ["word", ["death.manner", "death.method"]],
  ["moment", ["death.at", "opened.at"]],
  ["quantity", ["opened.ambient"]],
  ["word", ["opened.state"]],
  ["text", ["opened.place"]],
];

/** Of these the key alone is the name; of others it says too little. */
const byKey = /^(?:pig|selection)\.(?!note)|^alarm_check\./;
const usualFacts = /^(?:pig|pig\.(?:tag|group|pen|age|sex|weight)|selection\.basis)$/;

const words = (text: string): string => text.replaceAll(/[._]/g, " ");

/** Of other quantities than lengths. */
const units: readonly (readonly [ids: RegExp, unit: string])[] = [
  [/^pig\.weight$/, "kg"],
  [/\.weight$/, "g"],
  [/temperature$|ambient$/, "°C"],
  [/^pig\.(?:age|since_weaning)$/, "d"],
];

const unitOf = (id: string, kind: ColumnKind): string | undefined =>
  kind === "quantity" ? (units.find(([ids]) => ids.test(id))?.[1] ?? "mm") : undefined;

function head(id: string, kind: ColumnKind): CaseColumn {
  const name = words(byKey.test(id) ? id.slice(id.lastIndexOf(".") + 1) : id);
  return {
    id,
    path: pathOf(id),
    name,
    kind,
    unit: unitOf(id, kind),
    title: name,
    usual: usualFacts.test(id),
  };
}

function ofOrgan({ id, key, definition }: PlacedOrgan): CaseColumn[] {
  const column = (rest: Path, kind: ColumnKind, title: string, usual = false): CaseColumn => ({
    id: [id, ...rest].join("."),
    path: [...pathOf(id), ...rest],
    name: words([key, ...rest].join(".")),
    kind,
    unit: unitOf([id, ...rest].join("."), kind),
    title,
    usual,
  });
  const observations = Object.entries(definition.observations ?? {}).flatMap(([name, observation]) => {
    const kind = kinds[observation.kind];
    if (kind === undefined) return [];
    const isUsual = observation.required === "unless-normal";
    const parts = Object.entries(observation.parts ?? {});
    return parts.length === 0
      ? [column([name], kind, observation.title, isUsual)]
      : parts.map(([part, title]) => column([name, part], kind, `${observation.title} ${title}`, isUsual));
  });
  const grades = (recordedGrades[id] ?? []).map((scale) => ({
    ...column(["grades", scale], "number" as const, `${definition.title} ${scale}`),
    name: scale,
  }));
  return [
    column([], "state", definition.title),
    ...observations,
    ...grades,
    column(["weight"], "quantity", `Weight ${definition.title}`),
    column(["note"], "text", `Note ${definition.title}`),
  ];
}

/** Figures from a tracing are no matter of a tally. */
const kinds: Readonly<Record<string, ColumnKind>> = {
  percent: "number",
  grade: "number",
  count: "number",
  choice: "word",
  choices: "choices",
  length: "quantity",
  "signed-length": "quantity",
};

/** All of them, in the order in which a case holds them. */
export const caseColumns: readonly CaseColumn[] = [
  ...facts.flatMap(([kind, ids]) => ids.map((id) => head(id, kind))),
  ...[...alarmSigns].map(([name, { look }]) => head(`alarm_check.${look}.${name}`, "word")),
  head("history", "text"),
  ...organs.flatMap(ofOrgan),
  head("note", "text"),
];

/** Letters and digits count, not case, nor what stands between words. */
export const bareName = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[\s._-]+/g, " ")
    .trim();

/** Each column by its path, by its name, and by every end of its path that no other has: `milk spots`. */
const known = new Map<string, CaseColumn | undefined>();
for (const column of caseColumns)
  for (let from = column.path.length - 1; from > 0; from--) {
    const end = bareName(column.path.slice(from).join(" "));
    known.set(end, known.has(end) ? undefined : column);
  }
for (const column of caseColumns.toReversed())
  for (const name of [column.id, column.name]) known.set(bareName(name), column);

/** All that a column may be called, for what is nearest to a slip. */
export const columnNames: readonly string[] = [...known].flatMap(([name, column]) =>
  column === undefined ? [] : [name],
);

/**
 * The column of a name or a path; of a grade, also the name of a scale of the practice's own under its organ.
 * @returns undefined where there is none
 */
export function caseColumn(name: string): CaseColumn | undefined {
  const found = known.get(bareName(name));
  if (found !== undefined) return found;
  const [, organ = "", scale = ""] = /^([a-z_]+\.[a-z_]+)\.grades\.([a-z0-9-]+)$/.exec(name) ?? [];
  const placed = organs.find(({ id }) => id === organ);
  return placed === undefined
    ? undefined
    : {
        id: name,
        path: [...placed.path, "grades", scale],
        name: scale,
        kind: "number",
        unit: undefined,
        title: `${placed.definition.title} ${scale}`,
        usual: false,
      };
}
