/** The entry `measured` as text: on lines of its own, or inside braces. */
import type { MeasuredRecord } from "../measure/index.ts";

/** Lines inside braces are broken before this column. */
const width = 110;

/** A value on its own line: a word or number as it is, anything else in quotes. */
export const scalar = (value: unknown): string =>
  typeof value === "number" ||
  (typeof value === "string" && /^[A-Za-z0-9][\w./ -]*$/.test(value) && isText(value))
    ? String(value)
    : JSON.stringify(value);

/** Whether YAML reads the bare text as a text: not as a number, a truth value or nothing. */
const isText = (text: string): boolean =>
  !/ $/.test(text) &&
  Number.isNaN(Number(text.replaceAll("_", ""))) &&
  !/^(true|false|yes|no|on|off|y|n|null|\d[\d_.:-]*)$/i.test(text);

function entries(measured: MeasuredRecord): string[] {
  return Object.entries(measured).map(([name, value]) => {
    if (typeof value !== "object") return `${name}: ${name === "sha256" ? quoted(value) : scalar(value)}`;
    const inside = Object.entries(value).map(([part, number]) => `${part}: ${scalar(number)}`);
    return `${name}: {${inside.join(", ")}}`;
  });
}

/** A fingerprint of digits alone, or like 12e3..., would be read as a number; so it always stands in quotes. */
const quoted = (value: string | number): string => JSON.stringify(value);

/** @param indent of the key; each line ends with `end` */
export function blockEntry(measured: MeasuredRecord, indent: string, end: string): string {
  return ["measured:", ...entries(measured).flatMap((entry) => folded(entry, indent.length + 2))]
    .map((line) => `${indent}${line}${end}`)
    .join("");
}

/** A list of figures that is too long for its line goes on below its first figure. */
function folded(entry: string, column: number): string[] {
  if (column + entry.length <= width) return [`  ${entry}`];
  const open = entry.indexOf("{") + 1;
  const lines = [`  ${entry.slice(0, open)}`];
  for (const [index, figure] of entry.slice(open).split(", ").entries()) {
    const last = lines.at(-1) ?? "";
    if (index === 0) lines[0] = `${last}${figure}`;
    else if (column + last.length + figure.length + 2 <= width)
      lines[lines.length - 1] = `${last}, ${figure}`;
    else {
      lines[lines.length - 1] = `${last},`;
      lines.push(`${" ".repeat(open + 2)}${figure}`);
    }
  }
  return lines;
}

/** @param indent of the lines that follow the first, before what lines the entries up */
export function flowEntry(measured: MeasuredRecord, indent: string, end: string): string {
  const open = "measured: {";
  const all = entries(measured);
  const longest = all.reduce((most, entry) => Math.max(most, entry.length), 0);
  const aligned = indent.length + open.length;
  const deeper = " ".repeat(aligned + longest + 2 <= width ? aligned : indent.length + 2);
  const lines: string[] = [];
  for (const entry of all) {
    const last = lines.at(-1);
    if (last !== undefined && deeper.length + last.length + entry.length + 3 <= width)
      lines[lines.length - 1] = `${last}, ${entry}`;
    else lines.push(entry);
  }
  return `${open}${lines.join(`,${end}${deeper}`)}}`;
}

/** The single values of an entry with their paths. */
export function leavesOf(value: unknown): { readonly path: readonly string[]; readonly value: unknown }[] {
  if (typeof value !== "object" || value === null) return [{ path: [], value }];
  return Object.entries(value).flatMap(([name, item]) =>
    leavesOf(item).map((leaf) => ({ path: [name, ...leaf.path], value: leaf.value })),
  );
}
