/** Days and times (ISO 8601). A time without zone is local time of the farm; two such times compare as written. */

const pattern = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2}))?(Z|[+-]\d{2}:\d{2})?)?$/;

/** An instant in hours, and whether only the day is known. */
export interface Moment {
  /** Hours since 1970-01-01T00:00, as written (a written zone is taken off). */
  readonly hours: number;
  readonly dayOnly: boolean;
}

/** Reads `2026-03-14` or `2026-03-14T09:10`; undefined when it is neither or no such day exists. */
export function moment(text: string | undefined): Moment | undefined {
  const match = text === undefined ? null : pattern.exec(text);
  if (match === null) return undefined;
  const [year, month, day, hour, minute, second] = match.slice(1, 7).map((part) => Number(part ?? 0));
  if (year === undefined || month === undefined || day === undefined) return undefined;
  const at = Date.UTC(year, month - 1, day, hour, minute, second);
  const check = new Date(at);
  if (check.getUTCMonth() !== month - 1 || check.getUTCDate() !== day) return undefined;
  return { hours: at / 3_600_000 - zoneHours(match[7]), dayOnly: match[4] === undefined };
}

/**
 * Whether the first moment lies after the second. A bare day counts as the whole day, so nothing on that day is
 * out of order with it.
 */
export function isAfter(first: Moment, second: Moment): boolean {
  if (first.dayOnly || second.dayOnly) return Math.floor(first.hours / 24) > Math.floor(second.hours / 24);
  return first.hours > second.hours;
}

function zoneHours(zone: string | undefined): number {
  if (zone === undefined || zone === "Z") return 0;
  const hours = Number(zone.slice(1, 3)) + Number(zone.slice(4, 6)) / 60;
  return zone.startsWith("-") ? -hours : hours;
}
