/** Makes a case from the valid part of its file. */
import { basename } from "node:path";
import type { CaseFile } from "../../generated/case.types.ts";
import type { PlacedOrgan } from "../../knowledge/index.ts";
import type { Fault } from "../faults/fault.ts";
import type { Settings } from "../settings/settings.ts";
import type { SourceDocument } from "../yaml/document.ts";
import { classOfAge } from "./age-class.ts";
import { withDefaults } from "./defaults.ts";
import { organsDue } from "./due.ts";
import type { Case, Farm, VisitContext } from "./model.ts";
import { type OrganState, organState } from "./organ-state.ts";
import { untilClosed } from "./protocol.ts";
import { quantity } from "./quantity.ts";

export interface CaseParts {
  readonly file: string;
  readonly document: SourceDocument;
  readonly record: CaseFile;
  /** The record with blanks kept, for telling a blank key from a missing one. */
  readonly raw: object;
  readonly faults: readonly Fault[];
  readonly settings: Settings;
  readonly visit: VisitContext | undefined;
  readonly farm: Farm | undefined;
}

export function buildCase({ raw: own, ...parts }: CaseParts): Case {
  const { settings, file, visit } = parts;
  const { record, raw, inherited } = withDefaults(
    { ...parts, raw: own },
    parts.faults,
    visit?.record.defaults,
  );
  const named = record.protocol ?? settings.protocol;
  const whole =
    settings.protocols.get(named) ??
    settings.protocols.get(settings.protocol) ??
    settings.protocols.get("full");
  if (whole === undefined) throw new Error("the full protocol is not among the knowledge files");
  const protocol = record.closed === undefined ? whole : untilClosed(whole);
  const ageDays = quantity("age", record.pig?.age);
  const ageClass = record.pig?.class ?? classOfAge(ageDays);
  const signs = record.selection?.signs ?? [];
  const states: OrganState[] = [];
  return {
    ...parts,
    record,
    inherited,
    id: record.case ?? basename(file).replace(/\.ya?ml$/i, ""),
    protocol,
    unknownProtocol: settings.protocols.has(named) ? undefined : named,
    ageDays,
    ageClass,
    weightKg: quantity("mass", record.pig?.weight),
    signs,
    ...organsDue({ protocol, ageClass, sex: record.pig?.sex, signs, manner: record.death?.manner }),
    organ(organ: PlacedOrgan): OrganState {
      const known = states[organ.index];
      if (known !== undefined) return known;
      const said = organState(raw, organ);
      // Of a carcass that was closed nobody saw the whole of a system.
      const isGone = said.bySystem && record.closed !== undefined;
      const state = isGone ? organState({}, organ) : said;
      states[organ.index] = state;
      return state;
    },
  };
}
