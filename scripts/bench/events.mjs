// The least that reading an archive costs: the events of every file, and nothing made of them.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseEvents } from "js-yaml";

const [folder = "."] = process.argv.slice(2);
for (const name of readdirSync(folder, { recursive: true, encoding: "utf8" }))
  if (name.endsWith(".yaml")) parseEvents(readFileSync(join(folder, name), "utf8"));
