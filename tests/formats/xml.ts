/** A strict reader of the plain XML that the program writes: elements, attributes, text; no comments, no DTD. */

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly text: string;
}

const entities: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/** @throws Error where the text is not well-formed */
export function readXml(text: string): Element {
  if (/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u.test(text))
    throw new Error("a character that XML 1.0 cannot hold");
  const head = '<?xml version="1.0" encoding="UTF-8"?>\n';
  if (!text.startsWith(head)) throw new Error("no XML declaration");
  let at = head.length;
  const take = (pattern: RegExp): RegExpExecArray => {
    const sticky = new RegExp(pattern.source, "uy");
    sticky.lastIndex = at;
    const match = sticky.exec(text);
    if (match === null) throw new Error(`not well-formed at: ${text.slice(at, at + 60)}`);
    at += match[0].length;
    return match;
  };
  const element = (): Element => {
    const [, name = "", inner = "", closed = ""] = take(
      /<([A-Za-z][\w-]*)((?:\s+[A-Za-z][\w-]*="[^"<]*")*)\s*(\/?)>/,
    );
    const attributes: Record<string, string> = {};
    for (const [, key = "", value = ""] of inner.matchAll(/([\w-]+)="([^"<]*)"/g)) {
      if (key in attributes) throw new Error(`attribute ${key} twice`);
      attributes[key] = decode(value);
    }
    if (closed === "/") return { name, attributes, children: [], text: "" };
    const children: Element[] = [];
    let content = "";
    for (;;) {
      content += decode(take(/[^<]*/)[0]);
      if (text.startsWith("</", at)) break;
      children.push(element());
    }
    if (take(/<\/([\w-]+)\s*>/)[1] !== name) throw new Error(`</${name}> is missing`);
    return { name, attributes, children, text: content };
  };
  const root = element();
  if (text.slice(at).trim() !== "") throw new Error("something after the root element");
  return root;
}

function decode(text: string): string {
  if (text.includes("]]>")) throw new Error("]]> in text");
  return text.replaceAll(/&([^;\s&]*);?/g, (whole, name: string) => {
    const character = entities[name];
    if (character === undefined || !whole.endsWith(";")) throw new Error(`& that is no entity: ${whole}`);
    return character;
  });
}
