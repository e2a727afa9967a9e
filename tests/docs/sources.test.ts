/** Sources go by author, title and year: no address, no name of a site, no number of its database, no trade name. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { parse } from "yaml";
import { rules } from "../../src/lint/index.ts";
import { every } from "../every.ts";

const marks: Readonly<Record<string, RegExp>> = {
  "an address":
    /https?:|\bwww\b|\b[\w-]+\.(?:com|net|org|info|biz|edu|gov|eu|io|co\.[a-z]{2}|(?:com|net|gov|edu)\.[a-z]{2})\b/i,
  "an encyclopaedia of the web": /wiki/i,
  // a word that runs into a number: the name of a site, or a number in its database; UN3373, P650 are of other kinds
  "a word with a number in it": /\b[a-z]{3,}\d{2,}|\b[0-9a-f]{16,}\b/i,
  // an author may be called DasGupta: a year or another author follows
  "a name with a capital inside": /\b(?:[a-z]{2,}|[A-Z][a-z]{2,})[A-Z][a-z]+\b(?!,? (?:&|et al|\d{4}))/,
  "a trade mark": /[®™]|\((?:r|tm)\)/i,
  "a company": /\b(?:Ltd|Inc|GmbH|Corp|plc|LLC|Consulting|Services)\b/,
};

const doi = /\b10\.\d{4,}\/\S+/g;

/** What a source must not say, in words; a DOI is no address. */
const named = (text: string): string[] =>
  Object.entries(marks).flatMap(
    ([what, mark]) => mark.exec(text.replace(doi, "doi"))?.[0].concat(`, ${what}`) ?? [],
  );

function yamlIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".yaml"))
    .map((name) => `${folder}/${name}`);
}

/** Every `cite` of a file of the knowledge, with its note. */
function citesIn(value: unknown): string[] {
  if (typeof value !== "object" || value === null) return [];
  const own = "cite" in value ? [`${value.cite}${"note" in value ? `. ${value.note}` : ""}`] : [];
  return [...own, ...Object.values(value).flatMap(citesIn)];
}

const cites = yamlIn("src/knowledge").flatMap((file) =>
  citesIn(parse(readFileSync(file, "utf8"), { maxAliasCount: 1000 })),
);
const ofRules = rules.map(
  ({ source }) => `${source.cite}${source.note === undefined ? "" : `. ${source.note}`}`,
);
const ofOutbreaks = yamlIn("tests/fixtures/outbreaks")
  .filter((file) => file.endsWith("/source.yaml"))
  .map((file): Readonly<Record<string, unknown>> => parse(readFileSync(file, "utf8")))
  .map(({ authors, title, journal, read }) => [authors, title, journal, read].join(". "));

every("a source of the knowledge names no site and no product", cites, (cite) =>
  expect(named(cite)).toEqual([]),
);
every("nor does one of a rule", ofRules, (cite) => expect(named(cite)).toEqual([]));
every("nor one of a published outbreak", ofOutbreaks, (cite) => expect(named(cite)).toEqual([]));

const pages = ["README.md", ...readdirSync("docs").map((name) => `docs/${name}`)].filter((name) =>
  name.endsWith(".md"),
);

every("nor does a page, outside of its examples", pages, (page) => {
  const text = readFileSync(page, "utf8").replaceAll(/```[\s\S]*?```|`[^`\n]*`/g, "");
  const { "an address": address, "an encyclopaedia of the web": wiki, "a trade mark": trade } = marks;
  expect([address, wiki, trade].flatMap((mark) => mark?.exec(text)?.[0] ?? [])).toEqual([]);
});

it("the marks find what they are for, and leave names, laws and numbers of goods alone", () => {
  for (const bad of [
    "Neck swelling (swine777, plate 9)",
    "Acute fever (WikiSwine)",
    "read at www.swine.example",
    "pigs.com, sampling",
    "sow-health.co.uk, sampling",
    "https://pigs.example/9",
    "porkLetter, diarrhoea in pigs",
    "PigLetter, diarrhoea in pigs",
    "ABC1234567 (six outbreaks)",
    "database 64774aefb3fd11e4cafe4588",
    "a foam called Cleanall (R)",
    "a foam called Cleanall®",
    "Sow Services, packing",
  ])
    expect([bad, named(bad)]).not.toEqual([bad, []]);
  for (const good of [
    "Brown, Cai & DasGupta 2001, Statistical Science 16:101-133",
    "AVV LmH, Annex 3",
    "UN3373 and P650; PI650",
    "29 CFR 1910.1048 (b), (c)",
    "Valros et al. 2020, doi 10.3389/fvets.2020.00405",
    "Vet. Rec. 115:615; J. Clin. Microbiol. (CReSA)",
    "the weights of christensen-1999, scales/maff-1978.yaml",
  ])
    expect([good, named(good)]).toEqual([good, []]);
});
