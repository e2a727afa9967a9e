/** The arms of a trial: which pigs were treated, which are the control, and what was allocated to them, a pen or a whole group. */
import { type Case, isAfter, moment } from "../../cases/index.ts";
import { clusterKey } from "../../herd/index.ts";
import { listing } from "../../words/listing.ts";

/** What was tried, and how. */
export interface Trial {
  /** What the treated got; null where nothing says it. */
  readonly treatment: string | null;
  /** How it was settled who is treated; null where nothing says it. */
  readonly allocated: "by-lot" | "otherwise" | null;
  /** What was allocated, and is therefore counted. */
  readonly unit: "pen" | "group" | "pen or group";
  /** Whether groups of the visit say their arm, or it was read from the treatments of the visit. */
  readonly from: "arms" | "treatments";
}

type Visit = NonNullable<Case["visit"]>;

type ArmName = "control" | "treated";

/** The arm of one pig. */
interface Arm {
  readonly arm: ArmName;
  readonly unit: "pen" | "group";
  /** The pen or group, the same for all its pigs. */
  readonly key: string;
}

/**
 * As `arm` of its group says, for all of it or for some of its pens. Where no group says it, by the treatments of the visit.
 * Undefined where nothing or both is said of the pig.
 */
export function armOf(one: Case): Arm | undefined {
  const { visit } = one;
  const { group, pen } = one.record.pig ?? {};
  if (visit === undefined || group === undefined) return undefined;
  const said = saysArms(visit) ? visit.record.groups?.[group]?.arm : armByTreatments(visit, group);
  if (said === undefined) return undefined;
  if (typeof said === "string") return keyed(one, said, "group");
  if (pen === undefined) return undefined;
  const [first, ...more] = (["control", "treated"] as const).filter((arm) =>
    said[arm].some((name) => String(name) === String(pen)),
  );
  return first === undefined || more.length > 0 ? undefined : keyed(one, first, "pen");
}

function keyed(one: Case, arm: ArmName, unit: Arm["unit"]): Arm | undefined {
  const key = clusterKey(one, unit === "pen" ? "pen" : "room");
  return key === undefined ? undefined : { arm, unit, key };
}

const saysArms = ({ record }: Visit): boolean =>
  Object.values(record.groups ?? {}).some(({ arm }) => arm !== undefined);

/**
 * A group is treated where an entry names it that reaches every pig, in feed or water, and control where none names it. What
 * was given in another way may have been given to some; of a text, and of an entry for all groups, nothing follows.
 */
function armByTreatments({ record }: Visit, group: string): ArmName | undefined {
  const entries = (record.treatments ?? []).flatMap((entry) => (typeof entry === "string" ? [] : [entry]));
  if (entries.length < (record.treatments ?? []).length) return undefined;
  if (entries.length === 0 || entries.some((entry) => entry.group === undefined)) return undefined;
  const own = entries.filter((entry) => entry.group === group);
  if (own.length === 0) return "control";
  const [from, day] = [moment(own[0]?.from), moment(record.date)];
  const later = from !== undefined && day !== undefined && isAfter(from, day);
  return later || own.some(({ route }) => route !== "in-feed" && route !== "in-water")
    ? undefined
    : "treated";
}

/** What was tried on these pigs of one visit. */
export function trialOf(cases: readonly Case[]): Trial {
  const visit = cases[0]?.visit;
  const record = visit?.record;
  const units = [...new Set(cases.flatMap((one) => armOf(one)?.unit ?? []))].sort();
  const given = (record?.treatments ?? []).flatMap((entry) =>
    typeof entry === "string" ? [] : [entry.with],
  );
  return {
    treatment: record?.trial?.treatment ?? (given.length === 0 ? null : listing([...new Set(given)])),
    allocated: record?.trial?.allocated ?? null,
    unit: units.length > 1 ? "pen or group" : (units[0] ?? "pen"),
    from: visit !== undefined && !saysArms(visit) ? "treatments" : "arms",
  };
}
