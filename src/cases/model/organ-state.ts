/** What a case says of one organ. Blank is a state of its own and never normal. */
import type { Finding, OrganEntry } from "../../generated/organs.types.ts";
import type { PlacedOrgan } from "../../knowledge/index.ts";
import { withoutBlanks } from "./blanks.ts";
import { isKeyed, type Path } from "./path.ts";

export type { Finding } from "../../generated/organs.types.ts";

type OrganStatus = "blank" | "normal" | "not_examined" | "not_assessable" | "recorded";

export interface OrganState {
  readonly status: OrganStatus;
  /** Where the organ stands in the case; the system's path when the whole system is one word. */
  readonly path: Path;
  /** The word `normal` stands for the whole system; an organ of which more must be said stays blank. */
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
  const system = own(record, organ.system);
  if (system === "normal") return asRest(plainStates(organ).bySystem, organ);
  const value = typeof system === "object" && system !== null ? own(system, organ.key) : undefined;
  if (value === "normal") return plainStates(organ).normal;
  const rest = isBlank(value) ? restState(record, system, organ) : undefined;
  return rest === undefined || (rest.status === "blank" && isKeyed(value))
    ? stateOf(value, organ.path, organ.definition.form === "paired")
    : rest;
}

/** What the system, or the lists at the top, say of all organs that have no entry of their own. */
function restState(record: object, system: unknown, organ: PlacedOrgan): OrganState {
  const named = listed(record).find(({ names }) => names.includes(organ.id));
  if (named !== undefined) return { ...named.state, bySystem: false };
  const rest = typeof system === "object" && system !== null ? own(system, "rest") : undefined;
  const path = [organ.system, "rest"];
  if (rest === "normal") return asRest({ ...plain("normal", path), bySystem: true }, organ);
  if (rest !== undefined && rest !== null) return { ...stateOf(rest, path, false), entry: undefined };
  const said = listed(record).find(({ names }) => names.includes(organ.system));
  return said === undefined ? plainStates(organ).blank : asRest(said.state, organ);
}

/** Normal as one of many is no answer for an organ of which something must be observed that no organ has by nature. */
const asRest = (state: OrganState, organ: PlacedOrgan): OrganState =>
  state.bySystem && isObserved(organ) ? { ...plainStates(organ).blank, bySystem: true } : state;

const isObserved = ({ definition }: PlacedOrgan): boolean =>
  Object.values(definition.observations ?? {}).some(
    ({ required, required_in: classes }) => required === "always" && classes === undefined,
  );

/** What a list at the top says of the systems and organs that it names one by one. */
interface Listed {
  readonly names: readonly string[];
  readonly path: Path;
  readonly state: OrganState;
}

/** What `normal: [urinary, respiratory.lungs]` and `not_examined: [{systems: [urinary], because: …}]` say at the top of a case. */
export function listed(record: object): readonly Listed[] {
  const known = listedIn.get(record);
  if (known !== undefined) return known;
  const normal = listOf(own(record, "normal")).map((name, index): Listed => {
    const path = ["normal", index];
    return { names: [String(name)], path, state: { ...plain("normal", path), bySystem: true } };
  });
  const closed = listOf(own(record, "not_examined")).flatMap((entry, index): Listed[] => {
    if (typeof entry !== "object" || entry === null) return [];
    const path = ["not_examined", index];
    const because = own(entry, "because");
    const reason = typeof because === "string" ? because : undefined;
    const names = listOf(own(entry, "systems")).map(String);
    return [{ names, path, state: { ...plain("not_examined", path), reason } }];
  });
  const all = [...normal, ...closed];
  listedIn.set(record, all);
  return all;
}

const listedIn = new WeakMap<object, readonly Listed[]>();

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

const own = (from: object, key: string): unknown =>
  Object.hasOwn(from, key) ? (from as Record<string, unknown>)[key] : undefined;

/** States that say no more than one word; they are the same in every case, and by far the most. */
interface PlainStates {
  readonly blank: OrganState;
  readonly normal: OrganState;
  readonly bySystem: OrganState;
}

const known: PlainStates[] = [];

function plainStates({ index, path, system }: PlacedOrgan): PlainStates {
  known[index] ??= {
    blank: plain("blank", path),
    normal: plain("normal", path),
    bySystem: { ...plain("normal", [system]), bySystem: true },
  };
  return known[index];
}

const plain = (status: OrganStatus, path: Path): OrganState => ({
  status,
  path,
  bySystem: false,
  reason: undefined,
  because: undefined,
  findings: [],
  entry: undefined,
  sides: [],
});

function stateOf(value: unknown, path: Path, paired: boolean): OrganState {
  if (value === undefined || value === null) return plain("blank", path);
  if (value === "normal") return plain("normal", path);
  if (Array.isArray(value))
    return {
      ...plain("recorded", path),
      findings: findingsAt(withoutBlanks(value) as Finding[], path),
    };
  const entry = withoutBlanks(value) as OrganEntry;
  const findings = findingsAt(entry.findings ?? [], [...path, "findings"]);
  const sides = paired ? sidesOf(value, path) : [];
  const full = (status: OrganStatus): OrganState => ({ ...plain(status, path), entry, findings, sides });
  // A blank reason is still the statement that the organ was not examined.
  if (Object.hasOwn(value, "not_examined")) return { ...full("not_examined"), reason: entry.not_examined };
  if (Object.hasOwn(value, "not_assessable"))
    return {
      ...full("not_assessable"),
      reason: entry.not_assessable?.why,
      because: entry.not_assessable?.because,
    };
  if (entry.state === "normal") return full("normal");
  if ((entry.findings ?? []).length > 0 || hasObservations(entry, paired)) return full("recorded");
  return full(sidesStatus(sides));
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
  return Object.entries(entry).some(
    ([key, value]) =>
      (!silentKeys.has(key) || (!paired && (key === "left" || key === "right"))) && !isEmpty(value),
  );
}

/**
 * Left blank, be it part by part: `{left: {dorsal: , ventral: }}`. A blank reason says that there was no look, and a map without
 * keys is what is left of values that could not be read.
 */
const isBlank = (value: unknown): boolean =>
  value === undefined ||
  value === null ||
  (isKeyed(value) &&
    Object.keys(value).length > 0 &&
    !Object.hasOwn(value, "not_examined") &&
    !Object.hasOwn(value, "not_assessable") &&
    // Nothing is left of an organ whose only value could not be read, and that is another thing.
    Object.keys(value).length > 0 &&
    Object.values(value).every(isBlank));

/** The same of a part without its blanks. */
const isEmpty = (value: unknown): boolean =>
  typeof value === "object" && value !== null && Object.values(value).every(isEmpty);

/** A paired organ says what its sides say: recorded when one is, normal when both are. */
function sidesStatus(sides: OrganState["sides"]): OrganStatus {
  const statuses = sides.map(({ state }) => state.status);
  if (statuses.includes("recorded")) return "recorded";
  if (statuses.includes("normal"))
    return statuses.every((status) => status === "normal") && statuses.length === 2 ? "normal" : "recorded";
  return statuses[0] ?? "blank";
}
