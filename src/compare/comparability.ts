/** May these pigs be compared on this question, and what is to be minded if they are? */
import { comparability } from "../knowledge/index.ts";
import { count, listing } from "../words/listing.ts";
import type { Caveat, Factor, Reason } from "./comparison.ts";
import { facets } from "./facets.ts";
import type { Answered, Question } from "./questions.ts";
import { type Block, basisOf, basisTitle, type Side } from "./sides.ts";

/** Pigs of one side in which the question could be read, and how many more there were. */
export interface AnsweredSide {
  readonly side: Side;
  readonly answers: readonly Answered[];
  readonly not_examined: number;
}

export interface Checked {
  readonly sides: readonly AnsweredSide[];
  readonly reasons: readonly Reason[];
  readonly caveats: readonly Caveat[];
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

/**
 * Reads the question on every side. A factor on which the sides have no value in common is a reason against it, or a
 * caveat when it is in `evenIf`; pigs of an age class that another side does not have are left out.
 */
export function check(block: Block, question: Question, evenIf: readonly Factor[]): Checked {
  const read = block.sides.map((side) => answersOf(side, question));
  const empty = read.filter(({ answers }) => answers.length === 0);
  const telling = read.filter(({ answers }) => answers.length > 0);
  const sides = block.sides.length > 2 && telling.length > 1 ? telling : read;
  const some = sides.every(({ answers }) => answers.length > 0);
  const found: Finding[] = [
    ...(empty.length === 0 ? [] : [notExamined(empty, some)]),
    ...(block.mixed ? basisFinding(sides) : []),
  ];
  if (!some) return { sides, ...sorted(found, evenIf) };
  const aged = withCommonAges(sides, evenIf.includes("age"));
  found.push(...aged.found);
  for (const factor of ["place", "reader", "section", "grade"] as const)
    found.push(...findingOn(factor, aged.sides));
  if (new Set(aged.sides.flatMap(({ answers }) => answers.map(readFactor.scale))).size > 1)
    found.push(refusal("scale", "the settings of the sides define it in different ways"));
  return { sides: aged.sides, ...sorted(found, evenIf) };
}

interface Finding {
  readonly factor: Factor | "examined";
  readonly against: boolean;
  readonly text: string;
}

function sorted(found: readonly Finding[], evenIf: readonly Factor[]): Omit<Checked, "sides"> {
  const asked = ({ factor }: Finding): boolean => factor !== "examined" && evenIf.includes(factor);
  return {
    reasons: found.filter((one) => one.against && !asked(one)).map(({ factor, text }) => ({ factor, text })),
    caveats: found.flatMap((one): Caveat[] => {
      if (!one.against) return [{ text: one.text }];
      return asked(one) && one.factor !== "examined" ? [{ although: one.factor, text: one.text }] : [];
    }),
  };
}

function answersOf(side: Side, question: Question): AnsweredSide {
  const asked = side.cases.map((one) => question.ask(one));
  const answers = asked.flatMap((one) => (one === undefined || one.value === null ? [] : [one]));
  return { side, answers, not_examined: asked.length - answers.length };
}

const notExamined = (empty: readonly AnsweredSide[], others: boolean): Finding => ({
  factor: "examined",
  against: !others,
  text: `could not be read in any pig ${listing(empty.map(({ side }) => side.title))}`,
});

const refusal = (factor: Factor, said: string): Finding => ({
  factor,
  against: true,
  text: `other ${comparability.factors[factor].title}: ${said}. ${comparability.factors[factor].why}`,
});

function basisFinding(sides: readonly AnsweredSide[]): Finding[] {
  const said = sides.map(
    ({ side }) => `${side.title} ${tally(side.cases.map((one) => basisTitle(basisOf(one))))}`,
  );
  return [refusal("basis", said.join("; "))];
}

/** Only pigs of age classes that every side has; all of them when the age is not to matter. */
function withCommonAges(
  sides: readonly AnsweredSide[],
  evenIf: boolean,
): { sides: readonly AnsweredSide[]; found: Finding[] } {
  const common = commonTo(sides, readFactor.age);
  const outside = (answer: Answered): boolean => !common.includes(readFactor.age(answer) ?? "");
  const others = sides.filter(({ answers }) => answers.some(outside));
  if (others.length === 0) return { sides, found: [] };
  if (common.length === 0 || evenIf)
    return { sides, found: [refusal("age", perSide(sides, readFactor.age))] };
  const left = others.map(({ side, answers }) => {
    const gone = answers.filter(outside);
    const classes = [...new Set(gone.map((answer) => readFactor.age(answer) ?? notRecorded))];
    return `${count(gone.length, "pig")} ${side.title} (${listing(classes)})`;
  });
  return {
    sides: sides.map((one) => ({ ...one, answers: one.answers.filter((answer) => !outside(answer)) })),
    found: [
      {
        factor: "age",
        against: false,
        text: `left out, because another side has no pig of that age class: ${listing(left)}`,
      },
    ],
  };
}

const notRecorded = "not recorded";

function findingOn(factor: "place" | "reader" | "section" | "grade", sides: readonly AnsweredSide[]) {
  const read = readFactor[factor];
  const { title } = comparability.factors[factor];
  const known = sides.map(({ answers }) => new Set(answers.flatMap((answer) => read(answer) ?? [])));
  const common = commonTo(sides, read);
  if (common.length === 0 && known.every(({ size }) => size > 0))
    return [refusal(factor, perSide(sides, read))];
  const blank = sides.some(({ answers }) => answers.some((answer) => read(answer) === undefined));
  const uneven = sides.some(({ answers }) =>
    answers.some((answer) => !common.includes(read(answer) ?? common[0] ?? "")),
  );
  // Where nothing asks for it, such as the section of lungs, it is recorded nowhere.
  if (known.every(({ size }) => size === 0) && factor === "section") return [];
  if (!blank && !uneven) return [];
  return [
    {
      factor,
      against: false,
      text: `${title} not the same throughout: ${perSide(sides, read)}`,
    },
  ];
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
