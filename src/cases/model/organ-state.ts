/** What a case says of one organ. Blank is a state of its own and never normal. */
import type { Finding, OrganEntry } from "../../generated/organs.types.ts";
import type { PlacedOrgan } from "../../knowledge/index.ts";
import { withoutBlanks } from "./blanks.ts";
import { type Path, pathOf } from "./path.ts";

export type { Finding } from "../../generated/organs.types.ts";

export type OrganStatus = "blank" | "normal" | "not_examined" | "not_assessable" | "recorded";

export interface OrganState {
  readonly status: OrganStatus;
  /** Where the organ stands in the case; the system's path when the whole system is one word. */
  readonly path: Path;
  /** The word `normal` stands for the whole system. */
  readonly bySystem: boolean;
  /** The reason, for not_examined and not_assessable. */
  readonly reason: string | undefined;
  readonly because: string | undefined;
  readonly findings: readonly { readonly path: Path; readonly finding: Finding }[];
  /** The entry as written, when it has keys. */
  readonly entry: OrganEntry | undefined;
  /** Left and right, when a paired organ is recorded side by side. */
  readonly sides: readonly { readonly side: "left" | "right"; readonly state: OrganState }[];
}

/** Keys of an entry that describe the organ but do not say how it is. */
const silentKeys = new Set([
  "state",
  "not_examined",
  "not_assessable",
  "findings",
  "weight",
  "size",
  "tracing",
  "photos",
  "note",
  "left",
  "right",
]);

/**
 * Reads the state of an organ from a valid case.
 * @param record the case, as plain data
 */
export function organState(record: object, organ: PlacedOrgan): OrganState {
  const system: unknown = Object.hasOwn(record, organ.system)
    ? (record as Record<string, unknown>)[organ.system]
    : undefined;
  if (system === "normal") return { ...stateOf("normal", [organ.system], false), bySystem: true };
  const path = pathOf(organ.id);
  const entries = system as Record<string, unknown> | null | undefined;
  const value = entries != null && Object.hasOwn(entries, organ.key) ? entries[organ.key] : undefined;
  return stateOf(value, path, organ.definition.form === "paired");
}

function stateOf(value: unknown, path: Path, paired: boolean): OrganState {
  const plain: Omit<OrganState, "status"> = {
    path,
    bySystem: false,
    reason: undefined,
    because: undefined,
    findings: [],
    entry: undefined,
    sides: [],
  };
  if (value === undefined || value === null) return { ...plain, status: "blank" };
  if (value === "normal") return { ...plain, status: "normal" };
  if (Array.isArray(value))
    return { ...plain, status: "recorded", findings: findingsAt(withoutBlanks(value) as Finding[], path) };
  const entry = withoutBlanks(value) as OrganEntry;
  const findings = findingsAt(entry.findings ?? [], [...path, "findings"]);
  const sides = paired ? sidesOf(value, path) : [];
  const full = { ...plain, entry, findings, sides };
  // A blank reason is still the statement that the organ was not examined.
  if (Object.hasOwn(value, "not_examined"))
    return { ...full, status: "not_examined", reason: entry.not_examined };
  if (Object.hasOwn(value, "not_assessable"))
    return {
      ...full,
      status: "not_assessable",
      reason: entry.not_assessable?.why,
      because: entry.not_assessable?.because,
    };
  if (entry.state === "normal") return { ...full, status: "normal" };
  if ((entry.findings ?? []).length > 0 || hasObservations(entry, paired))
    return { ...full, status: "recorded" };
  return { ...full, status: sidesStatus(sides) };
}

/** The findings that say what happened; one whose process cannot be read is a fault of the file. */
function findingsAt(findings: readonly Partial<Finding>[], path: Path): OrganState["findings"] {
  return findings.flatMap(({ process, ...rest }, index) =>
    process === undefined ? [] : [{ path: [...path, index], finding: { process, ...rest } }],
  );
}

function sidesOf(entry: object, path: Path): OrganState["sides"] {
  return (["left", "right"] as const)
    .filter((side) => Object.hasOwn(entry, side))
    .map((side) => ({
      side,
      state: stateOf((entry as Record<string, unknown>)[side], [...path, side], false),
    }));
}

/**
 * Whether something was measured or graded, of an entry without blanks. Left and right are observations only of an
 * organ that is not paired.
 */
function hasObservations(entry: OrganEntry, paired: boolean): boolean {
  return Object.keys(entry).some(
    (key) => !silentKeys.has(key) || (!paired && (key === "left" || key === "right")),
  );
}

/** A paired organ says what its sides say: recorded when one is, normal when both are. */
function sidesStatus(sides: OrganState["sides"]): OrganStatus {
  const statuses = sides.map(({ state }) => state.status);
  if (statuses.includes("recorded")) return "recorded";
  if (statuses.includes("normal"))
    return statuses.every((status) => status === "normal") && statuses.length === 2 ? "normal" : "recorded";
  return statuses[0] ?? "blank";
}
