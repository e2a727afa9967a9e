/** What is said of a text that cannot be read: merged from several sources, and kept to what somebody can read. */
import type { Span } from "./source-tree.ts";
import type { TextLines } from "./text-lines.ts";

export interface SyntaxMessage extends Span {
  readonly message: string;
}

const most = 100;

/** The faults in the order of the text; those after the first hundred as one. */
export function summedUp(faults: readonly SyntaxMessage[]): SyntaxMessage[] {
  const sorted = [...faults].sort((a, b) => a.start - b.start);
  const next = sorted[most];
  if (next === undefined) return sorted;
  return [...sorted.slice(0, most), { ...next, message: "there are more faults from here on" }];
}

/**
 * Puts faults of the syntax and of what was read all the same together: on a line where the parser stumbled only the
 * first counts, for the rest may follow from it.
 */
export function firstOfLine(
  syntax: readonly SyntaxMessage[],
  other: readonly SyntaxMessage[],
  lines: TextLines,
): SyntaxMessage[] {
  const line = ({ start }: Span): number => lines.at(start).line;
  const stumbled = new Map<number, SyntaxMessage>(syntax.map((fault) => [line(fault), fault]));
  const first = new Map(stumbled);
  const kept: SyntaxMessage[] = [];
  for (const fault of other) {
    const at = line(fault);
    if (!stumbled.has(at)) kept.push(fault);
    else if (fault.start < (first.get(at)?.start ?? 0)) first.set(at, fault);
  }
  return [...first.values(), ...kept];
}
