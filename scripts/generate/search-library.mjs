// The full-text library that goes into a page of search, as a text: no page of an archive asks the network for it.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { generatedFolder, root } from "./read.mjs";

export function writeSearchLibrary() {
  const folder = join(root, "node_modules/minisearch");
  const script = readFileSync(join(folder, "dist/umd/index.js"), "utf8").replace(
    /\n\/\/# sourceMappingURL=.*\n?$/,
    "\n",
  );
  const licence = readFileSync(join(folder, "LICENSE.txt"), "utf8").trim();
  const text = `/*! minisearch\n${licence}\n*/\n${script}`;
  writeFileSync(
    join(generatedFolder, "search-library.ts"),
    `// Made from minisearch by npm run generate. Not edited by hand.\nexport const searchLibrary = ${JSON.stringify(text)};\n`,
  );
}
