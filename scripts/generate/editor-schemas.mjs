// Makes the schemas that editors read, schemas/<kind>.schema.json, from those in src/schemas. Each is whole in itself, so
// that it can lie anywhere; a key that may be missing may as well be blank, because whether that matters is for the linter
// to say; and an editor offers every way to answer an organ. `defaultSnippets`, `errorMessage` and `patternErrorMessage`
// are keywords that editors know and other readers of schemas pass over.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { readSchema, root } from "./read.mjs";

const folder = join(root, "schemas");
const note = "Made by carcase for editors; not edited by hand";

/** What people write, by kind of file, and what a blank key means there. */
const kinds = {
  case: { title: "Case", blank: "Blank: not yet answered" },
  visit: { title: "Visit", blank: "Blank: not yet answered" },
  farm: { title: "Farm", blank: "Blank: not yet answered" },
  results: { title: "Results", blank: "Blank: not yet answered" },
  settings: { title: "Settings", blank: undefined },
  scale: { title: "Scale", blank: undefined },
};
const blankOrgan = "Blank: not yet answered; never counts as normal";

export function writeEditorSchemas() {
  mkdirSync(folder, { recursive: true });
  for (const [kind, says] of Object.entries(kinds)) write(kind, forEditors(bundled(kind), says));
  // The program writes it, so nothing in it is blank.
  write("baseline", bundled("baseline"));
}

function write(kind, { $schema, $id, title, description, $defs, ...schema }) {
  const whole = { $schema, $id, $comment: note, title, description, ...schema, ...withUsed(schema, $defs) };
  writeFileSync(join(folder, `${kind}.schema.json`), `${JSON.stringify(whole, null, 2)}\n`);
}

/** The schema of a kind of file with all that it refers to among its own definitions. */
function bundled(kind) {
  const $defs = {};
  /** @param home the file in which the value stands */
  const moved = (value, home) =>
    changed(value, (item, key) => (key === "$ref" ? reference(item, home) : moved(item, home)));
  const reference = (ref, home) => {
    const [, file = home, name] = /^(?:(\w+)\.schema\.json)?#\/\$defs\/(\w+)$/.exec(ref) ?? [];
    const here = file === kind ? name : `${file}-${name}`;
    if ($defs[here] === undefined) {
      // Set first, because a definition may lead back to itself.
      $defs[here] = {};
      Object.assign($defs[here], moved(readSchema(`${file}.schema.json`).$defs[name], file));
    }
    return to(here);
  };
  const { $defs: _own, ...schema } = readSchema(`${kind}.schema.json`);
  const { $ref, ...whole } = moved(schema, kind);
  return { ...($ref === undefined ? {} : $defs[nameOf($ref)]), ...whole, $defs };
}

const to = (name) => `#/$defs/${name}`;
const nameOf = (ref) => ref.slice(to("").length);

/** An object or a list with each of its values changed; anything else stays. */
function changed(value, change) {
  if (Array.isArray(value)) return value.map((item) => change(item));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, change(item, key)]));
}

/** Those of the definitions that a schema leads to. */
function withUsed(schema, $defs) {
  const used = new Set();
  const visit = (value) =>
    changed(value, (item, key) => {
      if (key !== "$ref") return visit(item);
      const name = nameOf(item);
      if (used.has(name)) return item;
      used.add(name);
      return visit($defs[name]);
    });
  visit(schema);
  const names = Object.keys($defs).filter((name) => used.has(name));
  return names.length === 0 ? {} : { $defs: Object.fromEntries(names.map((name) => [name, $defs[name]])) };
}

/** Keywords whose values are no schemas. */
const asWritten = new Set(["enum", "examples", "required", "const"]);

