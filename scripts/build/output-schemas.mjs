// Makes the schemas of the JSON that the program prints, schemas/output/<name>.schema.json, from the types of what is
// handed to `outputJson("<name>", version, …)`: what is printed and what is published cannot drift.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { root } from "../generate/read.mjs";

const folder = join(root, "schemas/output");
const ending = ".schema.json";
const note = "Made by carcase from the types of its sources; not edited by hand";

export function writeOutputSchemas() {
  mkdirSync(folder, { recursive: true });
  const schemas = outputSchemas();
  for (const name of readdirSync(folder))
    if (!schemas.has(name.replace(ending, ""))) rmSync(join(folder, name));
  for (const [name, schema] of schemas)
    writeFileSync(join(folder, `${name}${ending}`), `${JSON.stringify(schema, null, 2)}\n`);
}

function outputSchemas() {
  const { fileNames, options } = ts.getParsedCommandLineOfConfigFile(
    join(root, "tsconfig.build.json"),
    { noEmit: true, include: ["src"] },
    { ...ts.sys, onUnRecoverableConfigFileDiagnostic: ({ messageText }) => fail(messageText) },
  );
  const sources = [...fileNames, ...ts.sys.readDirectory(join(root, "src"), [".ts"])];
  const users = [...new Set(sources)].filter((file) => readFileSync(file, "utf8").includes("outputJson("));
  const program = ts.createProgram(users, options);
  const checker = program.getTypeChecker();
  const schemas = new Map();
  const visit = (node) => {
    if (ts.isCallExpression(node) && node.expression.getText() === "outputJson") {
      const [name, version, value] = node.arguments;
      if (!ts.isStringLiteral(name) || !ts.isNumericLiteral(version))
        fail(`${node.getSourceFile().fileName}: name and version of an output are written out`);
      if (schemas.has(name.text)) fail(`outputJson("${name.text}") is called twice; an output has one form`);
      schemas.set(name.text, outputSchema(name.text, Number(version.text), value, checker));
    } else ts.forEachChild(node, visit);
  };
  for (const file of users) visit(program.getSourceFile(file));
  return new Map([...schemas].sort(([a], [b]) => (a < b ? -1 : 1)));
}

function outputSchema(name, version, value, checker) {
  const defs = new Defs(checker, value);
  const { description: _said, ...whole } = withHead(defs.whole(checker.getTypeAtLocation(value)), {
    output: { const: name, description: "What this is" },
    version: {
      const: version,
      description: "Of the form of this output: it goes up when a field goes or means something else",
    },
  });
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    $id: `output/${name}${ending}`,
    $comment: note,
    title: `carcase ${name.replaceAll("-", " ")} --format json`,
    ...whole,
    ...defs.used(),
  };
}

/** The same with the head that every output has. */
function withHead(schema, head) {
  if (schema.anyOf !== undefined) return { anyOf: schema.anyOf.map((one) => withHead(one, head)) };
  const { properties = {}, required = [], ...rest } = schema;
  for (const key of Object.keys(head))
    if (key in properties)
      fail(`an output has its own field "${key}"; it stands at the head of every output`);
  return { ...rest, properties: { ...head, ...properties }, required: [...Object.keys(head), ...required] };
}

const F = ts.TypeFlags;

/** Schemas of types, with those that have a name among the definitions. */
class Defs {
  #names = new Map();
  #schemas = new Map();
  #checker;
  #place;

  constructor(checker, place) {
    this.#checker = checker;
    this.#place = place;
  }

