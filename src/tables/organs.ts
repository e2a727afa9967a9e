/** What was seen: a row an organ, a row a lesion, a row an observation. */
import { type OrganState, quantity } from "../cases/index.ts";
import { organs as anatomy, type Observation, type PlacedOrgan, scaleIds } from "../knowledge/index.ts";
import { scales } from "../knowledge/scales.ts";
import {
  extentPercent,
  findingsOf,
  isLesion,
  lesionPath,
  type PlacedFinding,
  placedStates,
  sizesMm,
  volumeMl,
} from "../record/index.ts";
import { type OfCase, ofCase } from "./places.ts";
import { code, flag, id, integer, named, number, table, text } from "./table.ts";

const organIds = anatomy.map((organ) => organ.id);
const caseField = <Source extends OfCase>() =>
  id<Source>("case", "Case", "case: case", "case", ({ one }) => one.id);

interface OrganRow extends OfCase {
  readonly organ: PlacedOrgan;
  readonly state: OrganState;
}

export const organs = table<OrganRow>({
  name: "organs",
  title: "One row an organ that was due or is recorded: blank is never normal",
  key: ["case", "organ"],
  fields: [
    caseField(),
    code("organ", "System and organ", "the organs of the case", ({ organ }) => organ.id, organIds),
    flag(
      "due",
      "Whether this examination had to cover it",
      "worked out: protocol, age, signs",
      ({ one, organ }) => one.due.includes(organ),
    ),
    flag(
      "must",
      "Whether it may not be left out; other organs that are due are wanted",
      "worked out: protocol, age, signs",
      ({ one, organ }) => one.must.has(organ),
    ),
    code("status", "What is said of it", "worked out: its entry", ({ state }) => state.status, [
      "blank",
      "normal",
      "recorded",
      "not_examined",
      "not_assessable",
    ]),
    flag(
      "by_system",
      "Whether the word normal stands for its whole system",
      "worked out: its entry",
      ({ state }) => state.bySystem,
    ),
    flag(
      "abnormal",
      "Whether a finding, an observation or a grade says that something is wrong; empty where nobody could see",
      "worked out: its entry",
      ({ one, organ, state }) =>
        state.status === "normal" || state.status === "recorded"
          ? lesionPath(one, organ, state) !== undefined
          : undefined,
    ),
    code(
      "because",
      "What kept it from being assessed",
      "case: #organs-plain_organ.not_assessable.because",
      ({ state }) => state.because,
    ),
    text("reason", "Why it was not examined or assessed", "its entry", ({ state }) => state.reason),
    text("note", "Note", "its entry", ({ state }) => state.entry?.note),
  ],
  rows: ({ cases }) =>
    cases.flatMap((one) => {
      const place = ofCase(one);
      return anatomy.flatMap((organ) => {
        const state = one.organ(organ);
        return state.status === "blank" && !one.due.includes(organ) ? [] : [{ ...place, organ, state }];
      });
    }),
});

interface FindingRow extends OfCase, PlacedFinding {
  readonly number: number;
}

/** Of a paired organ the side stands above the finding. */
const sideAbove = ({ path }: PlacedFinding): string | undefined =>
  path.find((step) => step === "left" || step === "right")?.toString();

const word = (key: keyof PlacedFinding["finding"] & string, title: string) =>
  code<FindingRow>(key, title, `case: #organs-finding.${key}`, ({ finding }) => {
    const value = finding[key];
    return typeof value === "string" ? value : undefined;
  });

export const findings = table<FindingRow>({
  name: "findings",
  title: "One row a described lesion",
  key: ["case", "finding"],
  fields: [
    caseField(),
    integer(
      "finding",
      "Which of the case, counted from 1",
      "worked out: its place",
      ({ number: which }) => which,
    ),
    code("organ", "System and organ", "the organ of the finding", ({ organ }) => organ.id, organIds),
    code(
      "side",
      "On which side of the pig",
      "case: #organs-finding.side",
      (row) => sideAbove(row) ?? row.finding.side,
    ),
    word("process", "What has happened to the tissue"),
    flag(
      "lesion",
      "Whether it is one of the living pig: no artefact, no autolysis",
      "worked out: process and certainty",
      ({ finding }) => isLesion(finding),
    ),
    word("distribution", "How it lies in the organ"),
    number("extent", "Share of the organ", "case: #organs-finding.extent", "%", ({ finding }) =>
      extentPercent(finding),
    ),
    number("size", "Its longest dimension", "case: #organs-finding.size", "mm", ({ finding }) =>
      longest(sizesMm(finding)),
    ),
    integer("number", "How many", "case: #organs-finding.number", ({ finding }) => finding.number),
    number("volume", "Amount of a fluid", "case: #organs-finding.volume", "ml", ({ finding }) =>
      volumeMl(finding),
    ),
    word("colour", "Colour"),
    word("consistency", "How it feels"),
    word("exudate", "What comes out of it or lies on it"),
    word("severity", "Severity"),
    word("duration", "Duration"),
    word("margin", "Border to the tissue around it"),
    word("contour", "Height against the surface"),
    word("shape", "Outline"),
    word("certainty", "How sure it is"),
    text("site", "Where in the organ", "case: #organs-finding.site", ({ finding }) => finding.site),
    text("note", "Note", "case: #organs-finding.note", ({ finding }) => finding.note),
  ],
  rows: ({ cases }) =>
    cases.flatMap((one) => {
      const place = ofCase(one);
      return findingsOf(one).map((found, index) => ({ ...place, ...found, number: index + 1 }));
    }),
});

const longest = (sizes: readonly number[]): number | undefined =>
  sizes.length === 0 ? undefined : Math.max(...sizes);

