/** Which organs an examination must cover, and which are wanted: by protocol, age class, sex, signs and manner of death. */
import {
  type AgeClass,
  hasOrgan,
  organs,
  type PlacedOrgan,
  type Sex,
  signFamilies,
  vocabulary,
} from "../../knowledge/index.ts";
import type { ResolvedProtocol } from "./protocol.ts";

/** What decides about the organs due. */
export interface DueQuestion {
  readonly protocol: ResolvedProtocol;
  /** Undefined when neither class nor age is known: the pig is then treated like a weaned pig. */
  readonly ageClass: AgeClass | undefined;
  readonly sex: Sex | undefined;
  readonly signs: readonly string[];
  readonly manner?: string | undefined;
}

export interface DueOrgans {
  /** All of them, in the order of the anatomy. */
  readonly due: readonly PlacedOrgan[];
  /** Those that are an error where they are left out; the others are wanted, and a note. */
  readonly must: ReadonlySet<PlacedOrgan>;
}

/** The organs due. */
export function organsDue({ protocol, ageClass, sex, signs, manner }: DueQuestion): DueOrgans {
  const families = protocol.follow_signs ? signFamilies(signs) : [];
  // Pigs of a visit are much alike, and whoever asks gets the same list.
  const known = dueOf.get(protocol) ?? new Map<string, DueOrgans>();
  dueOf.set(protocol, known);
  const alike = [ageClass, sex, manner, ...families].join(" ");
  const due = known.get(alike) ?? dueIn({ protocol, ageClass, sex, manner, families });
  known.set(alike, due);
  return due;
}

const dueOf = new WeakMap<ResolvedProtocol, Map<string, DueOrgans>>();

type Question = Omit<DueQuestion, "signs"> & { readonly families: readonly string[] };

function dueIn(question: Question): DueOrgans {
  const levels = organs.map((organ) => ({ organ, level: levelOf(organ, question) }));
  return {
    due: levels.filter(({ level }) => level !== undefined).map(({ organ }) => organ),
    must: new Set(levels.filter(({ level }) => level === "must").map(({ organ }) => organ)),
  };
}

/** How much the organ is asked for: a sign asks loudest, then who names the organ, then its system or the base set. */
function levelOf(organ: PlacedOrgan, question: Question): "must" | "wanted" | undefined {
  const { protocol, ageClass, sex, manner, families } = question;
  const { base, wanted = [], when = [] } = organ.definition;
  const assumed = ageClass ?? "weaner";
  if (!hasOrgan(organ.definition, ageClass, sex) || names(protocol.leave_out, organ)) return undefined;
  const own = base.includes(assumed) ? "must" : wanted.includes(assumed) ? "wanted" : undefined;
  // Of a mummy there is what there is: nobody asks for more than its own base set.
  if (assumed === "mummy" && own === undefined) return undefined;
  const levels = when
    .filter(({ classes }) => classes?.includes(assumed) !== false)
    .filter(
      (asks) =>
        asks.signs?.some((family) => families.includes(family)) === true ||
        (protocol.follow_signs && manner !== undefined && asks.manners?.includes(manner) === true),
    )
    .map(({ level }) => level ?? "must");
  if (levels.includes("must")) return "must";
  if (protocol.wanted?.includes(organ.id) === true) return "wanted";
  if (protocol.due.includes(organ.id)) return "must";
  if (protocol.due.includes(organ.system)) return own ?? "wanted";
  if (protocol.due.includes("base") && own !== undefined) return isSpared(organ, question) ? "wanted" : own;
  return levels[0] ?? (protocol.wanted?.includes(organ.system) === true ? "wanted" : undefined);
}

/** Whether all signs of a pig that was killed ask for a few organs alone, and this one is none of them. */
function isSpared(organ: PlacedOrgan, { families, manner }: Question): boolean {
  if (families.length === 0 || manner === "found-dead") return false;
  const asked = families.map((id) => vocabulary.signs[id]?.alone);
  return asked.every((alone) => alone !== undefined && !names(alone, organ));
}

const names = (list: readonly string[], organ: PlacedOrgan): boolean =>
  list.includes(organ.id) || list.includes(organ.system);
