/** The words in which a lesion may stand: the same by its description, and nearly the same. */
import type { Condition, WantedFinding, WantedWords } from "../knowledge/index.ts";

interface Same {
  readonly process: string;
  /** A finding of one of these with one of these words is one of that process. */
  readonly as: WantedFinding["process"];
  readonly with: WantedWords;
}

/** What one veterinarian names, another describes. */
const same: readonly Same[] = [
  {
    process: "fibrin",
    as: ["effusion", "exudate", "inflammation"],
    with: { exudate: ["fibrinous", "fibrinosuppurative"] },
  },
  {
    process: "abscess",
    as: ["nodule", "mass", "inflammation"],
    with: { exudate: ["suppurative"] },
  },
  {
    process: "caseation",
    as: ["nodule", "abscess", "inflammation", "necrosis", "enlargement", "mass"],
    with: { exudate: ["granulomatous", "caseous"], consistency: ["gritty"] },
  },
  { process: "pallor", as: ["discolouration"], with: { colour: ["white", "tan", "grey"] } },
  { process: "icterus", as: ["discolouration"], with: { colour: ["yellow"] } },
  { process: "congestion", as: ["discolouration"], with: { colour: ["red", "dark-red", "purple"] } },
];

/** Processes that are written for nearly the same thing. */
const kin: readonly (readonly string[])[] = [
  ["inflammation", "exudate", "fibrin", "hyperaemia", "congestion"],
  ["inflammation", "consolidation", "failure-to-collapse"],
  ["inflammation", "enlargement", "thickening", "oedema"],
  ["effusion", "exudate", "oedema"],
  ["necrosis", "ulcer", "erosion", "slough", "crust"],
  ["haemorrhage", "petechiae", "hyperaemia", "congestion"],
  ["abscess", "nodule", "caseation", "mass"],
  ["cyst", "parasites", "nodule"],
  ["malformation", "agenesis", "hypoplasia", "deviation"],
  ["plaque", "papules", "nodule", "crust"],
  ["adhesion", "fibrin", "fibrosis"],
  ["watery-content", "distension"],
];

/** A colour that is nearly a process, where a colour is told at all. */
const colours: readonly Same[] = [
  { process: "pallor", as: ["discolouration"], with: { colour: ["white", "tan", "grey", "pink", "yellow"] } },
  { process: "icterus", as: ["discolouration"], with: { colour: ["yellow", "tan"] } },
  ...["haemorrhage", "petechiae", "hyperaemia", "congestion"].map(
    (process): Same => ({
      process,
      as: ["discolouration"],
      with: { colour: ["red", "dark-red", "purple", "blue", "black"] },
    }),
  ),
];

/** A condition that a lesion meets by its name or by its description. */
export const described = rewriting(true, (finding) => {
  const others =
    finding.with === undefined ? same.filter(({ process }) => finding.process.includes(process)) : [];
  const own = finding.with === undefined ? finding : { ...finding, agrees: true as const };
  return [own, ...others.map((one) => ({ ...finding, process: one.as, with: one.with }))];
});

/** A condition in looser words: nearly the same process, and one that is silent about how it looks. */
export const nearly = rewriting(false, (finding) => [
  { ...finding, process: widened(finding.process), ...(finding.with !== undefined && { unsaid: true }) },
  ...(finding.with === undefined ? colours : [])
    .filter(({ process }) => finding.process.includes(process))
    .map((one): WantedFinding => ({ ...finding, process: one.as, with: one.with, unsaid: true })),
]);

function widened(process: WantedFinding["process"]): WantedFinding["process"] {
  const [first, ...others] = process;
  const more = kin.filter((group) => group.some((word) => process.includes(word))).flat();
  return [first, ...new Set([...others, ...more])];
}

/** Rewrites each finding that a condition asks for as one of several. @param denied also what must not be there */
function rewriting(denied: boolean, ways: (finding: WantedFinding) => readonly WantedFinding[]) {
  const known = new WeakMap<Condition, Condition>();
  const rewritten = (condition: Condition): Condition => {
    const { all, any, none, at_least: some, finding, pigs } = condition;
    if (all !== undefined) return { all: list(all) };
    if (any !== undefined) return { any: list(any) };
    if (none !== undefined) return denied ? { none: list(none) } : condition;
    if (some !== undefined) return { at_least: { count: some.count, of: list(some.of) } };
    if (pigs !== undefined) return { pigs: { ...pigs, with: kept(pigs.with) } };
    if (finding === undefined) return condition;
    const [first, ...others] = ways(finding);
    if (first === undefined) return condition;
    return others.length === 0
      ? { finding: first }
      : { any: [{ finding: first }, ...others.map((one) => ({ finding: one }))] };
  };
  const kept = (condition: Condition): Condition => {
    const result = known.get(condition) ?? rewritten(condition);
    known.set(condition, result);
    return result;
  };
  const list = ([first, ...others]: NonNullable<Condition["all"]>): NonNullable<Condition["all"]> => [
    kept(first),
    ...others.map(kept),
  ];
  return kept;
}