/** One value that was observed: a number with its unit, or a word. */
interface Observed {
  readonly organ: string;
  readonly side?: string;
  readonly observation: string;
  readonly part?: string;
  readonly number?: number | undefined;
  readonly unit?: string | undefined;
  readonly word?: string | undefined;
  readonly reader?: string;
}

interface ObservationRow extends OfCase, Observed {}

const definitions = anatomy.flatMap(({ definition }) => Object.entries(definition.observations ?? {}));
const partsOf = ({ parts, figures }: Observation): string[] => [
  ...Object.keys(parts ?? {}),
  ...Object.values(figures ?? {}).flatMap((figure) => Object.keys(figure.parts ?? {})),
];

export const observations = table<ObservationRow>({
  name: "observations",
  title: "One row a value that was observed, measured or graded; a choice of several words has a row each",
  key: [],
  fields: [
    caseField(),
    code("organ", "System and organ", "the organ of the observation", ({ organ }) => organ, [
      ...organIds,
      "pig",
    ]),
    code("side", "Side of a paired organ", "its place", ({ side }) => side, ["left", "right"]),
    code(
      "observation",
      "What was observed; grade: under a scale",
      "its key in the organ",
      ({ observation }) => observation,
      [
        ...new Set([
          "weight",
          "size",
          "grade",
          ...definitions.flatMap(([key, { figures }]) => [key, ...Object.keys(figures ?? {})]),
        ]),
      ],
    ),
    named(
      "part",
      "Which part of the organ; of a grade, the scale",
      "its key in the observation",
      "own",
      [...scaleIds, ...definitions.flatMap(([, definition]) => partsOf(definition))],
      ({ part }) => part,
    ),
    number(
      "value",
      "The number, in the unit beside it",
      "its value",
      undefined,
      ({ number: value }) => value,
    ),
    code(
      "unit",
      "Unit of the number; empty for a grade, a count or a ratio",
      "worked out: the observation",
      ({ unit }) => unit,
      ["%", "mm", "kg"],
    ),
    code("word", "The word, where it is none", "its value", ({ word: chosen }) => chosen, [
      ...new Set(definitions.flatMap(([, { values }]) => values ?? [])),
    ]),
    id(
      "reader",
      "Who read it, where not the examiner",
      "case: #reading.reader",
      "reader",
      ({ reader }) => reader,
    ),
  ],
  rows: ({ cases }) =>
    cases.flatMap((one) => {
      const place = ofCase(one);
      return [...observedIn(one), ...readIn(one)].map((observed) => ({ ...place, ...observed }));
    }),
});

type OneCase = OfCase["one"];

const observedIn = (one: OneCase): Observed[] =>
  placedStates(one).flatMap(({ organ, state }) => {
    const { entry } = state;
    if (entry === undefined) return [];
    const side = state.path.at(-1);
    const at = {
      organ: organ.id,
      ...((side === "left" || side === "right") && organ.definition.form === "paired" && { side }),
    };
    return [
      ...whole({ ...at, observation: "weight", unit: "kg", number: quantity("mass", entry.weight) }),
      ...whole({
        ...at,
        observation: "size",
        unit: "mm",
        number: sizesMm({ process: "mass", ...(entry.size !== undefined && { size: entry.size }) }).at(0),
      }),
      ...Object.entries(entry.grades ?? {}).flatMap(([part, grade]) =>
        whole({ ...at, observation: "grade", part, number: grade }),
      ),
      ...Object.entries(organ.definition.observations ?? {}).flatMap(([observation, definition]) =>
        valuesOf(entry[observation], definition).map((value) => ({ observation, ...at, ...value })),
      ),
    ];
  });

/** Grades that others gave. */
const readIn = (one: OneCase): Observed[] =>
  (one.record.readings ?? []).flatMap(({ reader, grades }) =>
    Object.entries(grades).map(([part, grade]) => ({
      organ: (scales.get(part) ?? one.settings.houseScales.get(part))?.organ ?? "pig",
      observation: "grade",
      part,
      number: grade,
      reader,
    })),
  );

const whole = (observed: Observed): Observed[] => (observed.number === undefined ? [] : [observed]);

type Valued = Pick<Observed, "part" | "number" | "unit" | "word"> & { readonly observation?: string };

function valuesOf(value: unknown, definition: Pick<Observation, "kind" | "parts" | "figures">): Valued[] {
  if (value === undefined || value === null) return [];
  if (definition.kind === "measured")
    return Object.entries(definition.figures ?? {}).flatMap(([observation, figure]) =>
      valuesOf((value as Record<string, unknown>)[observation], {
        kind: figure.kind === "length" ? "length" : "grade",
        ...(figure.parts !== undefined && { parts: figure.parts }),
      }).map((one) => ({ observation, ...one })),
    );
  if (definition.parts !== undefined && typeof value === "object" && !Array.isArray(value))
    return Object.keys(definition.parts).flatMap((part) =>
      singleValue((value as Record<string, unknown>)[part], definition.kind).map((one) => ({ part, ...one })),
    );
  return singleValue(value, definition.kind);
}

function singleValue(value: unknown, kind: Observation["kind"]): Valued[] {
  if (Array.isArray(value)) return value.flatMap((one) => singleValue(one, kind));
  if (typeof value === "number") return [{ number: value, ...(kind === "percent" && { unit: "%" }) }];
  if (typeof value === "boolean") return [{ word: value ? "yes" : "no" }];
  if (typeof value !== "string") return [];
  if (kind !== "length" && kind !== "signed-length") return [{ word: value }];
  const length = quantity("length", value);
  return length === undefined ? [] : [{ number: length, unit: "mm" }];
}
