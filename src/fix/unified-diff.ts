/** The unified diff of two texts, as `patch` and `git apply` read it. */

const context = 3;
/** Beyond this many pairs of lines the changed middle is shown as replaced, not compared line by line. */
const maxPairs = 4_000_000;

interface DiffLine {
  readonly sign: " " | "-" | "+";
  readonly text: string;
}

/** @returns an empty string when the texts are equal */
export function unifiedDiff(file: string, before: string, after: string): string {
  if (before === after) return "";
  const lines = compare(before.match(/[^\n]+\n?|\n/g) ?? [], after.match(/[^\n]+\n?|\n/g) ?? []);
  const name = file.replaceAll("\\", "/").replace(/^\/+/, "");
  return `--- a/${name}\n+++ b/${name}\n${hunks(lines).join("")}`;
}

/** The lines of both texts in order, by their longest common sequence. */
function compare(before: readonly string[], after: readonly string[]): DiffLine[] {
  let top = 0;
  while (top < before.length && top < after.length && before[top] === after[top]) top++;
  let end = 0;
  while (end < Math.min(before.length, after.length) - top && before.at(-1 - end) === after.at(-1 - end))
    end++;
  const old = before.slice(top, before.length - end);
  const now = after.slice(top, after.length - end);
  const same = (text: string): DiffLine => ({ sign: " ", text });
  return [
    ...before.slice(0, top).map(same),
    ...changed(old, now),
    ...before.slice(before.length - end).map(same),
  ];
}

function changed(old: readonly string[], now: readonly string[]): DiffLine[] {
  const width = now.length + 1;
  const common = new Uint32Array(old.length * now.length > maxPairs ? 0 : (old.length + 1) * width);
  const at = (i: number, j: number): number => common[i * width + j] ?? 0;
  if (common.length > 0)
    for (let i = old.length - 1; i >= 0; i--)
      for (let j = now.length - 1; j >= 0; j--)
        common[i * width + j] =
          old[i] === now[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  const lines: DiffLine[] = [];
  for (let i = 0, j = 0; i < old.length || j < now.length; ) {
    const [left, right] = [old[i], now[j]];
    if (left !== undefined && left === right && common.length > 0) {
      lines.push({ sign: " ", text: left });
      i++;
      j++;
    } else if (left !== undefined && (right === undefined || at(i + 1, j) >= at(i, j + 1))) {
      lines.push({ sign: "-", text: left });
      i++;
    } else if (right !== undefined) {
      lines.push({ sign: "+", text: right });
      j++;
    }
  }
  return lines;
}

function hunks(lines: readonly DiffLine[]): string[] {
  const changes = lines.flatMap(({ sign }, index) => (sign === " " ? [] : [index]));
  const groups: { from: number; to: number }[] = [];
  for (const index of changes) {
    const last = groups.at(-1);
    if (last !== undefined && index - last.to <= 2 * context) last.to = index;
    else groups.push({ from: index, to: index });
  }
  return groups.map(({ from, to }) => {
    const start = Math.max(0, from - context);
    const inside = lines.slice(start, to + context + 1);
    const range = (sign: "-" | "+"): string => {
      const holds = (line: DiffLine): boolean => line.sign === " " || line.sign === sign;
      const length = inside.filter(holds).length;
      const first = lines.slice(0, start).filter(holds).length + (length === 0 ? 0 : 1);
      return `${sign}${first}${length === 1 ? "" : `,${length}`}`;
    };
    const body = inside.map(({ sign, text }) =>
      text.endsWith("\n") ? `${sign}${text}` : `${sign}${text}\n\\ No newline at end of file\n`,
    );
    return `@@ ${range("-")} ${range("+")} @@\n${body.join("")}`;
  });
}
