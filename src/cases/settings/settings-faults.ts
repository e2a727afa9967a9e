/** What fits the schema of a settings file and still means nothing: names that do not exist, circles, contradictions. */
import { vocabulary } from "../../generated/knowledge.ts";
import type { SettingsFile } from "../../generated/settings.types.ts";
import {
  alarmPatterns,
  autolysis,
  facts,
  type Indicator,
  isReportSection,
  isTemplateFile,
  organById,
  organs,
  protocols,
  reportSections,
  scaleIds,
  systems,
} from "../../knowledge/index.ts";
import { listing } from "../../words/listing.ts";
import { nearest } from "../../words/nearest.ts";
import type { Path } from "../model/path.ts";
import { formatPath } from "../model/path.ts";
import { caseColumn, columnNames, skipped } from "./case-columns.ts";
import { excludeFaults } from "./exclude-faults.ts";
import { lockedRules } from "./locked-rules.ts";
import { resultColumn, resultColumns } from "./result-columns.ts";

export interface SettingsFault {
  readonly path: Path;
  readonly message: string;
}

/** What stands first in a report. */
const answer = "answer";

/** Longer lists of names are not printed. */
const longList = 12;

/** `there is no scale "x". Did you mean y?` */
export function unknownName(name: string, known: readonly string[], what: string): string {
  const guess = nearest(name, known);
  const there =
    known.length > longList ? `None of the ${known.length} names is near.` : `There are ${listing(known)}.`;
  return `there is no ${what} "${name}". ${guess === undefined ? there : `Did you mean ${guess}?`}`;
}

/** Whether an entry under `scales:` names a file or folder, not a scale. */
export const isScalePath = (entry: string): boolean => /[\\/]|\.ya?ml$/i.test(entry) || entry === ".";

/** The word under `scales:` that stands for the scales that ship and are shown when nobody names any. */
export const allShipped = "shipped";

/**
 * All faults of a settings file that fits its schema.
 * @param houseScales names of the practice's own scales; null when some are not known, because their file cannot be
 *   read, so that no name of a scale can be called wrong
 */
export function settingsFaults(
  value: SettingsFile,
  houseScales: readonly string[] | null = [],
): SettingsFault[] {
  const scales = houseScales === null ? undefined : [...scaleIds, ...houseScales];
  const known = [...new Set([...protocols.keys(), ...Object.keys(value.protocols ?? {})])];
  return [
    ...(value.protocol === undefined ? [] : checkName(["protocol"], value.protocol, known, "protocol")),
    ...(value.scales ?? []).flatMap((id, index) =>
      isScalePath(id) || id === allShipped ? [] : checkScale(["scales", index], id, scales),
    ),
    ...excludeFaults(value.exclude),
    ...(value.notifiable ?? []).flatMap((id, index) =>
      checkName(
        ["notifiable", index],
        id,
        alarmPatterns.map((pattern) => pattern.id),
        "alarm pattern",
      ),
    ),
    ...Object.entries(value.rules ?? {}).flatMap(([id, level]) =>
      lockedRules.includes(id) && level !== "error"
        ? fault(["rules", id], `${id} guards the alarms or the format and stays error. Take this line out.`)
        : [],
    ),
    ...Object.keys(value.protocols ?? {}).flatMap((id) => checkProtocol(id, value, known)),
    ...circles(value),
    ...Object.entries(value.indicators ?? {}).flatMap(([id, indicator]) =>
      checkIndicator(["indicators", id], indicator, scales),
    ),
    ...Object.entries(value.import?.columns ?? {}).flatMap(([head, column]) =>
      checkColumn(["import", "columns", head], column, [caseColumn, columnNames, "value of a case"]),
    ),
    ...Object.entries(value.import?.results_columns ?? {}).flatMap(([head, column]) =>
      checkColumn(["import", "results_columns", head], column, [
        resultColumn,
        resultColumns.map(({ id }) => id),
        "value of a result",
      ]),
    ),
    ...reportFaults(value.report),
    ...Object.entries(value.autolysis ?? {}).flatMap(([band, kinds]) => [
      ...checkName(["autolysis", band], band, Object.keys(autolysis.bands), "temperature band"),
      ...Object.keys(kinds).flatMap((kind) =>
        checkName(["autolysis", band, kind], kind, Object.keys(autolysis.kinds), "kind of test"),
      ),
    ]),
  ];
}

const fault = (path: Path, message: string): SettingsFault[] => [
  { path, message: `${formatPath(path)}: ${message}` },
];

const checkName = (path: Path, name: string, known: readonly string[], what: string): SettingsFault[] =>
  known.includes(name) ? [] : fault(path, unknownName(name, known, what));

const checkScale = (path: Path, id: string, known: readonly string[] | undefined): SettingsFault[] =>
  known === undefined ? [] : checkName(path, id, known, "scale");

