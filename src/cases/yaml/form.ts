/** A file that is to be filled in, as text: keys in their order, blank or with what is known. */
import { isPlainText } from "../../words/plain-text.ts";

/** Blank, a text, a list of texts, keys in braces, keys on lines of their own, or a list of keys in braces. */
export type FormValue =
  | undefined
  | string
  | readonly string[]
  | { readonly flow: Form }
  | { readonly block: Form }
  | { readonly items: readonly Form[] }
  /** A word of the format or a number, written as it is. */
  | { readonly word: string };
/** A key `#` is a comment. */
export type Form = readonly (readonly [key: string, value: FormValue])[];

const width = 80;

export function formText(form: Form, indent = ""): string {
  return form.map(([key, value]) => entryText(key, value, indent)).join("");
}

function entryText(key: string, value: FormValue, indent: string): string {
  if (key === "#") return `${indent}# ${typeof value === "string" ? value : ""}\n`;
  const begin = `${indent}${key}:`;
  if (value === undefined) return `${begin}\n`;
  if (typeof value === "string") return `${begin} ${scalar(value)}\n`;
  if ("word" in value) return `${begin} ${value.word}\n`;
  if ("block" in value) return `${begin}\n${formText(value.block, `${indent}  `)}`;
  if ("items" in value)
    return `${begin}\n${value.items.map((item) => inBrackets(`${indent}  - {`, item.map(flowEntry), "}")).join("")}`;
  if ("flow" in value) return inBrackets(`${begin} {`, value.flow.map(flowEntry), "}");
  return inBrackets(`${begin} [`, value.map(scalar), "]");
}

function flowEntry([key, value]: Form[number]): string {
  if (value === undefined) return `${key}: `;
  if (typeof value === "string") return `${key}: ${scalar(value)}`;
  if ("word" in value) return `${key}: ${value.word}`;
  if ("block" in value || "flow" in value) {
    const inside = "block" in value ? value.block : value.flow;
    return `${key}: {${inside.map(flowEntry).join(", ")}}`;
  }
  if ("items" in value)
    return `${key}: [${value.items.map((item) => `{${item.map(flowEntry).join(", ")}}`).join(", ")}]`;
  return `${key}: [${value.map(scalar).join(", ")}]`;
}

/** On one line, or on several, each beginning below the first entry. */
function inBrackets(begin: string, entries: readonly string[], end: string): string {
  const lines: string[] = [];
  let line = begin;
  for (const [index, entry] of entries.entries()) {
    const written = `${entry}${index < entries.length - 1 ? "," : end}`;
    const isFirst = line.length === begin.length;
    if (!isFirst && line.length + 1 + written.length > width) {
      lines.push(line);
      line = " ".repeat(begin.length) + written;
    } else line += `${isFirst ? "" : " "}${written}`;
  }
  return `${[...lines, entries.length === 0 ? begin + end : line].join("\n")}\n`;
}

export const scalar = (text: string): string => (isPlainText(text) ? text : JSON.stringify(text));
