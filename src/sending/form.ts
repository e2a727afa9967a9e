/** What a laboratory's own form asks for, from the record of a visit: to be copied from, and to go with the samples. */
import { type Case, questionText, type Visit } from "../cases/index.ts";
import {
  containersOf,
  findingsOf,
  groupsOf,
  isForLaboratory,
  isLesion,
  morphologicDiagnoses,
  type PlacedFinding,
  parcelsOf,
  testNames,
  whereOf,
} from "../record/index.ts";
import { capital, count, listing } from "../words/listing.ts";
import { shortId } from "../words/short-id.ts";

export interface FormTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** The same where there is no room for columns: what stands first, then the rest. */
  readonly lines: readonly (readonly [string, string])[];
}

export interface FormSection {
  readonly title: string;
  /** What is asked, and the answer; those without one are left out. */
  readonly facts: readonly (readonly [asked: string, answer: string])[];
  readonly table?: FormTable;
}

export interface Form {
  readonly visit: string;
  readonly sections: readonly FormSection[];
}

/** Undefined where nothing goes to a laboratory. */
export function formOf(visit: Visit): Form | undefined {
  const containers = containersOf(visit).filter(({ sample }) => isForLaboratory(sample));
  if (containers.length === 0) return undefined;
  const pigs = visit.cases.filter((one) => containers.some((container) => container.one === one));
  const { record, farm } = visit;
  const short = (one: Case): string => shortId(one.id, visit.id);
  const asked = new Set(containers.flatMap(({ tests }) => tests));
  const contacts = parcelsOf(visit).flatMap(({ parcel }) => parcel.contact ?? []);
  return {
    visit: visit.id,
    sections: [
      section("Sender", [
        ["Veterinarian", record.veterinarian],
        ["Contact", listing([...new Set(contacts)])],
        ["Farm", [farm?.record.name ?? farm?.id, farm?.record.system].filter(Boolean).join(", ")],
        ["Visit", `${visit.id}, ${record.date}`],
        ["Question", questionText(record).text],
        ["Wanted", testNames([...asked])],
      ]),
      section("History", [
        ["Complaint", record.complaint],
        ["Signs", listing(record.signs ?? [])],
        ["Treated", treatmentsOf(visit)],
        ["Vaccinated", (record.vaccinations ?? []).join("; ")],
        ["Changed", (record.changes ?? []).join("; ")],
      ]),
      {
        ...section("Groups", []),
        table: tableOf(
          ["group", "pigs", "ill", "dead", "first ill", "weaned since", "feed, water, other"],
          groupsOf(visit).map(([name, group]) => [
            name,
            ...[group.at_risk, group.affected, group.dead].map((number) => String(number ?? "")),
            group.onset ?? "",
            group.since_weaning ?? "",
            [
              group.feed?.form,
              group.feed?.changed && `feed changed ${group.feed.changed}`,
              group.feed?.note,
              group.water?.note,
              group.note,
            ]
              .filter(Boolean)
              .join("; "),
          ]),
          ["", "# pigs", "# ill", "# dead", "first ill #", "weaned since #", "#"],
        ),
      },
      {
        ...section("Pigs", [
          [
            "Opened besides",
            visit.cases.length > pigs.length
              ? `${count(visit.cases.length - pigs.length, "pig")} of which no sample is sent`
              : undefined,
          ],
        ]),
        table: tableOf(
          ["pig", "tag", "group", "age, sex, weight", "signs, for how long, treated", "died, opened"],
          pigs.map((one) => [short(one), ...pigCells(one)]),
          ["pig #", "tag #", "#", "#", "#", "#"],
        ),
      },
      section(
        "Found at necropsy",
        pigs.map((one) => [`Pig ${short(one)}`, foundIn(one)]),
      ),
      {
        ...section("Samples", []),
        table: tableOf(
          ["number", "pig", "what", "container", "wanted", "taken"],
          containers.map(({ id, one, what, container, tests, takenAt, note, pooledWith }) => [
            id,
            listing([short(one), ...pooledWith.map((other) => shortId(other, visit.id))]),
            what,
            container ?? "",
            [testNames(tests), note].filter(Boolean).join("; "),
            clock(takenAt),
          ]),
          ["", "pig #", "#", "#", "#", "#"],
        ),
      },
    ].filter(({ facts, table }) => facts.length > 0 || (table?.rows.length ?? 0) > 0),
  };
}

const section = (title: string, facts: readonly (readonly [string, string | undefined])[]): FormSection => ({
  title,
  facts: facts.flatMap(([asked, answer]) =>
    answer === undefined || answer === "" ? [] : [[asked, answer] as const],
  ),
});

/** @param said a cell in a sentence, as `# ill` */
const tableOf = (
  columns: readonly string[],
  rows: readonly (readonly string[])[],
  said: readonly string[],
): FormTable => ({
  columns,
  rows,
  lines: rows.map(([first = "", ...cells]) => [
    (said[0] || "#").replace("#", () => first),
    cells
      .flatMap((cell, index) => (cell === "" ? [] : [(said[index + 1] ?? "#").replace("#", () => cell)]))
      .join("; "),
  ]),
});

const clock = (at: string | undefined): string => (at ?? "").slice(0, 16).replace("T", " ");

const treatmentsOf = ({ record }: Visit): string =>
  (record.treatments ?? [])
    .map((one) => (typeof one === "string" ? one : Object.values(one).join(", ")))
    .join("; ");

function pigCells({ record, signs }: Case): string[] {
  const { pig = {}, selection = {}, death = {}, opened = {} } = record;
  const { treated } = selection;
  const given =
    treated === undefined
      ? undefined
      : typeof treated === "object"
        ? `treated: ${Object.values(treated).join(", ")}`
        : treated === "no" || String(treated) === "false"
          ? "not treated"
          : `treated: ${treated}`;
  return [
    String(pig.tag ?? ""),
    pig.group ?? "",
    [pig.age ?? pig.class, pig.sex, pig.weight].filter(Boolean).join(", "),
    [listing(signs), selection.onset, given].filter(Boolean).join("; "),
    [
      [death.manner, death.method].filter(Boolean).join(", "),
      clock(death.at),
      opened.at === undefined ? "" : `opened ${clock(opened.at)}`,
    ]
      .filter((text) => text !== "")
      .join("; "),
  ];
}

/** The morphologic diagnoses; where none is written, the lesions in the words of the record. */
function foundIn(one: Case): string {
  const diagnosed = morphologicDiagnoses(one).map(({ text }) => text);
  const found =
    diagnosed.length > 0
      ? diagnosed
      : findingsOf(one)
          .filter(({ finding }) => isLesion(finding) && finding.severity !== "minimal")
          .map(inWords);
  return found.length === 0 ? "no lesion recorded" : `${found.join(". ")}.`;
}

/** `Lungs, left middle lobe: consolidation, cranioventral, dark-red, firm, 13 %, moderate, acute`. */
function inWords({ organ, finding }: PlacedFinding): string {
  const { process, distribution, colour, consistency, exudate, extent, size, number, severity, duration } =
    finding;
  const where = whereOf(finding);
  return `${capital(organ.definition.title)}${where === "" ? "" : `, ${where}`}: ${[
    process,
    distribution,
    colour,
    consistency,
    exudate,
    extent,
    size,
    number === undefined ? undefined : `number ${number}`,
    severity,
    duration,
  ]
    .filter((word) => word !== undefined)
    .join(", ")}`;
}