  /** The schema of the output itself: its types stand in it, and not among the definitions. */
  whole(type) {
    return type.isUnion() ? { anyOf: type.types.map((one) => this.#object(one)) } : this.#object(type);
  }

  used() {
    if (this.#schemas.size === 0) return {};
    return { $defs: Object.fromEntries([...this.#schemas].sort(([a], [b]) => (a < b ? -1 : 1))) };
  }

  /** @param path where it stands, for complaints */
  #of(type, path) {
    const name = nameOf(type, this.#checker);
    if (name === undefined) return this.#plain(type, path);
    const known = this.#names.get(type);
    if (known !== undefined) return { $ref: `#/$defs/${known}` };
    let free = name;
    for (let number = 2; this.#schemas.has(free); number++) free = `${name}${number}`;
    this.#names.set(type, free);
    // Set first, because a type may lead back to itself.
    this.#schemas.set(free, {});
    const symbol = type.aliasSymbol ?? type.symbol;
    this.#schemas.set(free, { ...said(symbol, this.#checker), ...this.#plain(type, path) });
    return { $ref: `#/$defs/${free}` };
  }

  #plain(type, path) {
    const { flags } = type;
    if (flags & (F.Any | F.Unknown)) return {};
    if (flags & F.Null) return { type: "null" };
    if (type.isUnion()) return this.#union(type, path);
    if (type.isStringLiteral() || type.isNumberLiteral()) return { const: type.value };
    if (flags & F.BooleanLiteral) return { const: this.#checker.typeToString(type) === "true" };
    if (flags & (F.String | F.TemplateLiteral)) return { type: "string" };
    if (flags & F.Number) return { type: "number" };
    if (flags & F.Boolean) return { type: "boolean" };
    if (flags & F.TypeParameter) {
      const constraint = this.#checker.getBaseConstraintOfType(type);
      return constraint === undefined ? {} : this.#of(constraint, path);
    }
    if (flags & (F.Object | F.Intersection)) return this.#object(type, path);
    return fail(`${path}: ${this.#checker.typeToString(type)} is no JSON`);
  }

  #object(type, path = "") {
    const checker = this.#checker;
    if (checker.isTupleType(type)) {
      const { minLength, hasRestElement, fixedLength } = type.target;
      const items = checker.getTypeArguments(type).map((item) => this.#of(item, `${path}[]`));
      return {
        type: "array",
        ...(fixedLength > 0 && { prefixItems: items.slice(0, fixedLength) }),
        items: hasRestElement ? items.at(-1) : false,
        minItems: minLength,
      };
    }
    if (checker.isArrayType(type)) {
      const [item] = checker.getTypeArguments(type);
      return item.flags & F.Never
        ? { type: "array", maxItems: 0 }
        : { type: "array", items: this.#of(item, `${path}[]`) };
    }
    if (
      type.getCallSignatures().length > 0 ||
      ["Map", "Set", "Date", "ReadonlyMap", "ReadonlySet"].includes(type.symbol?.name)
    )
      return fail(`${path}: ${checker.typeToString(type)} is no JSON`);
    const properties = {};
    const required = [];
    for (const symbol of checker.getPropertiesOfType(type)) {
      const there = `${path}.${symbol.name}`;
      const one = checker.getTypeOfSymbolAtLocation(symbol, this.#place);
      const parts = one.isUnion() ? one.types : [one];
      if (parts.every(({ flags }) => flags & (F.Undefined | F.Never))) continue;
      if (!(symbol.flags & ts.SymbolFlags.Optional) && !parts.some(isUndefined)) required.push(symbol.name);
      properties[symbol.name] = { ...said(symbol, checker), ...this.#of(one, there) };
    }
    const others = checker.getIndexTypeOfType(type, ts.IndexKind.String);
    // To TypeScript {} is anything but null.
    if (others === undefined && checker.getPropertiesOfType(type).length === 0) return {};
    return {
      type: "object",
      ...(Object.keys(properties).length > 0 && { properties }),
      ...(required.length > 0 && { required }),
      ...(others !== undefined && { additionalProperties: this.#of(others, `${path}.*`) }),
    };
  }

  /** A long list of words stands once, under the name of the field in which it was met first. */
  #words(words, path) {
    if (words.length < 20) return { enum: words };
    const name = /(\w+)\W*$/.exec(path)?.[1] ?? "words";
    for (let number = 1; ; number++) {
      const free = number === 1 ? name : `${name}${number}`;
      const known = this.#schemas.get(free);
      if (known !== undefined && known.enum?.join() !== words.join()) continue;
      this.#schemas.set(free, { enum: words });
      return { $ref: `#/$defs/${free}` };
    }
  }

  /** What is undefined is not written. Words stand in the order of the alphabet, because that of a union changes by itself. */
  #union(type, path) {
    const parts = partsOf(type).filter((one) => !isUndefined(one));
    const words = parts.filter((one) => one.isStringLiteral() || one.isNumberLiteral());
    const hasNull = parts.some(({ flags }) => flags & F.Null);
    const truths = parts.filter(({ flags }) => flags & F.BooleanLiteral);
    const forms = [];
    if (words.length > 0)
      forms.push(this.#words([...words.map(({ value }) => value).sort(), ...(hasNull ? [null] : [])], path));
    if (truths.length === 2) forms.push({ type: "boolean" });
    for (const one of parts)
      if (!words.includes(one) && !(truths.length === 2 && truths.includes(one)) && !(one.flags & F.Null))
        forms.push(this.#of(one, path));
    if (hasNull && words.length === 0) forms.push({ type: "null" });
    const isBare = (form) => Object.keys(form).join() === "type" && typeof form.type === "string";
    if (forms.length > 1 && forms.every(isBare)) return { type: forms.map(({ type }) => type) };
    return forms.length === 1 ? forms[0] : { anyOf: forms };
  }
}

/** As it was written: a union in a union keeps its name. */
const partsOf = ({ origin, types }) => (origin?.isUnion() ? origin.types : types);

const isUndefined = ({ flags }) => (flags & (F.Undefined | F.Void)) !== 0;

/** Unions of so many get a name among the definitions. */
const many = 6;

/** The name of a type that deserves a definition. */
function nameOf(type, checker) {
  const { aliasSymbol, symbol, flags } = type;
  if (type.isUnion()) {
    return type.types.length < many || type.types.some(isUndefined) ? undefined : aliasSymbol?.name;
  }
  if (!(flags & (F.Object | F.Intersection)) || checker.isArrayType(type) || checker.isTupleType(type))
    return undefined;
  if (aliasSymbol !== undefined) return type.aliasTypeArguments === undefined ? aliasSymbol.name : undefined;
  return symbol === undefined || symbol.name.startsWith("__") ? undefined : symbol.name;
}

/** What the sources say of it. */
function said(symbol, checker) {
  const text = ts
    .displayPartsToString(symbol?.getDocumentationComment(checker) ?? [])
    .replaceAll(/\s+/g, " ");
  return text === "" ? {} : { description: text };
}

function fail(why) {
  throw new Error(why);
}
