/** Text from a file, made safe to show: what cannot be seen becomes a code that can be read. */

const unsafe =
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u200b\u200e\u200f\u2028-\u202e\u2060\u2066-\u2069\ufeff\p{Cs}\p{NChar}\u{e0000}-\u{e007f}]|(?<![\p{ExtPict}\d#*])[\ufe00-\ufe0f]/gu;

/** Replaces control characters, marks that turn the direction of text and other invisible ones by `\u{…}`. */
export function visible(text: string): string {
  return text.replace(unsafe, (char) => `\\u{${(char.codePointAt(0) ?? 0).toString(16)}}`);
}
