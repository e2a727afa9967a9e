/** Files as nobody would write them: bytes, lines and structure changed at random, and pieces repeated by the thousand. */

/** Numbers from 0 to 1 that a seed gives again (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Signs that mean something to one of the readers. */
const signs = [
  ..."-?:,[]{}&*!|>'\"%@`#~<=/\\.;()+_\t\n\r 0123456789aAéß",
  "- ",
  ": ",
  "? ",
  "\n  ",
  "\r\n",
  "---\n",
  "...\n",
  "<<: ",
  "&a ",
  "*a ",
  "!x ",
  "!!binary ",
  "{a: ",
  "[[",
  "]]",
  "}}",
  "null",
  "true",
  "~",
  "1e9",
  "-0",
  "0x1f",
  "NaN",
  "1_000",
  "12:30",
  "9".repeat(40),
  "2026-04-31",
  "17,5 kg",
  "5 x 5 x 5 mm",
  "__proto__",
  "constructor",
  "toString",
  "\u0000",
  "\u001b[31m",
  "\u202e",
  "\u200d",
  "\ufeff",
  "\ud800",
  "🐖",
  "e\u0301",
  "no ",
  "not ",
  "none",
  "or ",
  "and ",
  "neither seen",
  "vesicles",
  "blisters on the snout",
  "free of ",
  "? ",
  "FMD: ",
  "<g>",
  "</g>",
  "<!--",
  "]]>",
  "&lt;",
  "<?x?>",
  "<!DOCTYPE svg [",
  'transform="scale(1)',
  "M0 0",
  "L1 1",
  "h1",
  "z",
  "A1 1 0 1 1 1 1",
  '"part": ',
  "[0, 0], ",
  '{"type": ',
  ',"',
  '""',
  "a,b;c",
]; // prettier-ignore

const mostCharacters = 150_000;

/**
 * A text changed at one to four places.
 * @param other texts of the same kind, pieces of which may come in
 */
export function mutated(text: string, other: readonly string[], random: () => number): Uint8Array {
  const below = (end: number): number => Math.floor(random() * end);
  const oneOf = <T>(list: readonly T[], otherwise: T): T => list[below(list.length)] ?? otherwise;
  const few = (): number => 1 + below(3) ** 2;
  /** A piece of a text: some characters, a line, or what stands between two of the same signs. */
  const pieceOf = (whole: string): readonly [start: number, end: number] => {
    const at = below(whole.length + 1);
    if (random() < 0.4) return [at, Math.min(whole.length, at + 1 + below(random() < 0.5 ? 6 : 80))];
    const sign = oneOf(["\n", "\n", " ", ",", ":", '"', "<", "[", "{"], "\n");
    const start = whole.lastIndexOf(sign, at) + 1;
    const end = whole.indexOf(sign, at);
    return [start, end < 0 ? whole.length : end + 1];
  };
  const some = (): string => {
    if (random() < 0.6) return oneOf(signs, " ");
    const from = oneOf(other, text);
    return from.slice(...pieceOf(from));
  };
  const changes: ((now: string) => string)[] = [
    // Take out, put in, put in the place of.
    (now) => ((part) => now.slice(0, part[0]) + now.slice(part[1]))(pieceOf(now)),
    (now) => ((at) => now.slice(0, at) + some().repeat(few()) + now.slice(at))(below(now.length + 1)),
    (now) => ((part) => now.slice(0, part[0]) + some() + now.slice(part[1]))(pieceOf(now)),
    // The value of a key.
    (now) => {
      const [start] = pieceOf(now);
      const colon = now.indexOf(":", start);
      if (colon < 0) return now + some();
      const end = now.indexOf("\n", colon);
      return `${now.slice(0, colon + 1)} ${some().repeat(few())}${end < 0 ? "" : now.slice(end)}`;
    },
    // Two lines change places, or one stands further in.
    (now) => {
      const lines = now.split("\n");
      const [one, two] = [below(lines.length), below(lines.length)];
      [lines[one], lines[two]] = [lines[two] ?? "", lines[one] ?? ""];
      return lines.join("\n");
    },
    (now) =>
      now.replaceAll("\n", (end, at: number) => (at % 7 === 0 ? `${end}${" ".repeat(below(9))}` : end)),
    // A piece, or what means something, again and again.
    (now) => {
      const [start, end] = pieceOf(now);
      const piece = random() < 0.5 ? now.slice(start, end) : some() + (random() < 0.3 ? some() : "");
      const times = 10 ** (1 + random() * 3.7);
      const most = Math.max(0, (mostCharacters - now.length) / Math.max(1, piece.length));
      return (
        now.slice(0, start) +
        piece.repeat(Math.floor(Math.min(times, most))) +
        now.slice(random() < 0.5 ? start : end)
      );
    },
  ];
  let now = text;
  for (let left = 1 + below(4); left > 0; left--)
    now = oneOf(changes, (same) => same)(now).slice(0, 2 * mostCharacters);
  const bytes = new TextEncoder().encode(now);
  for (let left = random() < 0.15 ? few() : 0; left > 0; left--) bytes[below(bytes.length)] = below(256);
  return random() < 0.05 ? bytes.subarray(0, below(bytes.length)) : bytes;
}
