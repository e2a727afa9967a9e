/** What the place of a shape in its file does to it: transforms, fill rule, and what keeps it from being drawn. */
import { type Part, partOf } from "./parts.ts";
import { TracingError } from "./problem.ts";
import type { FillRule } from "./region.ts";
import type { SvgElement, SvgFile } from "./svg-elements.ts";
import { combined, type Matrix, transformMatrix } from "./svg-transform.ts";

/** What stands inside these is drawn elsewhere, or not at all. */
const undrawn = new Set(["defs", "symbol", "clipPath", "mask", "pattern", "marker", "linearGradient"]);
/** Properties of CSS that move or shape what is drawn. */
const geometry = new Set(
  "transform transform-origin translate rotate scale offset-path d cx cy r rx ry x y width height".split(" "),
);
const inSheet =
  /[{;]\s*(?:transform(?:-origin)?|translate|rotate|scale|offset-path|d|cx|cy|rx?|ry|x|y|width|height)\s*:|@import/;

const hides = /(?:^|;)\s*(?:display\s*:\s*none|visibility\s*:\s*(?:hidden|collapse))/;

/**
 * What the style sheets of a file hide: of each selector the id, else a class, else the name of what it ends in. Where around
 * it such an element stands is not asked, so an outline may be refused that is shown, and none measured that is hidden.
 */
export type Hiding = ReadonlySet<string>;

/**
 * @returns what CSS in the file hides
 * @throws TracingError when CSS in the file moves or shapes what is drawn
 */
export function checkStyles({ styles }: SvgFile): Hiding {
  if (inSheet.test(styles))
    throw new TracingError(
      "style-sheet-geometry",
      "a style sheet in the file moves or shapes what is drawn, which is not read; save as plain SVG, with attributes instead of CSS.",
    );
  const plain = styles
    .split("/*")
    .map((text, index) => (index === 0 ? text : text.slice(text.indexOf("*/") + 2)));
  return new Set(
    plain
      .join(" ")
      .split("}")
      .flatMap((rule) => {
        const [declared = "", selectors = ""] = rule.split("{").reverse();
        return hides.test(declared) ? selectors.split(",").map(keyOf) : [];
      }),
  );
}

/** Of `#layer > g.old:hover` it is `.old`. */
function keyOf(selector: string): string {
  const [last = ""] = (
    selector
      .trim()
      .split(/[\s>+~]/)
      .at(-1) ?? ""
  ).split(/[:[]/);
  const parts = last.split(/(?=[.#])/);
  return (
    parts.find((part) => part.startsWith("#")) ?? parts.find((part) => part.startsWith(".")) ?? (last || "*")
  );
}

/** The nearest element around a shape, or itself, that a style sheet may hide. */
function hiddenBySheet(element: SvgElement | undefined, hiding: Hiding): SvgElement | undefined {
  if (element === undefined || hiding.size === 0) return undefined;
  const { name, attributes, parent } = element;
  const classes = (attributes.get("class") ?? "").split(/\s/).map((one) => `.${one}`);
  const keys = ["*", name, `#${attributes.get("id") ?? ""}`, ...classes];
  return keys.some((key) => hiding.has(key)) ? element : hiddenBySheet(parent, hiding);
}

/** What an element and those around it say together; worked out once for each, from that of the one around it. */
interface Context {
  /** The part that it is drawn for: by its own id, or by that of the nearest group with one. */
  readonly named: { readonly part: Part; readonly holder: SvgElement } | undefined;
  /** The nearest that is not displayed. */
  readonly undisplayed: SvgElement | undefined;
  /** The nearest that says whether it is visible: visibility is inherited, and a shape within may be shown again. */
  readonly visibility: { readonly holder: SvgElement; readonly value: string } | undefined;
  /** Whether it stands in the drawing itself, not among its definitions. */
  readonly drawn: boolean;
  /** Why it is not drawn where it stands, or is moved in a way that is not read. */
  readonly fault: Fault | undefined;
  /** Transforms as written, from the outermost. */
  readonly matrix: Matrix | { readonly unreadable: string } | undefined;
  /** As written on the shape or the nearest group around it. */
  readonly rule: FillRule | undefined;
}

type Fault = Pick<TracingError, "kind" | "message">;

const contexts = new WeakMap<SvgElement, Context>();

export function contextOf(element: SvgElement): Context {
  const known = contexts.get(element);
  if (known !== undefined) return known;
  const around = element.parent === undefined ? undefined : contextOf(element.parent);
  const made = contextIn(element, around);
  contexts.set(element, made);
  return made;
}

function contextIn(element: SvgElement, around: Context | undefined): Context {
  const { attributes } = element;
  const style = declarations(attributes.get("style") ?? "");
  const property = (name: string): string | undefined => style.get(name) || attributes.get(name)?.trim();
  const part = partOf(attributes.get("id") ?? "");
  const visibility = property("visibility");
  const rule = style.get("fill-rule") || attributes.get("fill-rule");
  return {
    named: part === undefined ? around?.named : { part, holder: element },
    undisplayed: property("display") === "none" ? element : around?.undisplayed,
    visibility: visibility === undefined ? around?.visibility : { holder: element, value: visibility },
    drawn: !undrawn.has(element.name) && around?.drawn !== false,
    fault: faultOf(element, style) ?? around?.fault,
    matrix: matrixIn(attributes.get("transform"), around?.matrix),
    rule: rule === "evenodd" || rule === "nonzero" ? rule : around?.rule,
  };
}

function faultOf({ name, parent, attributes }: SvgElement, style: Declarations): Fault | undefined {
  if (undrawn.has(name))
    return {
      kind: "part-not-drawn",
      message: `this outline stands inside <${name}> and is not drawn itself; move it into the drawing.`,
    };
  if (name === "svg" && parent !== undefined)
    return {
      kind: "nested-drawing",
      message: "this outline stands in a drawing inside the drawing (<svg> in <svg>); ungroup it.",
    };
  if (attributes.has("transform-origin") || [...style.keys()].some((property) => geometry.has(property)))
    return {
      kind: "style-sheet-geometry",
      message:
        "this outline is moved or shaped by CSS, which is not read; save as plain SVG, with attributes instead of CSS.",
    };
  return undefined;
}

/** Of transforms that cannot be read the innermost is named. */
function matrixIn(transform: string | undefined, around: Context["matrix"]): Context["matrix"] {
  if (transform === undefined || transform.trim() === "none") return around;
  const own = transformMatrix(transform);
  if (own === undefined) return { unreadable: transform };
  return around === undefined || "unreadable" in around ? (around ?? own) : combined(around, own);
}

/** What a style attribute sets, by property; an empty text where no word stands as the value. */
type Declarations = ReadonlyMap<string, string>;

function declarations(style: string): Declarations {
  const found = new Map<string, string>();
  for (const declaration of style.split(";")) {
    const colon = declaration.indexOf(":");
    if (colon < 0) continue;
    const property = declaration.slice(0, colon).trim();
    const [value = ""] = /^[\w-]+/.exec(declaration.slice(colon + 1).trimStart()) ?? [];
    if (!found.get(property)) found.set(property, value);
  }
  return found;
}

/** What hides a shape: itself, or a group around it. */
export function hiddenAt(element: SvgElement, hiding: Hiding): SvgElement | undefined {
  const { undisplayed, visibility } = contextOf(element);
  const invisible =
    visibility?.value === "hidden" || visibility?.value === "collapse" ? visibility.holder : undefined;
  return undisplayed ?? invisible ?? hiddenBySheet(element, hiding);
}

/**
 * Nobody sees what a hidden outline measures: it may be left over from an earlier tracing.
 * @throws TracingError when the shape, or a group around it, is hidden
 */
export function checkShown(element: SvgElement, hiding: Hiding): void {
  const hidden = hiddenAt(element, hiding);
  if (hidden === undefined) return;
  const what = hidden === element ? "this outline" : "the group or layer of this outline";
  throw new TracingError(
    "part-hidden",
    `${what} is hidden, so that nobody sees what is measured; show it, or delete the outline.`,
    element.place,
  );
}

/**
 * The transforms of a shape and of the groups around it, as one; undefined where there are none.
 * @throws TracingError when one cannot be read, or the shape is not drawn where it stands, or moved in a way that is not
 *   read
 */
export function matrixOf(element: SvgElement): Matrix | undefined {
  const { fault, matrix } = contextOf(element);
  if (fault !== undefined) throw new TracingError(fault.kind, fault.message, element.place);
  if (matrix === undefined || !("unreadable" in matrix)) return matrix;
  throw new TracingError(
    "transform-unreadable",
    `the transform "${matrix.unreadable.slice(0, 60)}" cannot be read; plain numbers are needed in matrix, translate, scale, rotate, skewX, skewY.`,
    element.place,
  );
}
