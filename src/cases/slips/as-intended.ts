/**
 * A document as it was probably meant, where values do not fit the format. Alarms alone read it: a slip in the word of
 * a lesion is a fault of the file and must not silence the lesion.
 */
import type { SchemaFault } from "../faults/schema-faults.ts";
import { faultsOf, type Validated, validate } from "../faults/validate.ts";
import { isKeyed, type Keyed, put, remove, valueAt } from "../model/path.ts";
import { intendedAnswer, putAlarmCheckRight } from "./alarm-check.ts";
import { merged, putOrgansRight } from "./organs.ts";
import { differing, partsOf } from "./value.ts";
import { isDenial } from "./word.ts";

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

/** Degrees Celsius and Fahrenheit between which a living pig is; our own, wide. */
const livingRange = [
  { unit: "°C", from: 30, to: 45 },
  { unit: "°F", from: 86, to: 113 },
];

/** `41.2 °C rectal`, `> 41`, `41-42 °C`, `106 F`: the first number, with words round it. */
const writtenDegrees = /^[^\d-]*(\d{2,3}(?:[.,]\d+)?)(?!\d)[^\d]*(?:\d{2,3}(?:[.,]\d+(?!\d))?[^\d]*)?$/u;

/** A body temperature without its unit, or with words: no pig lives where Celsius and Fahrenheit could be mistaken. */
function putTemperatureRight(document: Keyed): void {
  const { pig } = document;
  const degrees = Number(
    writtenDegrees.exec(String(valueAt(document, ["pig", "temperature"])))?.[1]?.replace(",", "."),
  );
  const scale = livingRange.find(({ from, to }) => degrees >= from && degrees <= to);
  if (scale === undefined || !isKeyed(pig)) return;
  const celsius = scale.unit === "°C" ? degrees : Math.round(((degrees - 32) * 50) / 9) / 10;
  pig.temperature = `${celsius} °C`;
}

/** Signs that are no list or stand several in one entry, and a treatment that is told in words. */
function putSelectionRight(document: Keyed): void {
  const { selection } = document;
  if (!isKeyed(selection)) return;
  const { signs, treated } = selection;
  if (isKeyed(signs))
    selection.signs = Object.keys(signs).filter((sign) => intendedAnswer(signs[sign]) === "present");
  else if (Array.isArray(signs)) selection.signs = differing(signs.flatMap(signsIn));
  if (typeof treated === "string" && !answered.has(treated.toLowerCase()) && !isDenial(treated))
    selection.treated = "yes";
}

/** Answers of the format. */
const answered = new Set(["yes", "no", "unknown"]);

const signsIn = (sign: unknown): unknown => (typeof sign === "string" ? partsOf(sign.split(/[,;+/]/)) : sign);
