/** Values that rest on a definition from memory carry a mark, every time. */

export const memoryMark = "*";
export const memoryLegend = `${memoryMark} rests on a definition from memory, not checked against its source.`;

/** The text with the mark where the confidence asks for it; a blank of the same width elsewhere. */
export function marked(text: string, confidence: string | null, pad = false): string {
  if (confidence === "from-memory") return `${text}${memoryMark}`;
  return pad ? `${text} ` : text;
}
