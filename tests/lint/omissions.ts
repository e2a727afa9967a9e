/** Every single thing that a complete case must not lack: the paths whose removal the linter has to find. */
import { type Case, type Path, pathOf } from "../../src/cases/index.ts";
import { description, organById, type PlacedOrgan } from "../../src/knowledge/index.ts";
import { requiredFacts } from "../../src/record/index.ts";
import { closedOrgans, organsBehind } from "../../src/record/named-organs.ts";

export interface Omission {
  readonly what: "organ" | "system" | "side" | "lobe" | "observation" | "reason" | "fact" | "description";
  /** Taken out together. */
  readonly paths: readonly Path[];
  /** What the finding must name, one of these, by its path or in its message. */
  readonly names: readonly string[];
  /** Only where the key is left blank: without it the organ is blank, which another answers for, or it is wanted alone. */
  readonly onlyBlank?: boolean;
}

const dotted = (path: Path): string => path.join(".").replace(/\.(\d+)(?=\.|$)/g, "[$1]");
const omit = (what: Omission["what"], path: Path, ...also: string[]): Omission => ({
  what,
  paths: [path],
  names: [dotted(path), ...also],
});

/** All omissions of one case. */
export function omissionsOf(one: Case): Omission[] {
  return [...organOmissions(one), ...factOmissions(one)];
}

function factOmissions(one: Case): Omission[] {
  const facts = requiredFacts(one).map(({ id }) => omit("fact", pathOf(id)));
  const signs = one.protocol.facts.includes("all") ? [omit("fact", ["selection", "signs"])] : [];
  return [
    ...facts,
    omit("fact", ["selection", "basis"]),
    ...signs,
    omit("fact", ["case"]),
    omit("fact", ["format"]),
  ];
}

function organOmissions(one: Case): Omission[] {
  const omissions: Omission[] = [];
  const bySystem = new Set<string>();
  for (const organ of one.due) {
    const state = one.organ(organ);
    if (state.bySystem) {
      bySystem.add(organ.system);
      continue;
    }
    const path = pathOf(organ.id);
    // Where the last word on an organ goes, the organ itself is what is missing, unless it may be or somebody says why.
    const onlyBlank = !one.must.has(organ) || isTold(one, organ);
    const alone = `(${organ.key})`;
    if (!onlyBlank) omissions.push(omit("organ", path, alone));
    if (state.status === "not_examined")
      omissions.push({ ...omit("reason", [...path, "not_examined"], organ.id, alone), onlyBlank });
    if (state.status === "not_assessable")
      for (const key of ["because", "why"]) omissions.push(omit("reason", [...path, "not_assessable", key]));
    for (const { side, state: sideState } of state.sides) {
      omissions.push(omit("side", [...path, side]));
      if (sideState.status === "not_examined")
        omissions.push(omit("reason", [...path, side, "not_examined"], organ.id));
    }
    for (const part of [state, ...state.sides.map((side) => side.state)])
      for (const { path: at, finding } of part.findings) {
        omissions.push(omit("description", [...at, "process"]));
        const process = description.processes[finding.process];
        const unasked = process?.unasked?.some(
          ({ organs, classes }) =>
            (organs.includes(organ.id) || organs.includes(organ.system)) &&
            (classes?.includes(one.ageClass ?? "weaner") ?? true),
        );
        if (unasked) continue;
        const entry = state.entry ?? {};
        const isAnswered =
          (process?.observed ?? []).some((key) => key in entry) || "weight" in entry || "size" in entry;
        // Without the word `diffuse`, the distribution is missing and not how much.
        const measures = (["extent", "size", "number", "volume", "severity"] as const).filter(
          (key) => finding[key] !== undefined,
        );
        // A site, a number, one size or the kind of the organ says how the lesion lies.
        const isPlaced =
          organ.definition.kind !== undefined ||
          (["site", "number", "size", "volume"] as const).some((key) => finding[key] !== undefined);
        if (process?.distribution !== "no" && !isPlaced && !isAnswered)
          omissions.push(omit("description", [...at, "distribution"], dotted(at)));
        const means = process?.how_much ?? [];
        if (
          means.length > 0 &&
          !isAnswered &&
          !(means.includes("diffuse") && finding.distribution === "diffuse")
        )
          omissions.push({
            what: "description",
            paths: measures.map((key) => [...at, key]),
            names: [dotted(at)],
          });
      }
    if (one.protocol.observations === "optional") continue;
    for (const [key, definition] of Object.entries(organ.definition.observations ?? {})) {
      const value = state.entry?.[key];
      if (value === undefined || value === null) continue;
      const classes = definition.required_in;
      const asks = definition.asked_by;
      const needed =
        definition.required === "always" ||
        (definition.required !== undefined &&
          state.status === "recorded" &&
          (asks === undefined ||
            state.findings.length === 0 ||
            state.findings.some(({ finding }) => asks.includes(finding.process))));
      const required = needed && (classes === undefined || classes.some((c) => c === one.ageClass));
      if (required) omissions.push(omit("observation", [...path, key], organ.id));
      for (const part of Object.keys(definition.parts ?? {}))
        if (Object.hasOwn(value as object, part))
          omissions.push(omit(organ.definition.form === "lobed" ? "lobe" : "side", [...path, key, part]));
    }
  }
  for (const system of bySystem) {
    const untold = [...one.must].filter((organ) => organ.system === system && !isTold(one, organ));
    if (untold.length > 0) omissions.push(omit("system", [system]));
  }
  return omissions;
}

/** Whether an organ seen with it is told, or the visit or another organ behind the same bone says why it was not seen. */
function isTold(one: Case, organ: PlacedOrgan): boolean {
  const closed = one.due
    .filter((other) => other !== organ)
    .map((other) => one.organ(other))
    .filter(
      ({ status, reason = "" }) => status === "not_examined" && /closed|not opened|no saw/.test(reason),
    );
  const together = (organ.definition.told_with ?? []).map(organById);
  return (
    together.some((other) => other !== undefined && /normal|recorded/.test(one.organ(other).status)) ||
    closedOrgans(one.visit?.record.pigs?.left_closed ?? "").includes(organ) ||
    closed.some(({ reason = "" }) => organsBehind(reason).includes(organ))
  );
}
