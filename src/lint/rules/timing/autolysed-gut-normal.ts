import { formatPath } from "../../../cases/index.ts";
import { autolysis, organById } from "../../../knowledge/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const autolysedGutNormal: CaseRule = {
  id: "autolysed-gut-normal",
  scope: "case",
  family: "timing",
  silent: "never",
  level: "warning",
  summary: "In a rotten carcass gut, gall bladder and pancreas are not called normal.",
  protects:
    "They rot first: whoever calls them normal did not look, and a later reader takes them for healthy.",
  lookAlike:
    "A cold, rotten carcass whose gut had kept: write what could still be seen as a finding or a note, and state: moderate-autolysis where it is more true.",
  source: verified(
    "Australian Veterinary Handbook, section on autolysis: gut, gall bladder and pancreas go first",
  ),
  bad: {
    case: "selection: {basis: found-dead}\ndeath: {manner: found-dead, method: , note: last seen alive on the evening before}\nopened: {state: advanced-autolysis}\nsamples: ",
  },
  good: {
    case: "selection: {basis: found-dead}\ndeath: {manner: found-dead, method: , note: last seen alive on the evening before}\nopened: {state: advanced-autolysis}\nsamples:\nintestine: {duodenum: &a {not_assessable: {because: autolysed, why: green and soft}}, jejunum: *a, ileum: *a, ileocaecal_valve: *a, caecum: *a, spiral_colon: *a}\nliver_pancreas: {gall_bladder: *a, pancreas: *a}",
  },
  check(one, report) {
    if (one.record.opened?.state !== "advanced-autolysis") return;
    const normal = autolysis.rots_first
      .map(organById)
      .filter((organ) => organ !== undefined)
      .map((organ) => ({ organ, state: one.organ(organ) }))
      .filter(({ state }) => state.status === "normal");
    const [first] = normal;
    if (first !== undefined)
      report(
        `${formatPath(first.state.path)}: the carcass is in advanced autolysis, and ${listing(normal.map(({ organ }) => organ.definition.title.toLowerCase()))} cannot be called normal. Write not_assessable: {because: autolysed, why: …}, or what could still be seen.`,
        first.state.path,
      );
  },
};
