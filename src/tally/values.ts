/** Cells as values of a case: decimal commas, dates and units as a spreadsheet writes them. */
import type { Keyed } from "../cases/model/path.ts";
import { type ReadColumn, wordFor } from "./columns.ts";
import type { Cell } from "./table.ts";

export type Value = string | number | readonly string[] | Keyed;

/** A cell that is no value; the message says what to write. */
export interface Unread {
  readonly cell: Cell;
  readonly message: string;
}

/** How the numbers and dates of a table are written. */
export interface Manner {
  readonly commas: boolean;
  /** For people, what is not as in a case. */
  readonly said: readonly string[];
  readonly unread: readonly Unread[];
  /** By column, how its dates are meant. */
  readonly dates: ReadonlyMap<ReadColumn, "day-first" | "month-first">;
}

const isNumeric = ({ to: { kind } }: ReadColumn): boolean => kind === "number" || kind === "quantity";
const comma = /^-?\d+,\d+(?![\d,.])/;
const point = /^-?\d+\.\d+(?![\d,.])/;
/** Could as well be a thousand. */
const thousand = /^-?[1-9]\d{0,2}[.,]\d{3}(?!\d)/;
const slashed = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})(?!\d)/;

export function mannerOf(columns: readonly ReadColumn[]): Manner {
  const numeric = columns.filter(isNumeric);
  const cells = numeric.flatMap(({ below }) => below);
  const isClear = (form: RegExp) => cells.some(({ text }) => form.test(text) && !thousand.test(text));
  const [commas, points] = [isClear(comma), isClear(point)];
  const unread: Unread[] = numeric.flatMap(({ below }) => {
    const [one, other] = [
      below.find(({ text }) => comma.test(text)),
      below.find(({ text }) => point.test(text)),
    ];
    return one === undefined || other === undefined
      ? []
      : [
          {
            cell: one,
            message: `"${one.text}" has a comma and "${other.text}" in row ${other.row + 1} a point; write all numbers of the column in one way`,
          },
        ];
  });
  for (const cell of cells) {
    const [sign] = /[.,]/.exec(cell.text) ?? [];
    const isProven = sign === "," ? commas : points;
    if (thousand.test(cell.text) && !isProven && unread.length === 0)
      unread.push({
        cell,
        message: `"${cell.text}" may be a thousand or a decimal; write it without the ${sign === "," ? "comma" : "point"}, or with other decimals`,
      });
  }
  const dates = new Map<ReadColumn, "day-first" | "month-first">();
  for (const column of columns) {
    if (column.to.kind !== "moment") continue;
    const written = column.below.filter(({ text }) => slashed.test(text));
    const parts = written.map((cell) => ({ cell, found: slashed.exec(cell.text) ?? [] }));
    const day = parts.find(({ found }) => Number(found[1]) > 12);
    const month = parts.find(({ found }) => Number(found[2]) > 12);
    const [first] = written;
    if (column.dates !== undefined) dates.set(column, column.dates);
    else if (day !== undefined && month === undefined) dates.set(column, "day-first");
    else if (month !== undefined && day === undefined) dates.set(column, "month-first");
    else if (first !== undefined)
      unread.push({
        cell: first,
        message: `"${first.text}" can be read day first or month first; write the year first (2026-03-14), or write dates: day-first for this column in carcase.yaml`,
      });
  }
  const orders = new Set(dates.values());
  return {
    commas,
    said: [
      ...(commas ? ["decimal commas"] : []),
      ...[...orders].map((order) => `dates ${order.replace("-", " ")}`),
    ],
    unread,
    dates,
  };
}

const formulaError = /^#(?:[A-ZÄÖÜ]+(?:\/0)?[!?]|N\/A|NV|DIV\/0)$/;

/** The value of a cell that is filled. What does not fit the format, the reader of cases tells. */
export function cellValue(cell: Cell, column: ReadColumn, manner: Manner): Value | Unread {
  const unread = (message: string): Unread => ({ cell, message });
  const said = wordFor(column, cell.text);
  if (said !== undefined) return typeof said === "number" ? said : inKind(said, column);
  // Text that a spreadsheet is told to leave alone.
  const text = cell.text.replace(/^="([^"=]*)"$/, "$1").replace(/^'(?=[=+@-])/, "");
  if (formulaError.test(text))
    return unread(`${text} is an error of the spreadsheet; write the value, or nothing`);
  if (text.startsWith("=")) return unread("this is a formula; save the table with the values");
  switch (column.to.kind) {
    case "number":
    case "quantity":
      return measure(text, column, manner) ?? text;
    case "moment":
      return (
        date(text, manner.dates.get(column)) ??
        unread(`"${text}" is no date that can be told; write 2026-03-14, with a time 2026-03-14T09:10`)
      );
    default:
      return inKind(text, column);
  }
}

function inKind(text: string, { to: { kind } }: ReadColumn): Value {
  if (kind === "word") return text.toLowerCase();
  if (kind === "list" || kind === "choices") {
    const words = text
      .toLowerCase()
      .split(/[,;+/]/)
      .map((word) => word.trim())
      .filter((word) => word !== "");
    return words.length === 1 && kind === "choices" ? text.toLowerCase() : words;
  }
  if (kind !== "state") return text;
  const [, because] = /^not[ _]examined\s*[:,](.+)$/is.exec(text) ?? [];
  return because === undefined ? text.toLowerCase() : { not_examined: because.trim() };
}

/** `17,5` under `weight (kg)` is 17.5 kg; a share may have its sign. */
function measure(text: string, { to: { kind }, unit }: ReadColumn, { commas }: Manner): Value | undefined {
  const [, number = "", after = ""] = /^([+-]?\d+(?:[.,]\d+)?)(\D*)$/.exec(text) ?? [];
  const own = after.trim();
  if (number === "") return undefined;
  if (number.includes(",") && !commas) return undefined;
  const plain = number.replace(",", ".").replace(/^\+/, "");
  if (kind === "number") return own === "" || own === "%" ? Number(plain) : undefined;
  const written = own === "" ? unit : own;
  return written === undefined ? plain : `${plain} ${written.replace(/^C$/, "°C")}`;
}

/** Year, month and day in their order, with the time; undefined where it cannot be told. */
function date(text: string, order: "day-first" | "month-first" | undefined): string | undefined {
  const clock = /[T ,](\d{1,2}:\d{2})(?::\d{2})?$/.exec(text);
  const time = clock?.[1];
  const whole = text.slice(0, clock?.index).replace(/,$/, "").trim();
  const day = isoDay(whole, order);
  return day === undefined ? undefined : time === undefined ? day : `${day}T${time.padStart(5, "0")}`;
}

function isoDay(text: string, order: "day-first" | "month-first" | undefined): string | undefined {
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) return text;
  const dotted = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(text);
  const found = dotted ?? (order === undefined ? null : /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/.exec(text));
  if (found === null) return undefined;
  const [, first = "", second = "", year = ""] = found;
  const [day, month] = dotted !== null || order === "day-first" ? [first, second] : [second, first];
  return `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
}

export const isUnread = (value: Value | Unread): value is Unread =>
  typeof value === "object" && "cell" in value && "message" in value;
