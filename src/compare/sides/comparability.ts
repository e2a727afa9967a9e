/** The first stage: may the sides be compared on an outcome, what is to be minded, and what are they made up of? */
import { basisOf, reachOf } from "../../herd/index.ts";
import { comparability } from "../../knowledge/index.ts";
import { count, listing } from "../../words/listing.ts";
import type { Asked, Caveat, Factor, Reason } from "../comparison.ts";
import type { Block } from "./blocks.ts";
import { facets } from "./facets.ts";
import { type Answered, type AnsweredSide, type Outcome, outcomesOf, readSide } from "./outcomes.ts";
import { pensOf, type SidePens } from "./pens.ts";
import { type Stratification, stratify } from "./stratification.ts";

/** One outcome on the sides of a block: all that the judgement works on. */
export interface ComparedSides {
  readonly label: Outcome["label"];
  readonly sides: readonly AnsweredSide[];
  /** Why they may not be compared; empty when they may. */
  readonly reasons: readonly Reason[];
  readonly caveats: readonly Caveat[];
  /** When the sides are made up differently; else null. */
  readonly stratification: Stratification | null;
  /** Of each side, in order. */
  readonly pens: readonly SidePens[];
}

/** Every outcome on the sides of a block. @throws RangeError when a name does not exist */
export function comparedSides(block: Block, asked: Asked): ComparedSides[] {
  const cases = block.sides.flatMap((side) => side.cases);
  return outcomesOf(cases, asked).map((outcome) => {
    const { sides, found } = check(block, outcome, asked.evenIf);
    const reasons = found.filter((one) => "factor" in one);
    const refused = reasons.length > 0;
    return {
      label: outcome.label,
      sides,
      reasons,
      caveats: found.filter((one) => !("factor" in one)),
      stratification: refused ? null : stratify(sides, asked),
      pens: refused ? [] : sides.map(({ answers }) => pensOf(answers, asked)),
    };
  });
}

interface Checked {
  readonly sides: readonly AnsweredSide[];
  readonly found: readonly (Reason | Caveat)[];
}

/**
 * Reads the outcome on every side. A factor on which the sides have no value in common is a reason against it, or a
 * caveat when it is in `evenIf`; pigs of an age class that another side does not have are left out.
 */
export function check(block: Block, outcome: Outcome, evenIf: readonly Factor[]): Checked {
  const read = block.sides.map((side) => readSide(side, outcome));
  const telling = read.filter(({ answers }) => answers.length > 0);
  const sides = block.sides.length > 2 && telling.length > 1 ? telling : read;
  const some = sides.every(({ answers }) => answers.length > 0);
  const found = [
    ...notExamined(read, some),
    ...(block.mixed ? [against("basis", basesText(sides), evenIf)] : []),
  ];
  if (!some) return { sides, found };
  const aged = withCommonAges(sides, evenIf);
  const forms = new Set(aged.sides.flatMap(({ answers }) => answers.map(readFactor.scale)));
  return {
    sides: aged.sides,
    found: [
      ...found,
      ...aged.found,
      ...(["place", "reader", "section", "grade"] as const).flatMap((factor) =>
        differing(factor, aged.sides, evenIf),
      ),
      ...(forms.size > 1
        ? [against("scale", "the settings of the sides define it in different ways", evenIf)]
        : []),
    ],
  };
}

/** What each factor reads of an answer; undefined where it is not recorded. */
const readFactor: Record<Exclude<Factor, "basis">, (answer: Answered) => string | undefined> = {
  age: ({ one }) => facets.age_class(one),
  place: ({ one }) => facets.place(one),
  reader: ({ one }) => facets.reader(one),
  section: ({ section }) => section,
  grade: ({ grade }) => grade,
  scale: ({ form }) => form,
};

