// Licences of the packages whose code is bundled into dist: they ask to go with every copy.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../generate/read.mjs";

const folders = new Set();

/** The plugin that notes which packages a bundle is made of. */
export const notesPackages = {
  name: "notes-packages",
  setup({ initialOptions, onEnd }) {
    initialOptions.metafile = true;
    onEnd(({ metafile }) => {
      for (const file of Object.keys(metafile?.inputs ?? {})) {
        const folder = /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0];
        if (folder !== undefined) folders.add(folder);
      }
    });
  },
};

/** Writes the licences of all packages noted so far. */
export function writeLicences(folder) {
  const texts = [...folders].sort().map((one) => {
    const { name, version, license, author } = JSON.parse(
      readFileSync(join(root, one, "package.json"), "utf8"),
    );
    const file = readdirSync(join(root, one)).find((each) => /^licen[cs]e/i.test(each));
    const text =
      file === undefined
        ? `${license}, ${author?.name ?? author}`
        : readFileSync(join(root, one, file), "utf8").trim();
    return `${name} ${version}\n\n${text}\n`;
  });
  writeFileSync(join(folder, "licences.txt"), texts.join(`\n${"-".repeat(80)}\n\n`));
}
