/** The transform attribute of SVG as a matrix. */

/** `a b c d e f` of SVG: x becomes ax + cy + e, y becomes bx + dy + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** No drawing program writes a longer one. */
const longest = 10_000;

const one = /\s*(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]*)\)[\s,]*/y;
const number = /[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?/giy;
const separator = /\s+(?:,\s*)?|,\s*/y;

/** @returns undefined when it cannot be read */
export function transformMatrix(transform: string): Matrix | undefined {
  if (transform.length > longest) return undefined;
  const parts: Matrix[] = [];
  const { length } = transform.trimEnd();
  for (let at = 0; at < length; at = one.lastIndex) {
    one.lastIndex = at;
    const [, name = "", inside = ""] = one.exec(transform) ?? [];
    const made = primitives(name, numbersIn(inside.trim()));
    if (made === undefined) return undefined;
    parts.push(...made);
  }
  return parts.reduce(combined, unmoved);
}

const unmoved: Matrix = [1, 0, 0, 1, 0, 0];

/** First the second matrix, then the first. */
export const combined = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** Numbers with a blank or a comma between them; none when anything else is written. */
function numbersIn(text: string): number[] {
  const found: number[] = [];
  for (let at = 0; at < text.length; ) {
    if (at > 0) at = behind(separator, text, at);
    const end = behind(number, text, at);
    if (end === at) return [];
    found.push(Number(text.slice(at, end)));
    at = end;
  }
  return found;
}

/** Where a match that begins at a place ends. */
function behind(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

function primitives(name: string, numbers: readonly number[]): Matrix[] | undefined {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
  const turn = (Math.PI / 180) * a;
  switch (`${name} ${numbers.length}`) {
    case "matrix 6":
      return [[a, b, c, d, e, f]];
    case "translate 1":
    case "translate 2":
      return [[1, 0, 0, 1, a, b]];
    case "scale 1":
      return [[a, 0, 0, a, 0, 0]];
    case "scale 2":
      return [[a, 0, 0, b, 0, 0]];
    case "rotate 1":
    case "rotate 3":
      return [
        [1, 0, 0, 1, b, c],
        [Math.cos(turn), Math.sin(turn), -Math.sin(turn), Math.cos(turn), 0, 0],
        [1, 0, 0, 1, -b, -c],
      ];
    case "skewX 1":
      return [[1, 0, Math.tan(turn), 1, 0, 0]];
    case "skewY 1":
      return [[1, Math.tan(turn), 0, 1, 0, 0]];
    default:
      return undefined;
  }
}
