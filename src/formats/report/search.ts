/** The script of the search: a kept full-text library, the words of all pages, and what puts the finds on the page. */
import { searchLibrary } from "../../generated/search-library.ts";
import { visible } from "../../words/visible.ts";

interface Found {
  readonly to: string;
  readonly name: string;
  readonly words: string;
}

/** Data in a script: nothing in it ends the script or a line. */
const asData = (value: unknown): string =>
  JSON.stringify(value)
    .replaceAll("<", "\\u003c")
    .replaceAll("\u2028", "\\u2028")
    .replaceAll("\u2029", "\\u2029");

/** Words are folded alike when pages are read and when somebody seeks: Füße is found by fusse, and lung by Lungs. */
const page = `
(() => {
  const fold = (word) => word.toLowerCase().normalize("NFD").replace(/\\p{M}/gu, "").replaceAll("ß", "ss").replaceAll("ø", "o").replaceAll("æ", "ae");
  const search = new MiniSearch({ fields: ["name", "words"], storeFields: ["to", "name"], idField: "to", processTerm: fold });
  search.addAll(pages);
  const sought = document.getElementById("sought");
  const found = document.getElementById("found");
  if (sought === null || found === null) return;
  sought.addEventListener("input", () => {
    const hits = search.search(sought.value, { prefix: true, fuzzy: 0.15, combineWith: "AND", boost: { name: 3 } }).slice(0, 50);
    found.replaceChildren(...hits.map((hit) => {
      const link = Object.assign(document.createElement("a"), { href: hit.to, textContent: hit.name });
      const item = document.createElement("li");
      item.append(link);
      return item;
    }));
  });
})();
`;

export const searchScript = (found: readonly Found[]): string =>
  `${searchLibrary}const pages = ${asData(found.map(({ to, name, words }) => ({ to, name: visible(name), words: visible(words) })))};\n${page}`;
