/** The elements of an SVG file. Strict XML; nothing outside the file is ever read, and no entity is expanded. */
import { SaxesParser } from "saxes";
import { TextLines } from "../cases/yaml/text-lines.ts";
import { type Place, TracingError } from "./problem.ts";

export interface SvgElement {
  readonly name: string;
  /** Attributes without a prefix; those of other namespaces are an editor's own business. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly parent: SvgElement | undefined;
  readonly place: Place;
  /** The text of its first title. */
  title: string | undefined;
}

export interface SvgFile {
  /** In the order of the file. */
  readonly elements: readonly SvgElement[];
  /** The text of all style sheets in the file. */
  readonly styles: string;
}

const svgSpaces = new Set(["http://www.w3.org/2000/svg", ""]);
/** Deeper than this no editor puts groups into groups. */
const maxDepth = 100;

/**
 * @param text the decoded file
 * @throws TracingError with the place of the first fault
 */
export function svgElements(text: string): SvgFile {
  const lines = new TextLines(text);
  const placeAt = (offset: number): Place => lines.at(offset);
  const parser = new SaxesParser({ xmlns: true });
  const elements: SvgElement[] = [];
  /** What is open, outermost first; undefined for an element of another namespace. */
  const open: (SvgElement | undefined)[] = [];
  let styles = "";
  let start = 0;
  let words = "";
  const here = (): Place => placeAt(Math.min(parser.position, text.length - 1));

  parser.on("error", (error) => {
    const message = error.message.replace(/^\d+:\d+: /, "").replace(/\.$/, "");
    throw new TracingError(
      "not-svg",
      `the file is not sound SVG: ${message}. Open it in the drawing program and save it again as plain SVG.`,
      here(),
    );
  });
  parser.on("doctype", (doctype) => {
    if (doctype.includes("["))
      throw new TracingError(
        "entity-declared",
        "the file declares entities of its own in its DOCTYPE, which are not read; delete the DOCTYPE, or save as plain SVG.",
        here(),
      );
  });
  parser.on("processinginstruction", ({ target }) => {
    if (target === "xml-stylesheet")
      throw new TracingError(
        "external-reference",
        "the file takes its style from another file, which is not read; save as plain SVG.",
        here(),
      );
  });
  parser.on("opentagstart", ({ name }) => {
    start = text.lastIndexOf(`<${name}`, parser.position);
  });
  parser.on("opentag", ({ uri, local, attributes }) => {
    const ours = svgSpaces.has(uri);
    if (open.length === 0 && (!ours || local !== "svg"))
      throw new TracingError(
        "not-svg",
        `the file is XML but no SVG: it begins with <${local}>.`,
        placeAt(start),
      );
    if (open.length >= maxDepth)
      throw new TracingError(
        "not-a-tracing",
        `groups are nested more than ${maxDepth} deep; ungroup the outlines.`,
        placeAt(start),
      );
    words = "";
    const parent = open.at(-1);
    if (!ours || (open.length > 0 && parent === undefined)) {
      open.push(undefined);
      return;
    }
    const plain = Object.values(attributes).filter(({ prefix }) => prefix === "");
    const element: SvgElement = {
      name: local,
      attributes: new Map(plain.map((attribute) => [attribute.local, attribute.value])),
      parent,
      place: placeAt(start),
      title: undefined,
    };
    elements.push(element);
    open.push(element);
  });
  parser.on("text", (piece) => {
    words += piece;
  });
  parser.on("cdata", (piece) => {
    words += piece;
  });
  parser.on("closetag", () => {
    const closed = open.pop();
    if (closed?.name === "style") styles += `${words}\n`;
    if (closed?.name === "title" && closed.parent !== undefined) closed.parent.title ??= words.trim();
  });
  parser.write(text).close();
  return { elements, styles };
}
