/** Where something of the valid part stands in the file: entries that went whole have moved those behind them. */
import { type Path, valueAt } from "./path.ts";

interface Checked {
  readonly document: { readonly value: unknown };
  readonly record: unknown;
  readonly faults: readonly { readonly path: Path }[];
}

/**
 * The path in the file of a path in the record, such as `signs[2]` of `signs[1]` when the first sign was left out.
 * @param subject a file that was read; without faults both paths are the same
 */
export function writtenPath({ document, record, faults }: Checked, path: Path): Path {
  if (faults.length === 0) return path;
  const written: (string | number)[] = [];
  for (const [depth, step] of path.entries()) {
    const lost = typeof step === "number" ? leftOut(path.slice(0, depth), [...written]) : [];
    let at = step;
    for (const index of lost) if (typeof at === "number" && index <= at) at += 1;
    written.push(at);
  }
  return written;

  /** Positions in the file of the entries that a list has lost, in order. */
  function leftOut(kept: Path, list: Path): number[] {
    const [before, after] = [valueAt(document.value, list), valueAt(record, kept)];
    if (!Array.isArray(before) || !Array.isArray(after) || before.length <= after.length) return [];
    return faults
      .filter(
        (fault) => fault.path.length === list.length + 1 && list.every((one, i) => fault.path[i] === one),
      )
      .map((fault) => fault.path.at(-1))
      .filter((index) => typeof index === "number")
      .sort((a, b) => a - b);
  }
}
