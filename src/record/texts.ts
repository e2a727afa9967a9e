/** What a case or a visit says in words. */
import { type Case, formatPath, type Path, questionText, type Visit } from "../cases/index.ts";
import { organById } from "../knowledge/index.ts";
import { textOf } from "./diagnoses.ts";
import { fact } from "./fact.ts";
import { placedStates } from "./organs.ts";

/**
 * Looks at every text of a record, words of the format included.
 * @param see gets the text, the key that it or its list stands under, and its path on demand
 */
export function eachText(record: object, see: (text: string, key: string, path: () => Path) => void): void {
  const steps: (string | number)[] = [];
  const path = (): Path => [...steps];
  const visit = (value: unknown, key: string): void => {
    if (typeof value === "string") see(value, key, path);
    else if (Array.isArray(value))
      for (const [index, inside] of value.entries()) {
        steps.push(index);
        visit(inside, key);
        steps.pop();
      }
    else if (typeof value === "object" && value !== null)
      for (const inside of Object.keys(value)) {
        steps.push(inside);
        visit((value as Record<string, unknown>)[inside], inside);
        steps.pop();
      }
  };
  visit(record, "");
}

/** A text in free words about the pigs. */
export interface FreeText {
  readonly text: string;
  readonly path: Path;
  /** Of a text that belongs to one organ. */
  readonly organ: string | undefined;
}

type Written = readonly [text: string | undefined, path: Path, organ?: string | undefined];

/** Everything that a case says in free words about the pig, each with the organ it belongs to. */
export const freeTextsOf = fact((one: Case): readonly FreeText[] => {
  const { record } = one;
  return kept([
    [record.history, ["history"]],
    [record.selection?.note, ["selection", "note"]],
    [treatedWith(one), ["selection", "treated", "with"]],
    [record.death?.note, ["death", "note"]],
    [record.opened?.note, ["opened", "note"]],
    [record.safety?.note, ["safety", "note"]],
    ...listed(record.diagnosis?.morphologic?.map(textOf), ["diagnosis", "morphologic"]),
    [record.diagnosis?.comment, ["diagnosis", "comment"]],
    ...ofOrgans(one),
    ...ofSamples(one),
    ...(record.readings ?? []).map(({ note }, index): Written => [note, ["readings", index, "note"]]),
    ...(record.photos ?? []).map(
      (photo, index): Written => [
        typeof photo === "object" ? photo.note : undefined,
        ["photos", index, "note"],
      ],
    ),
    [record.note, ["note"]],
  ]);
});

/** What the visit says of pigs that no case need show. */
export const freeTextsOfVisit = fact(({ record }: Visit): readonly FreeText[] => {
  const question = questionText(record);
  return kept([
    [record.complaint, ["complaint"]],
    [question.text, question.path],
    ...Object.entries(record.groups ?? {}).flatMap(([group, { note, feed, water }]): Written[] => [
      [note, ["groups", group, "note"]],
      [feed?.note, ["groups", group, "feed", "note"]],
      [water?.note, ["groups", group, "water", "note"]],
    ]),
    ...(record.treatments ?? []).flatMap((entry, index): Written[] => {
      if (typeof entry === "string") return [[entry, ["treatments", index]]];
      const texts = ["with", "for", "note"] as const;
      return texts.map((key) => [entry[key], ["treatments", index, key]]);
    }),
    [record.trial?.treatment, ["trial", "treatment"]],
    [record.trial?.note, ["trial", "note"]],
    ...listed(record.vaccinations, ["vaccinations"]),
    ...listed(record.changes, ["changes"]),
    ...(record.environment ?? []).map(({ note }, index): Written => [note, ["environment", index, "note"]]),
    ...(record.parcels ?? []).map(({ note }, index): Written => [note, ["parcels", index, "note"]]),
    ...(record.tests ?? []).map(({ from }, index): Written => [from, ["tests", index, "from"]]),
    [record.pigs?.drawn, ["pigs", "drawn"]],
    [record.pigs?.readers, ["pigs", "readers"]],
    [record.pigs?.few, ["pigs", "few"]],
    [record.pigs?.left_closed, ["pigs", "left_closed"]],
    [record.note, ["note"]],
  ]);
});

const listed = (texts: readonly string[] | undefined, path: Path): Written[] =>
  (texts ?? []).map((text, index) => [text, [...path, index]]);

function treatedWith({ record }: Case): string | undefined {
  const treated = record.selection?.treated;
  return typeof treated === "object" ? treated.with : undefined;
}

function ofOrgans(one: Case): Written[] {
  const written: Written[] = [];
  for (const { organ, state } of placedStates(one)) {
    const { entry, path, reason, findings, status } = state;
    if (reason !== undefined) {
      const where = status === "not_assessable" ? ["not_assessable", "why"] : ["not_examined"];
      written.push([reason, [...path, ...where], organ.id]);
    }
    if (entry?.note !== undefined) written.push([entry.note, [...path, "note"], organ.id]);
    for (const { finding, path: at } of findings) {
      if (finding.site !== undefined) written.push([finding.site, [...at, "site"], organ.id]);
      if (finding.note !== undefined) written.push([finding.note, [...at, "note"], organ.id]);
    }
  }
  return written;
}

const ofSamples = ({ record }: Case): Written[] =>
  (record.samples ?? []).flatMap(({ site, note, from }, index): Written[] => {
    const organ = organById(from)?.id;
    return [
      [site, ["samples", index, "site"], organ],
      [note, ["samples", index, "note"], organ],
    ];
  });

/** Texts that are written, each place once: paired organs show a state twice. */
function kept(written: readonly Written[]): FreeText[] {
  const places = new Map<string, FreeText>();
  for (const [text, path, organ] of written)
    if (text !== undefined) places.set(formatPath(path), { text, path, organ });
  return [...places.values()];
}

export interface OrganNote {
  readonly text: string;
  readonly path: Path;
  /** Its path as people write it. */
  readonly name: string;
}

/** What is written in free words about organs: the site and note of each finding, and the note of the organ. */
export const notesOfOrgans = fact((one: Case): readonly OrganNote[] => {
  const notes = new Map<string, OrganNote>();
  const add = (text: string | undefined, path: Path, key: string): void => {
    if (text === undefined) return;
    const whole = [...path, key];
    const name = formatPath(whole);
    notes.set(name, { text, path: whole, name });
  };
  for (const { state } of placedStates(one)) {
    add(state.entry?.note, state.path, "note");
    for (const { finding, path } of state.findings) {
      add(finding.site, path, "site");
      add(finding.note, path, "note");
    }
  }
  return [...notes.values()];
});
