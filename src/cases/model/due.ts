/** Which organs an examination must cover: it follows from protocol, age class, sex and signs. */
import {
  type AgeClass,
  hasOrgan,
  organs,
  type PlacedOrgan,
  type Sex,
  signFamilies,
} from "../../knowledge/index.ts";
import type { ResolvedProtocol } from "./protocol.ts";

/** What decides about the organs due. */
export interface DueQuestion {
  readonly protocol: ResolvedProtocol;
  /** Undefined when neither class nor age is known: the pig is then treated like a weaned pig. */
  readonly ageClass: AgeClass | undefined;
  readonly sex: Sex | undefined;
  readonly signs: readonly string[];
}

/** The organs due, in the order of the anatomy. */
export function organsDue({ protocol, ageClass, sex, signs }: DueQuestion): readonly PlacedOrgan[] {
  const families = protocol.follow_signs ? signFamilies(signs) : [];
  // Pigs of a visit are much alike, and whoever asks gets the same list.
  const known = dueOf.get(protocol) ?? new Map<string, readonly PlacedOrgan[]>();
  dueOf.set(protocol, known);
  const alike = [ageClass, sex, ...families].join(" ");
  const due = known.get(alike) ?? dueIn({ protocol, ageClass, sex, families });
  known.set(alike, due);
  return due;
}

const dueOf = new WeakMap<ResolvedProtocol, Map<string, readonly PlacedOrgan[]>>();

function dueIn({
  protocol,
  ageClass,
  sex,
  families,
}: Omit<DueQuestion, "signs"> & { readonly families: readonly string[] }): PlacedOrgan[] {
  const assumed = ageClass ?? "weaner";
  return organs.filter((organ) => {
    if (!hasOrgan(organ.definition, ageClass, sex)) return false;
    if (names(protocol.leave_out, organ)) return false;
    const asked =
      names(protocol.due, organ) ||
      (protocol.due.includes("base") && organ.definition.base.includes(assumed));
    return (
      asked ||
      (organ.definition.when ?? []).some((when) => when.signs.some((family) => families.includes(family)))
    );
  });
}

const names = (list: readonly string[], organ: PlacedOrgan): boolean =>
  list.includes(organ.id) || list.includes(organ.system);
