import { shippedSet } from "../../../knowledge/index.ts";
import { count } from "../../../words/listing.ts";
import { plainName } from "../../../words/plain-name.ts";
import type { VisitRule } from "../../rule.ts";
import { abortedPig, type Fetus, fetuses } from "../../shared/aborted-litter.ts";

const nine: readonly Fetus[] = ["S-1", "S-2", "S-3"].flatMap((litter) =>
  [1, 2, 3].map((number) => ({ litter, number })),
);

export const abortionSetSmall: VisitRule = {
  id: "abortion-set-small",
  scope: "visit",
  family: "sampling",
  level: "note",
  silent: "authority",
  summary: "In an abortion problem three fetuses from each of three litters are examined.",
  protects:
    "In many litters no agent is found at all, and in a single fetus of a litter it is easily missed.",
  lookAlike:
    "One sow of the herd aborted, and there is no second litter: say it by accepting the note; mummies and stillborn piglets of the litters are counted.",
  source: shippedSet("abortion").source,
  bad: fetuses(nine.slice(0, 2)),
  good: fetuses(nine),
  check(visit, reportVisit) {
    if (!visit.complete) return;
    const aborted = visit.cases.filter(abortedPig);
    if (aborted.length === 0) return;
    const dead = visit.cases.filter(({ ageClass }) => ageClass === "mummy" || ageClass === "stillborn");
    const litters = new Map<string, number>();
    for (const one of [...aborted, ...dead]) {
      const litter = plainName(one.record.pig?.litter ?? "unnamed");
      litters.set(litter, (litters.get(litter) ?? 0) + 1);
    }
    const { ill: least = 0, litters: wanted = 0 } = visit.settings.samples.sets.get("abortion")?.pigs ?? {};
    const full = [...litters.values()].filter((number) => number >= least).length;
    if (full < wanted)
      reportVisit(
        `cases: ${count(aborted.length + dead.length, "fetus", "fetuses")} from ${count(litters.size, "litter")}. Examine ${least} from each of ${wanted} litters if you can get them, with their placentas; write pig.litter for each, and bleed the sows.`,
        ["cases"],
      );
  },
};
