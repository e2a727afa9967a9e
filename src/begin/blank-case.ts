/** The file of one pig: what is known of it, and blank what is due, organs in the order of the knife. */
import { type Case, isUnborn } from "../cases/index.ts";
import type { Form, FormValue } from "../cases/yaml/form.ts";
import { type Observation, type PlacedOrgan, signFamilies } from "../knowledge/index.ts";
import { organsByKnife } from "../knowledge/knife.ts";
import { askedOfNormal, requiredFacts } from "../record/index.ts";
import { grouped } from "../words/grouped.ts";
import type { PigWish } from "./pig-wish.ts";

/** What the visit says for its cases, by path; undefined where it is to be filled in there. */
export type Given = ReadonlyMap<string, string | undefined>;

export interface BlankCaseWish {
  readonly id: string;
  readonly pig: PigWish;
  /** The case as far as it is known. */
  readonly one: Case;
  /** The same with the signs of the visit. */
  readonly beside: Case;
  readonly given: Given;
  readonly known: { readonly group?: string; readonly age?: string; readonly class?: string };
}

export function blankCase({ id, pig, one, beside, given, known }: BlankCaseWish): Form {
  const { record } = one;
  const isHealthy = pig.basis === "comparison";
  const facts = requiredFacts(one).map((fact) => fact.id);
  const own = facts.filter((path) => !given.has(path));
  /** Of these keys of a group what is asked or known. */
  const group = (name: string, keys: readonly string[], values: Readonly<Record<string, FormValue>>): Form =>
    keys
      .filter(
        (key) =>
          own.includes(`${name}.${key}`) || (values[key] !== undefined && !given.has(`${name}.${key}`)),
      )
      .map((key) => [key, values[key]] as const);
  const flow = (name: string, form: Form): Form => (form.length === 0 ? [] : [[name, { flow: form }]]);
  const word = (text: string | undefined): FormValue => (text === undefined ? undefined : { word: text });
  const selection = selectionKeys.filter(
    (key) =>
      alwaysAsked.has(key) || own.includes(`selection.${key}`) || (key === "note" && pig.note !== undefined),
  );
  const isOtherDeath = pig.basis === "found-dead";
  return [
    ["format", { word: "1" }],
    ["case", id],
    ...(given.has("protocol") || record.protocol === undefined
      ? []
      : [["protocol", record.protocol] as const]),
    ...(own.includes("examiner") && one.visit !== undefined ? [["examiner", undefined] as const] : []),
    ...flow(
      "pig",
      group("pig", pigKeys, {
        tag: pig.tag,
        group: known.group,
        age: known.age,
        class: word(known.class),
      }),
    ),
    [
      "selection",
      {
        flow: selection.map((key): Form[number] => [
          key,
          key === "basis"
            ? word(pig.basis)
            : key === "signs"
              ? pig.signs
              : key === "note"
                ? pig.note
                : undefined,
        ]),
      },
    ],
    ...flow("death", [
      ...(isOtherDeath ? [["manner", { word: "found-dead" }] as const] : []),
      ...group("death", isOtherDeath ? ["at"] : ["manner", "at"], {}).flatMap(withMethod(one)),
      ...(isOtherDeath ? [["note", undefined] as const] : []),
    ]),
    ...flow("opened", group("opened", ["at", "ambient", "state"], {})),
    ...alarmCheck(own),
    ...organs({ one, beside, isHealthy, given }),
  ];
}

/** How it was killed is asked with the manner, before that is known. */
const withMethod =
  ({ ageClass, protocol }: Case) =>
  (entry: Form[number]): Form =>
    entry[0] === "manner" && !isUnborn(ageClass) && protocol.manners === undefined
      ? [entry, ["method", undefined]]
      : [entry];

const pigKeys = ["tag", "group", "age", "class", "sex", "weight", "crown_rump"];
const selectionKeys = ["basis", "signs", "onset", "treated", "typical", "note"];
/** Asked by rules of their own. */
const alwaysAsked: ReadonlySet<string> = new Set(["basis", "signs"]);

function alarmCheck(facts: readonly string[]): Form {
  const looks = facts.filter((path) => path.startsWith("alarm_check.")).map((path) => path.split("."));
  const byLook = [...grouped(looks, ([, look = ""]) => look)];
  if (byLook.length === 0) return [];
  const flow: Form = byLook.map(([look, paths]) => [
    look,
    { flow: paths.map(([, , sign = ""]) => [sign, undefined] as const) },
  ]);
  return [["alarm_check", { flow }]];
}

interface OrgansWish {
  readonly one: Case;
  readonly beside: Case;
  readonly isHealthy: boolean;
  readonly given: Given;
}

/** The list for all that is normal, and below their systems the organs due; of a healthy pig those that no list answers. */
function organs({ one, beside, isHealthy, given }: OrgansWish): Form {
  const must = new Set(isHealthy ? [...one.must, ...beside.must] : one.must);
  const isAlone = (organ: PlacedOrgan): boolean => askedOfNormal(one, organ).length > 0;
  const shown = organsByKnife.filter((organ) => must.has(organ) && (!isHealthy || isAlone(organ)));
  const listed = systemsOf(organsByKnife.filter((organ) => one.must.has(organ)));
  const families = signFamilies(one.signs);
  const blocks = systemsOf(shown).map((id): Form[number] => {
    const keys = shown
      .filter(({ system }) => system === id)
      .map((organ) => [organ.key, isHealthy ? undefined : entry(one, organ, families, given)] as const);
    const all: Form = [...keys, ["rest", undefined]];
    return [id, isHealthy ? { flow: all } : { block: all }];
  });
  if (listed.length === 0) return blocks;
  return [...normalComment(listed), ["normal", undefined], ...blocks];
}

/** Systems as the knife first comes to them. */
const systemsOf = (organs: readonly PlacedOrgan[]): readonly string[] => [
  ...new Set(organs.map(({ system }) => system)),
];

/** Which systems there are to think of; a list that could be taken over whole would be a word for the pig. */
function normalComment(listed: readonly string[]): Form {
  const lines: string[] = [];
  let line = "Due:";
  for (const [index, id] of listed.entries()) {
    const next = ` ${id}${index < listed.length - 1 ? "," : "."}`;
    if (line.length + next.length > 76) {
      lines.push(line);
      line = " ";
    }
    line += next;
  }
  return [...lines, line, "Looked at and normal, named one by one:"].map((text) => ["#", text] as const);
}

/** Blank; or what must be observed of the organ, where its signs point to it. */
function entry(one: Case, organ: PlacedOrgan, families: readonly string[], given: Given): FormValue {
  const { ageClass = "weaner", protocol } = one;
  if (protocol.observations === "optional") return undefined;
  const isPointedTo =
    families.includes(organ.system) ||
    (organ.definition.when ?? []).some(({ signs = [] }) => signs.some((family) => families.includes(family)));
  const asked = Object.entries(organ.definition.observations ?? {}).filter(
    ([key, { required, required_in: classes, asked_by: lesions }]) =>
      required !== undefined &&
      classes?.includes(ageClass) !== false &&
      (lesions === undefined || isPointedTo) &&
      !given.has(`${organ.id}.${key}`),
  );
  if (asked.length === 0) return undefined;
  return { block: asked.map(([key, observation]) => [key, parts(observation)] as const) };
}

const parts = ({ parts: named }: Observation): FormValue =>
  named === undefined ? undefined : { flow: Object.keys(named).map((part) => [part, undefined] as const) };
