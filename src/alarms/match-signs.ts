/** Signs in life and fever against an alarm pattern. A name may be a sign or a family of signs. */
import { type Case, type Path, quantity } from "../cases/index.ts";
import { familiesOfSign } from "../knowledge/index.ts";
import type { AlarmSubject, Evidence } from "./alarm.ts";

/** The signs of the pig; undefined when it shows none of them. */
export const signs = (names: readonly string[], one: Case): Evidence[] | undefined =>
  signsAt(names, one.record.selection?.signs ?? [], one, ["selection", "signs"]);

/** The signs of the groups: those of the visit, and for a visit those of its cases as well. */
export function herdSigns(names: readonly string[], subject: AlarmSubject): Evidence[] | undefined {
  if ("cases" in subject) {
    const found = [
      ...(signsAt(names, subject.record.signs ?? [], subject, ["signs"]) ?? []),
      ...subject.cases.flatMap((one) => signs(names, one) ?? []),
    ];
    return found.length === 0 ? undefined : found;
  }
  // What the visit says lies in another file, so there is nothing to show in this one.
  const matching = (subject.visit?.record.signs ?? []).filter((sign) => isNamed(names, sign));
  return matching.length === 0 ? undefined : [];
}

/** A temperature of so many degrees or more, or fever among the signs. */
export function fever(degrees: number, one: Case): Evidence[] | undefined {
  const text = one.record.pig?.temperature;
  const measured = quantity("temperature", text);
  if (measured === undefined) return signs(["fever"], one);
  if (measured < degrees) return undefined;
  return [
    {
      subject: one,
      path: ["pig", "temperature"],
      text: `temperature ${text ?? ""}`,
      beforeKnife: true,
    },
  ];
}

const isNamed = (names: readonly string[], sign: string): boolean =>
  names.includes(sign) || familiesOfSign(sign).some((family) => names.includes(family));

function signsAt(
  names: readonly string[],
  recorded: readonly string[],
  subject: AlarmSubject,
  path: Path,
): Evidence[] | undefined {
  if (!recorded.some((sign) => isNamed(names, sign))) return undefined;
  return recorded.flatMap((sign, index) =>
    isNamed(names, sign) ? [{ subject, path: [...path, index], text: sign, beforeKnife: true }] : [],
  );
}
