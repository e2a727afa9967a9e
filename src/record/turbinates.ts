/** What a case records of the conchae and the septum, as far as it was recorded. */
import { type Case, type Path, pathOf } from "../cases/index.ts";
import { organById } from "../knowledge/index.ts";
import { fact } from "./fact.ts";
import { lesions, type PlacedFinding } from "./organs.ts";

export interface Conchae {
  readonly path: Path;
  /** Loss of each concha that was graded, 0 to 4. */
  readonly losses: readonly number[];
  readonly left: Side;
  readonly right: Side;
  /** Where the snout was sawn. */
  readonly section: unknown;
  readonly septum: unknown;
  readonly grades: Readonly<Record<string, number>>;
  readonly loss_looks: unknown;
  readonly cut_face: unknown;
  readonly skin_cut: unknown;
}

interface Side {
  readonly dorsal: number | undefined;
  readonly ventral: number | undefined;
}

/** Undefined when nothing was written below the turbinates. */
export const conchae = fact((one: Case): Conchae | undefined => {
  const organ = organById("respiratory.turbinates");
  const entry = organ === undefined ? undefined : one.organ(organ).entry;
  if (entry === undefined) return undefined;
  const [left, right] = [sideOf(entry.left), sideOf(entry.right)];
  return {
    path: pathOf("respiratory.turbinates"),
    losses: [left.dorsal, left.ventral, right.dorsal, right.ventral].filter((loss) => loss !== undefined),
    left,
    right,
    section: entry.section,
    septum: entry.septum,
    grades: entry.grades ?? {},
    loss_looks: entry.loss_looks,
    cut_face: entry.cut_face,
    skin_cut: entry.skin_cut,
  };
});

function sideOf(value: unknown): Side {
  const side = (value ?? {}) as Record<string, unknown>;
  const loss = (part: unknown): number | undefined => (typeof part === "number" ? part : undefined);
  return { dorsal: loss(side.dorsal), ventral: loss(side.ventral) };
}

/** A finding on the turbinates that looks like the stain of bone dust from the saw. */
export const stainedByDust = (one: Case): PlacedFinding | undefined =>
  lesions(one, { processes: ["discolouration", "icterus"], organs: ["respiratory.turbinates"] }).find(
    ({ finding }) => finding.colour === "yellow" || finding.colour === "tan",
  );
