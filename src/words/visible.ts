/** Text from a file, made safe to show: what cannot be seen becomes a code that can be read. */

/**
 * Control characters, format characters of every kind, letters that have no shape, and marks that follow nothing they
 * belong to; a digit has a variation selector only under a keycap. The joiners U+200C and U+200D stay where they join: in an emoji, and after a letter that is not Latin.
 */
const unsafe =
  /[\u0000-\u001f\u007f-\u009f\u115f\u1160\u2028\u2029\u2065\u2800\u3164\uffa0\p{Cs}\p{Noncharacter_Code_Point}\u{e0000}-\u{e0fff}]|\u034f|\u17b4|\u17b5|\u180b|\u180c|\u180d|\u180f|(?!\u200c|\u200d|[\u0600-\u0605\u06dd\u070f\u08e2\u{110bd}\u{110cd}])\p{Cf}|(?<!\p{Extended_Pictographic}|\ufe0f|\p{Emoji_Modifier}|\p{M}|(?!\p{Script=Latin})\p{L})(?:\u200c|\u200d)|(?<!\p{Extended_Pictographic}|[\d#*](?=[\ufe00-\ufe0f]\u20e3))[\ufe00-\ufe0f]/gu;

/** The same for JSON text, as escapes that read back as what they were; the line ends between its values stay. */
export const escapedInJson = (json: string): string =>
  json.replace(unsafe, (char) => (char === "\n" ? char : unitsOf(char).join("")));

/** `\u200b`; two of them for a character beyond the first plane. */
function unitsOf(char: string): string[] {
  return Array.from(
    { length: char.length },
    (_, at) => `\\u${char.charCodeAt(at).toString(16).padStart(4, "0")}`,
  );
}

/** Replaces control characters, marks that turn the direction of text and other invisible ones by `\u{…}`. */
export function visible(text: string): string {
  return text.replace(unsafe, (char) => `\\u{${(char.codePointAt(0) ?? 0).toString(16)}}`);
}
