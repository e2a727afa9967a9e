/** JSON that is safe to print: what a terminal would obey or hide is written as an escape, which reads back the same. */

const unsafe = /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g;

/** Two blanks of indentation and a line end. */
export function toJson(value: unknown): string {
  const escaped = JSON.stringify(value, null, 2).replace(
    unsafe,
    (char) => `\\u${(char.codePointAt(0) ?? 0).toString(16).padStart(4, "0")}`,
  );
  return `${escaped}\n`;
}
