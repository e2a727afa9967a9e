/** Text from a file, made safe to show: a control character becomes a code that can be read. */

const unsafe = /[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/g;

/** Replaces control characters and marks that turn the direction of text by `\u{…}`. */
export function visible(text: string): string {
  return text.replace(unsafe, (char) => `\\u{${(char.codePointAt(0) ?? 0).toString(16)}}`);
}
