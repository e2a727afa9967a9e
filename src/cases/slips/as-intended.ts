/**
 * A document as it was probably meant, where values do not fit the format. Alarms alone read it: a slip in the word of
 * a lesion is a fault of the file and must not silence the lesion.
 */

import type { SchemaFault } from "../faults/schema-faults.ts";
import { faultsOf, type Validated, validate } from "../faults/validate.ts";
import { put, remove, valueAt } from "../model/path.ts";
import { putAlarmCheckRight } from "./alarm-check.ts";
import { merged, putOrgansRight } from "./organs.ts";
import { putSelectionRight } from "./selection.ts";
import { putTemperatureRight } from "./temperature.ts";

type Keyed = Record<string, unknown>;

/** A key put right may show what is wrong below it. */
const rounds = 5;

/** The valid part of what was meant by a case or a visit at fault. */
export function asIntended(kind: "case" | "visit", value: Keyed): Validated {
  const document = structuredClone(value);
  for (let round = 0; round < rounds; round++) {
    if (kind === "case") {
      putTemperatureRight(document);
      putSelectionRight(document);
      putAlarmCheckRight(document);
      putOrgansRight(document);
    }
    const changed = faultsOf(kind, document).map((fault) => mend(document, fault));
    if (!changed.includes(true)) break;
  }
  return validate(kind, document);
}

/**
 * Moves the value of a mistyped key, or puts the word that was meant.
 * @returns whether something was changed
 */
function mend(document: Keyed, { kind, path, aim, guess }: SchemaFault): boolean {
  if (kind === "unknown-key" && aim !== undefined) {
    const value = valueAt(document, path);
    if (value === undefined) return false;
    remove(document, path);
    const home = aim.slice(0, -1);
    const there = valueAt(document, home);
    if (typeof there !== "object" || there === null) put(document, home, {});
    return put(document, aim, merged(valueAt(document, aim), value));
  }
  return guess !== undefined && put(document, path, guess);
}
