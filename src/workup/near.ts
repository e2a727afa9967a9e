/** A condition in looser words: what one veterinarian calls inflammation another calls exudate. */
import type { Condition, WantedFinding } from "../knowledge/index.ts";

/** Processes that are written for nearly the same thing. */
const kin: readonly (readonly string[])[] = [
  ["inflammation", "exudate", "fibrin", "hyperaemia", "congestion"],
  ["inflammation", "consolidation", "failure-to-collapse"],
  ["inflammation", "enlargement", "thickening", "oedema"],
  ["effusion", "exudate", "oedema"],
  ["necrosis", "ulcer", "erosion", "slough", "crust"],
  ["haemorrhage", "petechiae", "hyperaemia", "congestion", "discolouration"],
  ["abscess", "nodule", "caseation", "mass"],
  ["cyst", "parasites", "nodule"],
  ["malformation", "agenesis", "hypoplasia", "deviation"],
  ["plaque", "papules", "nodule", "crust", "discolouration"],
  ["pallor", "discolouration", "icterus"],
  ["adhesion", "fibrin", "fibrosis"],
  ["watery-content", "distension"],
];

const near = new WeakMap<Condition, Condition>();

export function nearly(condition: Condition): Condition {
  const known = near.get(condition) ?? looser(condition);
  near.set(condition, known);
  return known;
}

function looser(condition: Condition): Condition {
  const { all, any, at_least: some, finding, pigs } = condition;
  if (all !== undefined) return { all: mapped(all) };
  if (any !== undefined) return { any: mapped(any) };
  if (some !== undefined) return { at_least: { count: some.count, of: mapped(some.of) } };
  if (pigs !== undefined) return { pigs: { ...pigs, with: nearly(pigs.with) } };
  return finding === undefined ? condition : { finding: wider(finding) };
}

type List = NonNullable<Condition["all"]>;
const mapped = ([first, ...others]: List): List => [nearly(first), ...others.map(nearly)];

const wider = (finding: WantedFinding): WantedFinding => ({
  ...finding,
  process: widened(finding.process),
  ...(finding.with !== undefined && { unsaid: true }),
});

function widened(process: WantedFinding["process"]): WantedFinding["process"] {
  const [first, ...others] = process;
  const more = kin.filter((group) => group.some((word) => process.includes(word))).flat();
  return [first, ...new Set([...others, ...more])];
}
