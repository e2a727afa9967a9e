/** What was probably meant by a key that the format does not have. */
import type { ErrorObject } from "ajv";
import { alarmSigns, organs, systems } from "../../knowledge/index.ts";
import { listing } from "../../words/listing.ts";
import { type Path, valueAt } from "../model/path.ts";
import { findingKeys } from "./finding-keys.ts";
import { errorsOf } from "./full-validator.ts";
import { intendedKey } from "./intended-word.ts";

export interface KeyAdvice {
  readonly help: string;
  /** The path that was meant, if it is free: nothing is written there, and its parent is. */
  readonly intended: Path | undefined;
  /** One slip, told once for all such keys of the group. */
  readonly isAlike?: boolean;
}

/**
 * @param parent the path of the group of keys in which the key stands
 * @param schema the schema of that group
 */
export function unknownKey(
  key: string,
  parent: Path,
  schema: ErrorObject["parentSchema"],
  document: unknown,
): KeyAdvice {
  const known = Object.keys((schema?.properties ?? {}) as object);
  const near = (word: string): string | undefined => (word === "" ? undefined : intendedKey(word, known));
  const advice = (help: string, ...intended: (string | number)[]): KeyAdvice => ({
    help,
    intended: intended.length === 0 ? undefined : free(intended, document),
  });

  const glued = /^([\w-]+):(\S.*)$/.exec(key);
  const first = near(glued?.[1] ?? "");
  if (glued !== null && first !== undefined)
    return advice(`A space is missing after the colon: write ${first}: ${glued[2]}.`, ...parent, first);
  const opened = /^([\w-]+)\s*[{[]/.exec(key);
  const before = near(opened?.[1] ?? "");
  if (before !== undefined) return advice(`A colon is missing after ${before}.`, ...parent, before);
  const [section, ...rest] = key.split(".");
  if (rest.length > 0 && section !== undefined && known.includes(section))
    return advice(`Write ${rest.join(".")} as a key below ${section}.`, ...parent, section, ...rest);
  const look = alarmSigns.get(key)?.look;
  if (parent.length === 1 && parent[0] === "alarm_check" && look !== undefined)
    return { ...advice(`The place is alarm_check: {${look}: {…}}.`, ...parent, look), isAlike: true };
  if (parent.length === 1 && parent[0] === "defaults") return advice(...ofDefaults(key, schema));
  const home = homeOf(key, parent, known, document);
  if (home !== undefined) return advice(home.help, ...home.path);
  if (known.includes("findings") && findingKeys.has(key))
    return advice(
      `It belongs to a finding: write findings: [{${key === "process" ? "process: enlargement" : `process: enlargement, ${key === "color" ? "colour" : key}: …`}}].`,
      ...parent,
      "findings",
    );
  const [system, ...below] = parent;
  const here =
    below.length === 0 && findingKeys.has(key) ? organs.filter((one) => one.system === system) : [];
  if (here.length > 0)
    return {
      help: `A finding stands under an organ, such as ${here.at(-1)?.key}: [{process: …, site: …}]; organs of ${system} are ${listing(here.map((one) => one.key))}.`,
      intended: undefined,
      isAlike: true,
    };
  const guess = near(key);
  // What is written there already was not meant.
  if (guess !== undefined && (valueAt(document, [...parent, guess]) ?? null) === null)
    return advice(`Did you mean ${guess}?`, ...parent, guess);
  return advice(known.length === 0 ? "Take it out." : `Known here: ${listing(known, "or")}.`);
}

/** Where a fact stands among the defaults of a visit, or that it is one of each pig. */
function ofDefaults(key: string, schema: ErrorObject["parentSchema"]): [string, ...Path] {
  const groups: Readonly<Record<string, { readonly properties?: object }>> = schema?.properties ?? {};
  const known = Object.keys(groups);
  const meant = intendedKey(key, known);
  if (meant !== undefined) return [`Did you mean ${meant}?`, "defaults", meant];
  const word = normalised(key);
  const group = known.find((one) => Object.hasOwn(groups[one]?.properties ?? {}, word));
  if (group !== undefined) return [`Write it as in a case: ${group}: {${word}: …}.`, "defaults", group, word];
  if (word === "section") return ["Write it as in a case: respiratory: {turbinates: {section: …}}."];
  return Object.hasOwn(wholeCase().properties, word)
    ? ["That is a fact of each pig; write it in the cases."]
    : [`Known here: ${listing(known, "or")}.`];
}

const normalised = (key: string): string => key.toLowerCase().replaceAll(/[\s-]+/g, "_");

/** Where a key of a case belongs that stands at the wrong depth or in the wrong group. */
function homeOf(
  key: string,
  parent: Path,
  known: readonly string[],
  document: unknown,
): { readonly help: string; readonly path: Path } | undefined {
  const inCase =
    parent.length === 0 ? known.includes("respiratory") : valueAt(document, ["case"]) !== undefined;
  if (!inCase) return undefined;
  const word = normalised(key);
  const [top, beside] = parent;
  const organ = organs.find((one) => one.key === word);
  if (organ !== undefined) {
    const help = `It belongs under ${organ.system}${organ.system === top ? `, beside ${beside}` : ""}.`;
    return { help, path: [organ.system, word] };
  }
  if (parent.length > 1 && !systems.some(({ id }) => id === word)) return undefined;
  const { properties, $defs } = wholeCase();
  if (parent.length > 0 && Object.hasOwn(properties, word))
    return { help: `It belongs at the top of the file, beside ${top}.`, path: [word] };
  const homes = ["pig", "selection", "death", "opened", "alarm_check", "diagnosis"].filter((group) =>
    Object.hasOwn($defs[group]?.properties ?? {}, word),
  );
  const [group] = homes;
  return group === undefined || homes.length > 1
    ? undefined
    : { help: `It belongs under ${group}.`, path: [group, word] };
}

interface WholeCase {
  readonly properties: object;
  readonly $defs: Readonly<Record<string, { readonly properties?: object }>>;
}

/** The schema of a case: it is not in the program, but an error at the top carries it. */
function wholeCase(): WholeCase {
  const error = errorsOf("case", { "": null }).find(({ keyword }) => keyword === "additionalProperties");
  const { properties = {}, $defs = {} } = (error?.parentSchema ?? {}) as Partial<WholeCase>;
  return { properties, $defs };
}

function free(path: Path, document: unknown): Path | undefined {
  const parent = valueAt(document, path.slice(0, -1));
  const taken = valueAt(document, path) !== undefined;
  return !taken && typeof parent === "object" && parent !== null ? path : undefined;
}
