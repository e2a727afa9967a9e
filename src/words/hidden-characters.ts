/** Characters that a reader cannot see and that can make a text look like another. */

/**
 * Control characters other than tab and line ends (a carriage return alone is none), marks that turn the direction
 * of text, byte order marks inside a text, line separators, tag characters, characters that are none by definition,
 * variation selectors that follow no emoji, and halves of characters.
 */
export const hiddenCharacter =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\p{Cs}\p{Noncharacter_Code_Point}\u{e0000}-\u{e007f}]|(?<![\p{Extended_Pictographic}\d#*])[\ufe00-\ufe0f]|\r(?!\n)/u;

/** `a control character (U+001B)` */
export function hiddenName(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  const kind = code < 0xa0 ? "a control character" : "an invisible mark";
  return `${kind} (U+${code.toString(16).toUpperCase().padStart(4, "0")})`;
}