function checkProtocol(id: string, value: SettingsFile, known: readonly string[]): SettingsFault[] {
  const {
    add = [],
    wanted = [],
    leave_out = [],
    facts: needed = [],
    extends: base,
  } = value.protocols?.[id] ?? {};
  const path = ["protocols", id];
  return [
    ...(base === undefined ? [] : checkName([...path, "extends"], base, known, "protocol")),
    ...add.flatMap((entry, index) =>
      entry === "base" ? [] : checkOrgan([...path, "add", index], entry, true),
    ),
    ...wanted.flatMap((entry, index) => checkOrgan([...path, "wanted", index], entry, true)),
    ...leave_out.flatMap((entry, index) => checkOrgan([...path, "leave_out", index], entry, true)),
    ...needed.flatMap((entry, index) =>
      checkName([...path, "facts", index], entry, ["all", ...facts.keys()], "fact"),
    ),
  ];
}

function checkColumn(
  path: Path,
  column: string | { readonly to: string },
  [find, names, what]: readonly [(name: string) => unknown, readonly string[], string],
): SettingsFault[] {
  const [to, at] = typeof column === "string" ? [column, path] : [column.to, [...path, "to"]];
  if (to === skipped || find(to) !== undefined) return [];
  return fault(at, unknownName(to, [skipped, ...names], what));
}

function reportFaults({ extra = {}, order = {}, templates = {} }: NonNullable<SettingsFile["report"]> = {}) {
  const known = [...reportSections, ...Object.keys(extra)];
  return [
    ...Object.keys(extra).flatMap((id) =>
      isReportSection(id) || id === answer
        ? fault(["report", "extra", id], `${id} is a section that ships; give yours another name.`)
        : [],
    ),
    ...Object.entries(order).flatMap(([reader, ids = []]) =>
      ids.flatMap((id, index) =>
        id === answer
          ? fault(["report", "order", reader, index], "the answer comes first always; take it out here.")
          : checkName(["report", "order", reader, index], id, known, "section"),
      ),
    ),
    ...Object.entries(templates).flatMap(([id, file]) => [
      ...(id === "cautions"
        ? fault(["report", "templates", id], "cautions stay as they are; say yours in a section under extra.")
        : checkName(["report", "templates", id], id, reportSections, "section that ships")),
      ...(isTemplateFile(file)
        ? []
        : fault(["report", "templates", id], "the name of a template ends in .liquid.")),
    ]),
  ];
}

/** Each circle of protocols that extend each other, once. */
function circles({ protocols: own = {} }: SettingsFile): SettingsFault[] {
  const found = new Set<string>();
  return Object.keys(own).flatMap((start) => {
    const chain: string[] = [];
    let name: string | undefined = start;
    while (name !== undefined && Object.hasOwn(own, name) && !chain.includes(name)) {
      chain.push(name);
      const next: string | undefined = own[name]?.extends;
      // A name that ships and extends itself starts from what ships.
      name = next === name && protocols.has(name) ? undefined : next;
    }
    if (name !== start || found.has(name)) return [];
    for (const member of chain) found.add(member);
    const how = chain.length === 1 ? "it extends itself" : `${listing(chain)} extend each other in a circle`;
    return fault(
      ["protocols", start, "extends"],
      `${how}; let one of them extend another protocol, or none.`,
    );
  });
}

/** An organ is written as `nervous.brain`; where systems may stand too, `nervous` is all of its organs. */
function checkOrgan(path: Path, entry: string, orSystem: boolean): SettingsFault[] {
  const systemIds = orSystem ? systems.map(({ id }) => id) : [];
  if (organById(entry) !== undefined || systemIds.includes(entry)) return [];
  const byKey = nearest(
    entry,
    organs.map(({ key }) => key),
  );
  const guess =
    nearest(entry, [...systemIds, ...organs.map(({ id }) => id)]) ??
    organs.find(({ key }) => key === byKey)?.id;
  const what = orSystem ? "system or organ" : "organ";
  const help =
    guess === undefined ? "Write an organ as system.organ, such as nervous.brain." : `Did you mean ${guess}?`;
  return fault(path, `there is no ${what} "${entry}". ${help}`);
}

function checkIndicator(
  path: Path,
  { score, finding }: Indicator,
  scales: readonly string[] | undefined,
): SettingsFault[] {
  if ((score === undefined) === (finding === undefined)) return fault(path, "write either score or finding.");
  if (finding !== undefined)
    return [
      ...checkOrgan([...path, "finding", "organ"], finding.organ, false),
      ...(finding.process ?? []).flatMap((word, index) =>
        checkName([...path, "finding", "process", index], word, vocabulary.process, "process"),
      ),
    ];
  if (score === undefined) return [];
  return [
    ...checkScale([...path, "score", "scale"], score.scale, scales),
    ...((score.at_least === undefined) === (score.above === undefined)
      ? fault([...path, "score"], "write either at_least or above.")
      : []),
  ];
}
