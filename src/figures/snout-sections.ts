/** Sections of the snout, each concha at its grade: one pig large, or many as small multiples. */
import { section } from "../drawings/snout-section.ts";
import { type Half, losses, normal, type State, septa } from "../drawings/snout-states.ts";
import { placed } from "../drawings/svg.ts";
import { type Drawing, fitted, hinted, label } from "./canvas.ts";

interface Conchae {
  /** Loss from 0 to 4; undefined where nobody graded. */
  readonly dorsal: number | undefined;
  readonly ventral: number | undefined;
}

export interface Snout {
  readonly left: Conchae;
  readonly right: Conchae;
  readonly septum: keyof typeof septa | undefined;
  /** Whose it is, and its grade in a word. */
  readonly name: string;
  readonly grade: string;
  readonly hint: string;
}

const loss = (grade: number | undefined): Half =>
  losses[Math.max(0, Math.min(4, Math.round(grade ?? 0)))] ?? normal.left;

const half = ({ dorsal, ventral }: Conchae): Half => ({ ...loss(ventral), dorsal: loss(dorsal).dorsal });

/** The septum leans to the side where more is lost; which side it was is seldom written. */
function stateOf({ left, right, septum }: Snout): State {
  const off = septa[septum ?? "straight"];
  const lost = ({ dorsal = 0, ventral = 0 }: Conchae): number => dorsal + ventral;
  return { left: half(left), right: half(right), septum: lost(left) >= lost(right) ? off : -off, lean: 0 };
}

const graded = ({ left, right }: Snout): boolean =>
  [left.dorsal, left.ventral, right.dorsal, right.ventral].some((grade) => grade !== undefined);

export interface SnoutSections {
  readonly snouts: readonly Snout[];
  readonly words: { readonly left: string; readonly right: string };
  /** How many stand side by side. */
  readonly across?: number;
  /** Px of one with its name. */
  readonly cell?: number;
}

/** Seen from in front, so that the pig's right is on the left. What nobody graded is drawn with a broken line round it. */
export function snoutSections({ snouts, words, across = 6, cell = 118 }: SnoutSections): Drawing {
  const columns = Math.max(1, Math.min(across, snouts.length));
  const scale = (cell - 8) / 320;
  const high = 300 * scale + 40;
  const parts = snouts.map((snout, index) => {
    const [x, y] = [(index % columns) * cell, Math.floor(index / columns) * high];
    const drawn = placed(
      section(stateOf(snout), () => true),
      x + cell / 2,
      y + 4,
      scale,
    );
    const empty = graded(snout)
      ? drawn
      : `<rect x="${x + 4}" y="${y + 2}" width="${cell - 8}" height="${300 * scale}" class="blank"/>`;
    return hinted(
      [
        empty,
        label(x + cell / 2, y + 300 * scale + 18, fitted(snout.name, cell - 6, 11), {
          anchor: "middle",
          class: "small",
        }),
        label(x + cell / 2, y + 300 * scale + 33, fitted(snout.grade, cell - 6), {
          anchor: "middle",
          class: "strong",
        }),
      ].join("\n"),
      snout.hint,
    );
  });
  const rows = Math.ceil(snouts.length / columns);
  return {
    width: Math.max(columns * cell, 240),
    height: rows * high + 22,
    body: [
      ...parts,
      label(4, rows * high + 14, words.right, { class: "small soft" }),
      label(columns * cell - 4, rows * high + 14, words.left, { class: "small soft", anchor: "end" }),
    ].join("\n"),
  };
}
