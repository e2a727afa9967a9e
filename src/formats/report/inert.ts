/** HTML that somebody else wrote, written anew from its elements: text, lists, tables and links, and nothing that acts or fetches. */
import { SaxesParser } from "saxes";
import { listing } from "../../words/listing.ts";
import { escapedMarkup } from "../../words/markup.ts";
import { visible } from "../../words/visible.ts";
import { Html } from "../page/html.ts";

export class InertFault extends Error {
  constructor(
    message: string,
    /** What it begins with, as it was probably written. */
    readonly sought: string,
  ) {
    super(message);
  }
}

const elements = (
  "p h3 h4 ul ol li dl dt dd table caption thead tbody tfoot tr th td strong em b i u s sub sup small code pre " +
  "blockquote cite abbr a br hr div span"
).split(" ");
const attributes = "href title lang dir scope colspan rowspan".split(" ");
const empty = /^[bh]r$/;

const leadsSafely = (address: string): boolean =>
  visible(address) === address && /^(?:https:\/\/|mailto:|#)\S*$/i.test(address);

/** As people write HTML: an element that is always empty, and a mark that begins no entity. */
const asXml = (source: string): string =>
  source.replaceAll(/<([bh]r)>/g, "<$1/>").replaceAll(/&(?!#?\w{1,9};)/g, "&amp;");

/** @throws InertFault for what may not stand there, and for what is not well-formed */
export function inertHtml(source: string): Html {
  const parser = new SaxesParser({ fragment: true });
  Object.assign(parser.ENTITIES, { nbsp: "\u00a0", ndash: "–", mdash: "—", deg: "°" });
  const made: string[] = [];
  parser.on("error", (error) => {
    const message = error.message.replace(/^\d+:\d+: /, "").replace(/\.$/, "");
    throw new InertFault(
      `what it makes is not whole HTML: ${message}. Close each element, such as <p>…</p>`,
      "",
    );
  });
  parser.on("doctype", () => {
    throw new InertFault("it makes a page of its own; write a piece of one", "<!doctype");
  });
  parser.on("processinginstruction", ({ target }) => {
    throw new InertFault(`<?${target} may not stand in a report`, `<?${target}`);
  });
  parser.on("opentag", ({ name, attributes: given }) => {
    if (!elements.includes(name))
      throw new InertFault(`<${name}> may not stand in a report; there are ${listing(elements)}`, `<${name}`);
    const told = Object.entries(given).map(([attribute, value]) => {
      if (!attributes.includes(attribute) || (attribute === "href" && name !== "a"))
        throw new InertFault(
          `${attribute}="…" may not stand in <${name}>; there are ${listing(attributes)}`,
          attribute,
        );
      if (attribute === "href" && !leadsSafely(value))
        throw new InertFault(
          `a link leads to "${value.slice(0, 60)}"; it may begin with https://, mailto: or #`,
          "href",
        );
      return ` ${attribute}="${escapedMarkup(visible(value))}"`;
    });
    made.push(`<${name}${told.join("")}>`);
  });
  parser.on("closetag", ({ name }) => {
    if (!empty.test(name)) made.push(`</${name}>`);
  });
  const say = (text: string): void => {
    made.push(
      text
        .split("\n")
        .map((line) => escapedMarkup(visible(line)))
        .join("\n"),
    );
  };
  parser.on("text", say);
  parser.on("cdata", say);
  parser.write(asXml(source)).close();
  return new Html(made.join("").trim());
}
