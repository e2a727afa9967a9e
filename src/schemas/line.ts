/** The comment by which an editor finds the schema of a file: `# yaml-language-server: $schema=…`, above the first key. */

/** The schema that a text names. */
interface NamedSchema {
  /** A path from the folder of the file, or an address. */
  readonly schema: string;
  /** Counted from 1. */
  readonly line: number;
  readonly column: number;
}

export const schemaLine = (schema: string): string => `# yaml-language-server: $schema=${schema}`;

/** @returns undefined where no comment above the first key names a schema */
export function namedSchema(text: string): NamedSchema | undefined {
  let line = 0;
  for (let start = 0; start < text.length; ) {
    const feed = text.indexOf("\n", start);
    const end = feed < 0 ? text.length : feed;
    const written = text.slice(start, end);
    line++;
    const comment = written.trimStart();
    if (comment !== "" && !comment.startsWith("#")) return undefined;
    const schema = /^#\s+(?:yaml-language-server\s*:|\$schema:)/.test(comment)
      ? /\$schema(?:=|:[^\S\r\n]*)(\S+)/d.exec(written)
      : null;
    const [at] = schema?.indices?.[1] ?? [];
    if (schema?.[1] !== undefined && at !== undefined) return { schema: schema[1], line, column: at + 1 };
    start = end + 1;
  }
  return undefined;
}

/** The text with the line as its first, or with another schema in the line that it has. */
export function withSchema(text: string, schema: string): string {
  const named = namedSchema(text);
  const end = text.includes("\r\n") ? "\r\n" : "\n";
  if (named === undefined) return `${schemaLine(schema)}${end}${text}`;
  const lines = text.split("\n");
  const written = lines[named.line - 1] ?? "";
  const at = named.column - 1;
  lines[named.line - 1] = written.slice(0, at) + schema + written.slice(at + named.schema.length);
  return lines.join("\n");
}
