/** Days and times (ISO 8601). A time without zone is local time of the farm; two such times compare as written. */

const pattern = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2}))?(Z|[+-]\d{2}:\d{2})?)?$/;

/** A point in time, and whether only the day is known. */
export interface Moment {
  /** Hours since 1970-01-01T00:00 by the clock that was written down. */
  readonly written: number;
  /** The same in UTC; undefined without a zone. */
  readonly utc: number | undefined;
  readonly dayOnly: boolean;
}

/** Reads `2026-03-14` or `2026-03-14T09:10`; undefined when it is neither or there is no such day or time. */
export function moment(text: string | undefined): Moment | undefined {
  const match = text === undefined ? null : pattern.exec(text);
  if (match === null) return undefined;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = match
    .slice(1, 7)
    .map((part) => Number(part ?? 0));
  const at = Date.UTC(year, month - 1, day, hour, minute, second);
  // A part that is too large runs over into the next one, so the same day comes back only from a real moment.
  const date = new Date(at);
  const isSameDay =
    date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  if (!isSameDay || hour > 23 || minute > 59 || second > 59) return undefined;
  const zone = zoneHours(match[7]);
  const written = at / 3_600_000;
  return {
    written,
    utc: zone === undefined ? undefined : written - zone,
    dayOnly: match[4] === undefined,
  };
}

/**
 * Whether the first moment lies after the second. A bare day counts as the whole day, so nothing on that day is
 * out of order with it. Zones count only where both moments have one: all clocks of a case hang on the same farm.
 * Universal time (Z) beside a time without zone comes from another clock, often that of a camera, and the offset of
 * the farm is not known: only more than the widest offset there is counts then.
 */
export function isAfter(first: Moment, second: Moment): boolean {
  const unknown = onOneClock(first, second) ? 0 : widestOffset;
  if (first.dayOnly || second.dayOnly)
    return Math.floor((first.written - unknown) / 24) > Math.floor(second.written / 24);
  if (first.utc !== undefined && second.utc !== undefined) return first.utc > second.utc;
  return first.written - second.written > unknown;
}

/** Whether the hours between two moments are known: not with universal time beside a time without zone. */
export const onOneClock = (first: Moment, second: Moment): boolean =>
  (first.utc !== undefined && second.utc !== undefined) || isUniversal(first) === isUniversal(second);

/** Hours; no clock of a country is further from universal time. */
const widestOffset = 14;

const isUniversal = ({ utc, written }: Moment): boolean => utc === written;

/** Hours east of Greenwich. */
function zoneHours(zone: string | undefined): number | undefined {
  if (zone === undefined) return undefined;
  if (zone === "Z") return 0;
  const hours = Number(zone.slice(1, 3)) + Number(zone.slice(4, 6)) / 60;
  return zone.startsWith("-") ? -hours : hours;
}