/** The same with blanks where a key may as well be missing, with the ways to answer an organ, and with hints. */
function forEditors({ $defs, ...whole }, { title, blank }) {
  const visit = (schema) => {
    if (Array.isArray(schema)) return schema.map(visit);
    if (typeof schema !== "object" || schema === null) return schema;
    // Titles name types of the program.
    const { title: _title, properties, additionalProperties: others, ...rest } = schema;
    const seen = changed(rest, (item, key) => (asWritten.has(key) ? item : visit(item)));
    return {
      ...withHints(byForm(seen)),
      ...(properties !== undefined && {
        properties: changed(properties, (one, key) =>
          schema.required?.includes(key) ? visit(one) : blankOr(one),
        ),
      }),
      ...(others !== undefined && {
        additionalProperties: typeof others === "object" ? blankOr(others) : others,
      }),
    };
  };
  const target = ({ $ref }) => ($ref === undefined ? undefined : $defs[nameOf($ref)]);
  const isGroup = ({ type }) => type === "object" || type === "array";
  const blankOr = (schema) => {
    if (isOrgan(target(schema) ?? schema)) return said(visit(schema), blankOrgan);
    let one = schema;
    // Groups of keys and lists are written out, so that an editor sees what to put below the key.
    for (
      let next = target(one);
      next !== undefined && (isGroup(next) || next.$ref !== undefined);
      next = target(one)
    ) {
      const { $ref: _ref, ...own } = one;
      one = { ...next, ...own };
    }
    if (isGroup(one)) {
      const { type, ...shape } = visit(one);
      return { ...shape, if: { type: "null" }, else: { type, errorMessage: groupHints[type] } };
    }
    const { description, examples, defaultSnippets, ...shape } = visit(one);
    const forms = Object.keys(shape).join() === "anyOf" ? shape.anyOf : [shape];
    return {
      ...said({ description }, blank),
      ...(examples !== undefined && { examples }),
      ...(defaultSnippets !== undefined && { defaultSnippets }),
      anyOf: [...forms, { $ref: to("blank") }],
    };
  };
  const label = $defs["common-label"];
  // The reader takes a sample numbered 1 for the sample "1".
  if (label !== undefined) Object.assign(label, { type: ["string", "integer"], minimum: 0 });
  return { ...visit(whole), title, $defs: { ...changed($defs, visit), blank: nothing } };
}

/** A blank, in words that no editor offers as an answer. */
const nothing = { not: { type: ["object", "array", "string", "number", "boolean"] } };

const said = ({ description, ...schema }, more) =>
  description === undefined
    ? schema
    : {
        description: more === undefined ? description : `${description.replace(/\.$/, "")}. ${more}`,
        ...schema,
      };

const groupHints = {
  object: "Write keys on lines of their own below it",
  array: "Write a list: begin each entry with a hyphen (-)",
};

/** What a text should look like instead of its pattern, and examples of several keys as they are written. */
function withHints({ examples, ...schema }) {
  const { pattern, description } = schema;
  const plain = examples?.filter((one) => typeof one !== "object");
  const keyed = examples?.filter((one) => typeof one === "object" && !Array.isArray(one)).map(inBraces);
  return {
    ...schema,
    ...(plain?.length > 0 && { examples: plain }),
    ...(keyed?.length > 0 && { defaultSnippets: keyed.map((text) => ({ label: text, bodyText: text })) }),
    ...(pattern !== undefined &&
      description !== undefined && { patternErrorMessage: `Write: ${description}` }),
  };
}

const inBraces = (keys) =>
  `{${Object.entries(keys)
    .map(([key, one]) => `${key}: ${one}`)
    .join(", ")}}`;

const isOrgan = ({ anyOf }) => anyOf?.[0]?.const === "normal";

/** An organ or a system asks for its form first, so that what is wrong is said of that form alone. */
function byForm(schema) {
  if (!isOrgan(schema)) return schema;
  const { anyOf, ...rest } = schema;
  const keys = anyOf.find(({ type }) => type === "object");
  const findings = anyOf.find(({ $ref }) => $ref !== undefined);
  const word = (errorMessage) => ({ if: { type: "null" }, else: { const: "normal", errorMessage } });
  return {
    ...rest,
    defaultSnippets: findings === undefined ? [normal] : [normal, ...otherAnswers],
    if: { type: "object" },
    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    then: keys,
    else:
      findings === undefined
        ? word("Write normal for the whole system, or each organ as a key below it")
        : {
            if: { type: "array" },
            // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
            then: findings,
            else: word(
              "Write normal, findings such as [{process: enlargement}], or {not_examined: the reason}",
            ),
          },
  };
}

const normal = { label: "normal", description: "Examined, and nothing was found", bodyText: "normal" };

/** The other ways to answer an organ; in braces, so that they fit beside the key, and inside other braces. */
const otherAnswers = [
  { label: "findings", description: "Lesions, each in braces", bodyText: "[{process: $1}]" },
  {
    label: "not_examined (why)",
    description: "It was not examined, for this reason",
    bodyText: '{not_examined: "$1"}',
  },
  {
    label: "not_assessable (why)",
    description: "It was looked for and could not be judged",
    bodyText: "{not_assessable: {because: $1}}",
  },
];
