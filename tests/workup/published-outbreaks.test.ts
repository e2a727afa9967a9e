/** What the work-up knows of published outbreaks is what was typed from the publications. */
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { parse, stringify } from "yaml";
import type { PublishedOutbreak } from "../../src/knowledge/diseases.ts";
import { pictureOf } from "../../src/workup/index.ts";
import { accepted, subjectOf } from "./ranked.ts";

const path = (name: string): string => fileURLToPath(new URL(`../../${name}`, import.meta.url));
const file = path("src/knowledge/published-outbreaks.yaml");

/** Authors, year and title, as far as they were on the page that was read. */
function citeOf(name: string): string {
  const source = parse(readFileSync(path(`tests/fixtures/outbreaks/${name}/source.yaml`), "utf8")) as Source;
  const told = [source.authors, source.year].map(String).filter((one) => !/unknown|not |^-$/.test(one));
  return [told.join(" "), source.title].filter((one) => one !== "").join(", ");
}

interface Source {
  readonly authors: string;
  readonly year: string | number;
  readonly title: string;
}

it("are the published outbreaks that may be known, as they were typed", () => {
  const outbreaks = Object.entries(accepted.seen).map(([outbreak, diagnosis]): PublishedOutbreak => {
    const { signs, lesions } = pictureOf(subjectOf(outbreak));
    const [first = "", ...others] = diagnosis;
    return {
      outbreak,
      cite: citeOf(outbreak),
      diseases: [first, ...others],
      signs: [...new Set(signs)].sort(),
      lesions: Object.fromEntries(
        Object.entries(lesions).map(([organ, [process, ...more]]) => [
          organ,
          [process, ...new Set(more.filter((one) => one !== process))],
        ]),
      ),
    };
  });
  const text = readFileSync(file, "utf8");
  if (process.env.UPDATE_DOCS !== undefined) {
    const [head = ""] = text.split("outbreaks:");
    const rows = outbreaks.map(
      (one) =>
        `  - ${stringify(one, { collectionStyle: "flow", flowCollectionPadding: false, lineWidth: 0 })}`,
    );
    writeFileSync(file, `${head}outbreaks:\n${rows.join("")}`);
    return;
  }
  expect((parse(text) as { outbreaks: unknown }).outbreaks).toEqual(outbreaks);
});

it("are not those that are only counted", () => {
  expect(Object.keys(accepted.counted ?? {}).filter((name) => name in accepted.seen)).toEqual([]);
});
