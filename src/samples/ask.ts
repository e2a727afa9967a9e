/** What is asked before a pig is chosen: a complaint in words and ages, as pigs of which samples will be taken. */
import { classOfAge, isUnborn, quantity, type Settings } from "../cases/index.ts";
import {
  type AgeClass,
  ageClasses,
  type SampleSet,
  selectionRules,
  slipWords,
  vocabulary,
} from "../knowledge/index.ts";
import { affirmed } from "../notes/index.ts";
import { listing } from "../words/listing.ts";
import { setsNamed, setsOf } from "./due.ts";
import type { PlannedPig } from "./plan.ts";

export interface Complaint {
  readonly text: string;
  readonly ages: readonly AgeClass[];
  /** Pigs to open with the complaint, and healthy ones; undefined for what the sets say. */
  readonly pigs: number | undefined;
  readonly healthy: number | undefined;
}

/** A complaint of which nothing can be made; the message says what to write. */
export class ComplaintFault extends Error {}

/** The age class of a word or an age: `weaner`, `sow`, `5 wk`. */
export function ageClassNamed(text: string): AgeClass | undefined {
  const word = text.trim().toLowerCase().replace(/s$/, "");
  const known = { ...otherNames, ...Object.fromEntries(classNames.map((name) => [name, name])) };
  if (Object.hasOwn(known, word)) return known[word];
  return classOfAge(quantity("age", text.trim().replace(/\s+/, " ")));
}

const classNames = Object.keys(ageClasses.classes) as AgeClass[];
export const ageNames = classNames;
const otherNames: Readonly<Record<string, AgeClass>> = {
  sow: "adult",
  boar: "adult",
  gilt: "adult",
  grower: "finisher",
  piglet: "suckling",
  "suckling piglet": "suckling",
  fetus: "aborted",
  mummie: "mummy",
};

/** Signs of the vocabulary that a text names: `bloody-diarrhoea`, `bloody diarrhoea`. */
export const signsNamed = (text: string): string[] =>
  vocabulary.sign.filter((sign) => {
    const words = [sign.replaceAll("-", " "), ...(slipWords.words[sign] ?? [])];
    return affirmed(text.replaceAll("-", " "), words).length > 0;
  });

/** @throws ComplaintFault */
export function pigsOfComplaint({ text, ages, pigs, healthy }: Complaint, settings: Settings): PlannedPig[] {
  const signs = signsNamed(text).filter((sign) => sign !== "none");
  const all = [...settings.samples.sets.values()];
  const byName = all.filter(({ id }) => text.split(/[\s,;]+/).includes(id)).map(({ id }) => id);
  const named = [...new Set([...byName, ...setsNamed(text, settings)])];
  const bySign = all
    .filter(({ when }) => when?.signs !== undefined && hasSignOf(when.signs, signs))
    .map(({ id }) => id);
  const wanted = all.filter(({ id }) => named.includes(id) || bySign.includes(id));
  if (wanted.length === 0)
    throw new ComplaintFault(
      `nothing in "${text}" tells what to sample; write signs such as cough or diarrhoea, or the name of a set: ${listing(
        all.filter(({ words }) => words !== undefined).map(({ id }) => id),
        "or",
      )}`,
    );
  const isBound = wanted.filter(({ when }) => when?.classes !== undefined);
  const classes = ages.length > 0 ? ages : classesOf(wanted, text);
  const planned = classes.flatMap((ageClass) => {
    const own = wanted.filter(({ when }) => when?.classes === undefined || when.classes.includes(ageClass));
    if (own.length === 0) return [];
    const pig = {
      ageClass,
      sex: ageClass === "adult" ? ("female" as const) : undefined,
      signs,
      isFoundDead: own.some(({ id }) => id === "sudden-death"),
      isHealthy: false,
      sets: own.map(({ id }) => id),
      settings,
    };
    const most = (of: (set: SampleSet) => number): number => Math.max(0, ...own.map(of));
    const ill =
      pigs ?? most((set) => (set.pigs?.ill ?? selectionRules.pigs_per_syndrome) * (set.pigs?.litters ?? 1));
    const beside = healthy ?? most((set) => set.compare?.healthy ?? 0);
    const healthyPig = { ...pig, signs: [], isFoundDead: false, isHealthy: true, sets: [] };
    return [
      ...Array.from({ length: ill }, () => ({ id: undefined, pig })),
      ...(setsOf(healthyPig, [pig]).length === 0
        ? []
        : Array.from({ length: beside }, () => ({ id: undefined, pig: healthyPig }))),
    ];
  });
  if (planned.length === 0)
    throw new ComplaintFault(
      `no set for "${text}" is for ${listing(
        ages.map((name) => ageClasses.classes[name]?.title.toLowerCase() ?? name),
        "or",
      )}; there are sets for ${listing(isBound.flatMap(({ when, title }) => `${title.toLowerCase()} (${listing(when?.classes ?? [], "or")})`))}`,
    );
  return planned;
}

const hasSignOf = (list: readonly string[], signs: readonly string[]): boolean =>
  signs.some(
    (sign) => list.includes(sign) || list.some((family) => vocabulary.signs[family]?.words.includes(sign)),
  );

/** Ages that the words of the complaint name; fetuses where they are the question. @throws ComplaintFault */
function classesOf(wanted: readonly SampleSet[], text: string): AgeClass[] {
  const told = text.split(/[^a-z]+/i).flatMap((word) => (word.length < 3 ? [] : (ageClassNamed(word) ?? [])));
  const bound = wanted.flatMap(({ when }) => (when?.classes === undefined ? [] : [when.classes]));
  const unborn: readonly AgeClass[] = bound.some((list) => list.every(isUnborn)) ? ["aborted"] : [];
  const [only, ...others] = bound.length === 1 ? (bound[0] ?? []) : [];
  // Sows that aborted are bled, not opened.
  if (unborn.length > 0) return [...unborn];
  if (told.length > 0) return [...new Set(told)];
  if (only !== undefined && others.length === 0) return [only];
  throw new ComplaintFault(
    `say how old the pigs are, for samples follow from that too: --ages "6 d", --ages "5 wk" or --ages finisher,sow`,
  );
}
