/** Protocols as a repository has them: those that ship, changed or added to by its settings. */
import type { SettingsFile } from "../../generated/settings.types.ts";
import { facts, type Protocol, protocols as shipped } from "../../knowledge/index.ts";

/** A protocol with what was added and left out by settings. */
export interface ResolvedProtocol extends Protocol {
  readonly leave_out: readonly string[];
}

/**
 * All protocols by name.
 * @param settings without unknown names and circles (see settings-faults.ts)
 * @throws RangeError on a circle
 */
export function resolveProtocols(settings: SettingsFile): Map<string, ResolvedProtocol> {
  const own = settings.protocols ?? {};
  const resolved = new Map<string, ResolvedProtocol>();
  const resolve = (name: string): ResolvedProtocol => {
    const known = resolved.get(name);
    if (known !== undefined) return known;
    const builtIn = shipped.get(name);
    const start = builtIn === undefined ? empty(name) : { ...builtIn, leave_out: [] };
    const changes = Object.hasOwn(own, name) ? own[name] : undefined;
    if (changes === undefined) return start;
    const from = changes.extends ?? name;
    const base = from === name ? start : resolve(from);
    return {
      ...base,
      id: name,
      title: changes.title ?? (from === name ? base.title : name),
      purpose: changes.purpose ?? base.purpose,
      due: [...base.due, ...(changes.add ?? [])],
      wanted: [...(base.wanted ?? []), ...(changes.wanted ?? [])],
      leave_out: [...base.leave_out, ...(changes.leave_out ?? [])],
      follow_signs: changes.follow_signs ?? base.follow_signs,
      observations: changes.observations ?? base.observations,
      facts: changes.facts ?? base.facts,
    };
  };
  for (const name of [...shipped.keys(), ...Object.keys(own)]) resolved.set(name, resolve(name));
  return resolved;
}

/** What a protocol asks of a carcass that was closed on suspicion: nothing that comes after, so no organ and no measure. */
export function untilClosed(protocol: ResolvedProtocol): ResolvedProtocol {
  const known = closedOf.get(protocol);
  if (known !== undefined) return known;
  const before = [...facts].filter(([, { later }]) => later !== true).map(([id]) => id);
  const asked = protocol.facts.includes("all") ? before : protocol.facts.filter((id) => before.includes(id));
  const closed: ResolvedProtocol = {
    ...protocol,
    due: [],
    wanted: [],
    follow_signs: false,
    observations: "optional",
    facts: asked,
  };
  closedOf.set(protocol, closed);
  return closed;
}

const closedOf = new WeakMap<ResolvedProtocol, ResolvedProtocol>();

/** A new protocol that starts from nothing: only what the settings add is due. */
function empty(name: string): ResolvedProtocol {
  return {
    format: 1,
    id: name,
    title: name,
    purpose: "",
    source: { cite: "settings of this repository", confidence: "common-practice" },
    due: [],
    follow_signs: true,
    observations: "required",
    facts: ["all"],
    leave_out: [],
  };
}
