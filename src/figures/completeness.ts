/** Which pig was looked at where: a row a pig, a column an organ system. */
import { circle, type Drawing, fitted, hinted, label, rect, widthOf } from "./canvas.ts";

/** lesion: something was found. normal: looked at, nothing found. left: not examined, with a reason. blank: nobody wrote anything. */
export type Looked = "lesion" | "normal" | "left" | "blank";

export interface Completeness {
  readonly systems: readonly string[];
  readonly pigs: readonly {
    readonly name: string;
    readonly looked: readonly { readonly state: Looked; readonly hint: string }[];
  }[];
  readonly words: Readonly<Record<Looked, string>>;
}

const cell = 24;
const head = 132;

const marks: Readonly<Record<Looked, (x: number, y: number) => string>> = {
  lesion: (x, y) => circle(x + cell / 2, y + cell / 2, 7, "dot"),
  normal: (x, y) => circle(x + cell / 2, y + cell / 2, 7, "ring"),
  left: (x, y) => `<path d="M${x + 7} ${y + cell / 2}H${x + cell - 7}" class="axis"/>`,
  blank: (x, y) => rect(x + 5, y + 5, cell - 10, cell - 10, 'class="blank"'),
};

export function completeness({ systems, pigs, words }: Completeness): Drawing {
  const left = Math.min(220, Math.max(...pigs.map(({ name }) => widthOf(name, 12)), 40) + 24);
  const heads = systems.map(
    (name, index) =>
      `<text transform="translate(${left + index * cell + 16} ${head - 8}) rotate(-55)" class="small">${label(0, 0, fitted(name, 140, 11)).replace(/^<text[^>]*>|<\/text>$/g, "")}</text>`,
  );
  const rows = pigs.map(({ name, looked }, row) => {
    const y = head + row * cell;
    return [
      label(left - 10, y + 16, fitted(name, left - 14, 12), { anchor: "end", class: "small" }),
      ...looked.map(({ state, hint }, index) =>
        hinted(
          `${rect(left + index * cell, y, cell, cell, 'fill="#ffffff" stroke="#d0d4d8"')}${marks[state](left + index * cell, y)}`,
          hint,
        ),
      ),
    ].join("");
  });
  const y = head + pigs.length * cell + 10;
  const kinds: readonly Looked[] = ["lesion", "normal", "left", "blank"];
  const wide = Math.max(left + systems.length * cell + 90, 460);
  const key = kinds.map((kind, index) => {
    const [x, down] = [(index % 2) * (wide / 2), y + Math.floor(index / 2) * 24];
    return [
      marks[kind](x, down - 4),
      label(x + 28, down + 12, fitted(words[kind], wide / 2 - 34, 11), { class: "small" }),
    ].join("");
  });
  return { width: wide, height: y + 52, body: [...heads, ...rows, ...key].join("\n") };
}
