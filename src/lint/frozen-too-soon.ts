/** A carcass called frozen so soon after death that the state or a time is wrong. */
import { type Case, moment, quantity } from "../cases/index.ts";
import { plausible } from "../knowledge/index.ts";
import { hoursBetween } from "../sampling/index.ts";

/** @returns hours from death to the opening; undefined when it may well have been frozen */
export function frozenTooSoon({ record: { death, opened } }: Case): number | undefined {
  const hours = hoursBetween(moment(death?.at), moment(opened?.at));
  // A pig that was found dead had died before; when a stillborn piglet died is seldom known.
  if (opened?.state !== "frozen" || death?.manner === "found-dead" || death?.manner === "born-dead")
    return undefined;
  return hours !== undefined && hours < (quantity("duration", plausible.frozen_from) ?? 0)
    ? hours
    : undefined;
}