/** A reason against the comparison; a caveat when it was asked for nevertheless. */
function against(factor: Factor, said: string, evenIf: readonly Factor[]): Reason | Caveat {
  const { title, why } = comparability.factors[factor];
  const text = `other ${title}: ${said}. ${why}`;
  return evenIf.includes(factor) ? { although: factor, text } : { factor, text };
}

function notExamined(read: readonly AnsweredSide[], others: boolean): (Reason | Caveat)[] {
  const empty = read.filter(({ answers }) => answers.length === 0);
  if (empty.length === 0) return [];
  const text = `could not be read in any pig ${listing(empty.map(({ side }) => side.title))}`;
  return [others ? { text } : { factor: "examined", text }];
}

const basesText = (sides: readonly AnsweredSide[]): string =>
  sides
    .map(({ side }) => `${side.title} ${tally(side.cases.map((one) => reachOf(basisOf(one)).title))}`)
    .join("; ");

/** Only pigs of age classes that every side has; all of them when the age is not to matter. */
function withCommonAges(sides: readonly AnsweredSide[], evenIf: readonly Factor[]): Checked {
  const common = commonTo(sides, readFactor.age);
  const outside = (answer: Answered): boolean => !common.includes(readFactor.age(answer) ?? "");
  const others = sides.filter(({ answers }) => answers.some(outside));
  if (others.length === 0) return { sides, found: [] };
  if (common.length === 0 || evenIf.includes("age"))
    return { sides, found: [against("age", perSide(sides, readFactor.age), evenIf)] };
  const left = others.map(({ side, answers }) => {
    const gone = answers.filter(outside);
    const classes = new Set(gone.map((answer) => readFactor.age(answer) ?? notRecorded));
    return `${count(gone.length, "pig")} ${side.title} (${listing([...classes])})`;
  });
  return {
    sides: sides.map((one) => ({ ...one, answers: one.answers.filter((answer) => !outside(answer)) })),
    found: [{ text: `left out, because another side has no pig of that age class: ${listing(left)}` }],
  };
}

const notRecorded = "not recorded";

/** A factor that the sides do not share, or that is not the same throughout. */
function differing(
  factor: "place" | "reader" | "section" | "grade",
  sides: readonly AnsweredSide[],
  evenIf: readonly Factor[],
): (Reason | Caveat)[] {
  const read = readFactor[factor];
  const values = sides.map(({ answers }) => answers.map(read));
  const common = commonTo(sides, read);
  if (common.length === 0 && values.every((some) => some.some((value) => value !== undefined)))
    return [against(factor, perSide(sides, read), evenIf)];
  const { title } = comparability.factors[factor];
  // Where nothing asks for it, such as the section of lungs, it is recorded nowhere.
  if (values.flat().every((value) => value === undefined))
    return factor === "section" ? [] : [{ text: `${title} not recorded on any side` }];
  if (values.flat().every((value) => value !== undefined && common.includes(value))) return [];
  return [{ text: `${title} not the same throughout: ${perSide(sides, read)}` }];
}

function commonTo(
  sides: readonly AnsweredSide[],
  read: (answer: Answered) => string | undefined,
): readonly string[] {
  const [first = new Set<string>(), ...rest] = sides.map(
    ({ answers }) => new Set(answers.flatMap((answer) => read(answer) ?? [])),
  );
  return [...first].filter((value) => rest.every((other) => other.has(value)));
}

/** `on 2026-03-14 H. Marlow in 3, J. Teal in 7; on 2026-09-19 ...` */
const perSide = (sides: readonly AnsweredSide[], read: (answer: Answered) => string | undefined): string =>
  sides
    .map(({ side, answers }) => `${side.title} ${tally(answers.map((one) => read(one) ?? notRecorded))}`)
    .join("; ");

/** `weaner in 4, finisher in 6`; without numbers when there is one value. */
function tally(values: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  if (counts.size === 1) return [...counts.keys()].join("");
  return [...counts].map(([value, pigs]) => `${value} in ${pigs}`).join(", ");
}
