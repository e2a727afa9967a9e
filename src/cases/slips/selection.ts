/** Signs that are no list or stand several in one entry, and a treatment that is told in words. */
import { intendedAnswer } from "./alarm-check.ts";
import { isKeyed } from "./findings.ts";
import { isDenial } from "./word.ts";

/** Puts signs and treatment of a case right, in place. */
export function putSelectionRight(document: Record<string, unknown>): void {
  const { selection } = document;
  if (!isKeyed(selection)) return;
  const { signs, treated } = selection;
  if (isKeyed(signs))
    selection.signs = Object.keys(signs).filter((sign) => intendedAnswer(signs[sign]) === "present");
  else if (Array.isArray(signs)) selection.signs = signs.flatMap(parts);
  if (typeof treated === "string" && !answered.has(treated.toLowerCase()) && !isDenial(treated))
    selection.treated = "yes";
}

const answered = new Set(["yes", "no", "unknown"]);

const parts = (sign: unknown): unknown =>
  typeof sign === "string"
    ? sign
        .split(/[,;+/]/)
        .map((part) => part.trim())
        .filter((part) => part !== "")
    : sign;
