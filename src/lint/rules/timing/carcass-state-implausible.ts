import { quantity } from "../../../cases/index.ts";
import { autolysis } from "../../../knowledge/index.ts";
import { diedAt, frozenTooSoon, hoursBetween, openedAt, spell } from "../../../record/index.ts";
import { bandOf } from "../../../sampling/index.ts";
import type { CaseRule } from "../../rule.ts";

export const carcassStateImplausible: CaseRule = {
  id: "carcass-state-implausible",
  scope: "case",
  family: "timing",
  silent: "never",
  level: "warning",
  trustsTimes: true,
  summary: "The state of the carcass fits the time since death and the temperature.",
  protects:
    "A carcass called fresh after a day in the heat, or rotten or frozen after an hour, means that a time, the temperature or the word is wrong, and all of them decide what a test is worth.",
  lookAlike:
    "A carcass that lay in the cold room and was opened in the warm: opened.ambient is the temperature of the place where it lay.",
  source: autolysis.source,
  bad: {
    case: "death: {at: 2026-04-19T03:10}\nopened: {at: 2026-04-20T09:40, ambient: 28 °C, state: fresh, note: lay in the pen}\nsamples: ",
  },
  good: {
    case: "death: {at: 2026-04-19T03:10}\nopened: {at: 2026-04-20T09:40, ambient: 28 °C, state: advanced-autolysis, note: lay in the pen}\nsamples:\nintestine: {duodenum: &a {not_assessable: {because: autolysed, why: green and soft}}, jejunum: *a, ileum: *a, ileocaecal_valve: *a, caecum: *a, spiral_colon: *a}\nliver_pancreas: {gall_bladder: *a, pancreas: *a}",
  },
  check(one, report) {
    const { state, ambient } = one.record.opened ?? {};
    if (state === undefined) return;
    const soon = frozenTooSoon(one);
    if (soon !== undefined)
      report(
        `opened.state: frozen ${spell(soon)} after death is hard to believe; even a piglet takes hours to freeze. Correct the state or the times; frozen is the state of the whole carcass, not of the samples.`,
        ["opened", "state"],
      );
    const hours = hoursBetween(diedAt(one), openedAt(one));
    const band = bandOf(one);
    if (hours === undefined || band === undefined) return;
    const fresh =
      state === "fresh" && hours > (quantity("duration", band.fresh_until) ?? Number.POSITIVE_INFINITY);
    // A pig that was found dead had died before.
    const rotten =
      state === "advanced-autolysis" &&
      one.record.death?.manner !== "found-dead" &&
      hours < (quantity("duration", band.advanced_from) ?? 0);
    if (fresh || rotten)
      report(
        `opened.state: ${state} ${spell(hours)} after death at ${ambient} is hard to believe. Correct the state, the times or the temperature; if it lay elsewhere, write the temperature of that place.`,
        ["opened", "state"],
      );
  },
};
