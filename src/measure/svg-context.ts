/** What the place of a shape in its file does to it: transforms, fill rule, and what keeps it from being drawn. */
import { TracingError } from "./problem.ts";
import type { FillRule } from "./region.ts";
import { outwards, type SvgElement, type SvgFile } from "./svg-elements.ts";

/** What stands inside these is drawn elsewhere, or not at all. */
const undrawn = new Set(["defs", "symbol", "clipPath", "mask", "pattern", "marker", "linearGradient"]);
const geometry = String.raw`(?:transform(?:-origin)?|translate|rotate|scale|offset-path|d|cx|cy|rx?|ry|x|y|width|height)\s*:`;
const inStyle = new RegExp(String.raw`(?:^|;)\s*${geometry}`);
const inSheet = new RegExp(String.raw`[{;]\s*${geometry}|@import`);

const hiding = /[{;]\s*(?:display\s*:\s*none|visibility\s*:\s*(?:hidden|collapse))/;

/** @throws TracingError when CSS in the file moves, shapes or hides what is drawn */
export function checkStyles({ styles }: SvgFile): void {
  if (inSheet.test(styles))
    throw new TracingError(
      "style-sheet-geometry",
      "a style sheet in the file moves or shapes what is drawn, which is not read; save as plain SVG, with attributes instead of CSS.",
    );
  if (hiding.test(styles))
    throw new TracingError(
      "part-hidden",
      "a style sheet in the file hides outlines (display or visibility), and which ones is not read; save as plain SVG, with attributes instead of CSS.",
    );
}

/**
 * Nobody sees what a hidden outline measures: it may be left over from an earlier tracing.
 * @throws TracingError when the shape, or a group around it, is hidden
 */
export function checkShown(element: SvgElement): void {
  const chain = [...outwards(element)];
  const undisplayed = chain.find((one) => property(one, "display") === "none");
  // Visibility is inherited, and a shape within may be shown again.
  const inherited = chain.find((one) => property(one, "visibility") !== undefined);
  const invisible =
    inherited !== undefined && /^(hidden|collapse)$/.test(property(inherited, "visibility") ?? "")
      ? inherited
      : undefined;
  const hidden = undisplayed ?? invisible;
  if (hidden === undefined) return;
  const what = hidden === element ? "this outline" : "the group or layer of this outline";
  throw new TracingError(
    "part-hidden",
    `${what} is hidden, so that nobody sees what is measured; show it, or delete the outline.`,
    element.place,
  );
}

/** What the style of an element says of a property, or else its attribute. */
function property({ attributes }: SvgElement, name: string): string | undefined {
  const style = new RegExp(String.raw`(?:^|;)\s*${name}\s*:\s*([\w-]+)`).exec(attributes.get("style") ?? "");
  return style?.[1] ?? attributes.get(name)?.trim();
}

/** Whether an element stands in the drawing itself, not among its definitions. */
export const isDrawn = (element: SvgElement): boolean =>
  ![...outwards(element)].some(({ name }) => undrawn.has(name));

/**
 * The transforms of a shape and of the groups around it, from the inside out.
 * @throws TracingError when the shape is not drawn where it stands, or is moved in a way that is not read
 */
export function transformsOf(element: SvgElement): string[] {
  const transforms: string[] = [];
  for (const one of outwards(element)) {
    if (undrawn.has(one.name))
      throw new TracingError(
        "part-not-drawn",
        `this outline stands inside <${one.name}> and is not drawn itself; move it into the drawing.`,
        element.place,
      );
    if (one.name === "svg" && one.parent !== undefined)
      throw new TracingError(
        "nested-drawing",
        "this outline stands in a drawing inside the drawing (<svg> in <svg>); ungroup it.",
        element.place,
      );
    if (one.attributes.has("transform-origin") || inStyle.test(one.attributes.get("style") ?? ""))
      throw new TracingError(
        "style-sheet-geometry",
        "this outline is moved or shaped by CSS, which is not read; save as plain SVG, with attributes instead of CSS.",
        element.place,
      );
    const transform = one.attributes.get("transform");
    if (transform !== undefined && transform.trim() !== "none") transforms.push(transform);
  }
  return transforms;
}

/** As written on the shape or the nearest group around it. */
export function fillRule(element: SvgElement): FillRule | undefined {
  for (const { attributes } of outwards(element)) {
    const style = /(?:^|;)\s*fill-rule\s*:\s*(\w+)/.exec(attributes.get("style") ?? "")?.[1];
    const rule = style ?? attributes.get("fill-rule");
    if (rule === "evenodd" || rule === "nonzero") return rule;
  }
  return undefined;
}
