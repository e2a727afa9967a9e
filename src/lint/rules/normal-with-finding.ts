import { type Case, formatPath, type OrganState, type Path } from "../../cases/index.ts";
import { type Observation, organs, type PlacedOrgan } from "../../knowledge/index.ts";
import type { CaseRule } from "../rule.ts";
import { statesOf } from "../states.ts";

export const normalWithFinding: CaseRule = {
  id: "normal-with-finding",
  scope: "case",
  family: "description",
  level: "error",
  summary: "An organ is normal, not examined, or described; never two of these at once.",
  protects: "The next reader cannot know which half of the contradiction is true.",
  source: { cite: "common practice of recording", confidence: "common-practice" },
  bad: {
    case: "lymphoid: {spleen: {state: normal, findings: [{process: infarct, distribution: focal, size: 8 mm}]}}",
  },
  good: { case: "lymphoid: {spleen: {state: normal, weight: 38 g}}" },
  check(one, report) {
    for (const organ of organs)
      for (const state of statesOf(one, organ)) {
        const { entry } = state;
        if (entry === undefined) continue;
        const says = (["not_examined", "not_assessable"] as const).filter((key) =>
          Object.hasOwn(entry, key),
        ) as string[];
        if (entry.state === "normal") says.push("state");
        const lesion = lesionOf(one, organ, state);
        const name = formatPath(state.path);
        if (says.length > 1)
          report(
            `${name}: ${says.map((key) => words[key]).join(" and ")} at once. Keep one.`,
            [...state.path, says[1] ?? ""],
            "key",
          );
        else if (says.length === 1 && lesion !== undefined)
          report(
            `${name}: ${words[says[0] ?? ""]}, yet ${formatPath(lesion)} says otherwise. Keep one.`,
            lesion,
          );
      }
  },
};

const words: Record<string, string> = {
  state: "normal",
  not_examined: "not examined",
  not_assessable: "not assessable",
};

/** Where the entry says that there is a lesion. */
function lesionOf(one: Case, organ: PlacedOrgan, state: OrganState): Path | undefined {
  if (state.findings.length > 0) return state.findings[0]?.path;
  const side = state.sides.find((entry) => entry.state.status === "recorded");
  if (side !== undefined) return side.state.path;
  if (state !== one.organ(organ)) return undefined;
  for (const [key, definition] of Object.entries(organ.definition.observations ?? {})) {
    const below = lesionIn(state.entry?.[key], definition);
    if (below !== undefined) return [...state.path, key, ...below];
  }
  const grade = Object.entries(state.entry?.grades ?? {}).find(([, value]) => value > 0);
  return grade === undefined ? undefined : [...state.path, "grades", grade[0]];
}

function lesionIn(value: unknown, definition: Observation): Path | undefined {
  const isLesion = (part: unknown): boolean => {
    if (typeof part === "number") return part > 0;
    if (definition.normal === undefined || part === undefined || part === null) return false;
    return [part].flat().some((word) => word !== definition.normal);
  };
  if (definition.parts === undefined) return isLesion(value) ? [] : undefined;
  const part = Object.entries((value ?? {}) as Record<string, unknown>).find(([, entry]) => isLesion(entry));
  return part === undefined ? undefined : [part[0]];
}
