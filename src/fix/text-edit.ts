/** Changes to a text at known places. */

export interface TextEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Where each line of a text begins. */
export const lineStarts = (text: string): number[] => [
  0,
  ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1),
];

/** Applies edits that do not overlap; of two that do, the later one is left out. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  let result = "";
  let done = 0;
  for (const edit of [...edits].sort((a, b) => a.start - b.start)) {
    if (edit.start < done) continue;
    result += text.slice(done, edit.start) + edit.text;
    done = edit.end;
  }
  return result + text.slice(done);
}
