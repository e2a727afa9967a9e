/** An SVG drawing to the outlines that are measured. */
import { distance } from "./curve.ts";
import { intendedPart } from "./parts.ts";
import { TracingError } from "./problem.ts";
import { type ScaleBar, scaleOf } from "./scale.ts";
import { checkShown, checkStyles, contextOf, type Hiding, hiddenAt, matrixOf } from "./svg-context.ts";
import { type SvgElement, type SvgFile, svgElements } from "./svg-elements.ts";
import { pathContours } from "./svg-path.ts";
import { isShape, pathData } from "./svg-shapes.ts";
import type { Drawing, Shape } from "./tracing.ts";

type Report = (error: TracingError) => void;

/**
 * Reads the drawing; what is wrong with single shapes is collected, so that one run names everything.
 * @throws TracingError when the file as a whole cannot be used
 */
export function svgDrawing(text: string): { drawing: Drawing; errors: readonly TracingError[] } {
  const file = svgElements(text);
  const hiding = checkStyles(file);
  const errors: TracingError[] = [];
  return { drawing: drawingOf(file, hiding, (error) => errors.push(error)), errors };
}

function drawingOf(file: SvgFile, hiding: Hiding, report: Report): Drawing {
  const outlines: Shape[] = [];
  const affected: (Shape & { lobe: string })[] = [];
  const absent: Drawing["absent"][number][] = [];
  const passedOver: string[] = [];
  let bar: ScaleBar | undefined;
  let anyPart = false;
  const rulesInSheet = /fill-rule\s*:/.test(file.styles);
  for (const element of file.elements) {
    const { named, drawn } = contextOf(element);
    if (named !== undefined && named.part.kind !== "scale-bar") anyPart = true;
    if (element.name === "use" && (named !== undefined || drawn))
      report(
        new TracingError(
          "use-element",
          'the file draws a copy by reference (<use>), which is not measured; in the drawing program unlink the clone ("convert to path"), and save again.',
          element.place,
        ),
      );
    if (!isShape(element.name)) continue;
    const id = element.attributes.get("id");
    if (named === undefined) {
      // Clip paths and the like are no drawing, and what is hidden was not meant to be measured.
      if (!drawn) continue;
      const intended = id === undefined || hiddenAt(element, hiding) ? undefined : intendedPart(id);
      if (id !== undefined && intended !== undefined) {
        anyPart = true;
        report(unknownPart(id, intended, element));
      } else passedOver.push(id ?? `${element.name} in line ${element.place.line}`);
      continue;
    }
    const { part, holder } = named;
    try {
      checkShown(element, hiding);
      if (part.kind === "absent") absent.push({ id: part.id, place: element.place });
      else if (part.kind === "scale-bar") {
        if (bar !== undefined) throw twice("scale-bar", element);
        bar = scaleBar(element, holder, part.length);
      } else {
        const shape = { id: part.id, ...shapeOf(element, rulesInSheet), place: element.place };
        if (part.kind === "affected") affected.push({ ...shape, lobe: part.lobe });
        else if (outlines.some((other) => other.id === part.id)) throw twice(part.id, element);
        else outlines.push(shape);
      }
    } catch (error) {
      if (!(error instanceof TracingError)) throw error;
      report(error);
    }
  }
  if (!anyPart) noParts(file, report);
  return { outlines, affected, absent, scale: scaleIn(bar, report), passedOver };
}

function shapeOf(element: SvgElement, rulesInSheet: boolean): Omit<Shape, "id" | "place"> {
  const contours = pathContours(pathData(element), matrixOf(element), element.place);
  const { rule } = contextOf(element);
  if (contours.length > 1 && rule === undefined && rulesInSheet)
    throw new TracingError(
      "style-sheet-geometry",
      "this outline has several rings, and how they are filled stands in a style sheet; write fill-rule as an attribute.",
      element.place,
    );
  return { contours, rule: rule ?? "nonzero" };
}

function scaleBar(element: SvgElement, holder: SvgElement, fromId: string | undefined): ScaleBar {
  const [line] = pathContours(pathData(element), matrixOf(element), element.place);
  const titles = [element.title, holder.title].filter((title) => /^\s*\d/.test(title ?? ""));
  const lengths = [
    fromId,
    element.attributes.get("data-length"),
    holder.attributes.get("data-length"),
    ...titles,
  ];
  return {
    line: element.name === "rect" && line !== undefined ? longerSide(line) : line,
    lengths: [...new Set(lengths.filter((length) => length !== undefined))],
    place: element.place,
  };
}

const longerSide = (rectangle: NonNullable<ScaleBar["line"]>): NonNullable<ScaleBar["line"]> => ({
  curves: [...rectangle.curves].sort((a, b) => distance(b[0], b[3]) - distance(a[0], a[3])).slice(0, 1),
  closed: false,
});

function scaleIn(bar: ScaleBar | undefined, report: Report): number {
  try {
    if (bar !== undefined) return scaleOf(bar);
    throw new TracingError(
      "scale-bar-missing",
      "there is no scale bar; draw a line as long as the scale in the picture and give it the id scale-bar-10-mm (with its length).",
    );
  } catch (error) {
    if (!(error instanceof TracingError)) throw error;
    report(error);
    return 1;
  }
}

function noParts({ elements }: SvgFile, report: Report): void {
  const shapes = elements.filter((element) => isShape(element.name) && contextOf(element).drawn);
  report(
    elements.some(({ name }) => name === "image") && shapes.length === 0
      ? new TracingError(
          "raster-only",
          "the file holds a picture but no outline; draw the outlines over it as closed paths with the agreed ids.",
        )
      : new TracingError(
          "no-parts",
          `none of the ${shapes.length} shapes has an agreed id such as cavity-left, dorsal-left, ventral-left or lobe-left-cranial.`,
        ),
  );
}

const twice = (id: string, element: SvgElement): TracingError =>
  new TracingError(
    "part-twice",
    `${id} is drawn twice; leave one, or join the two to one path.`,
    element.place,
  );

const unknownPart = (id: string, intended: string, { place }: SvgElement): TracingError =>
  new TracingError("part-unknown", `"${id}" is no agreed id; did you mean ${intended}?`, place);
