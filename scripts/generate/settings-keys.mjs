// The keys of settings as a module, for `carcase explain`: what their schema says of them.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { generatedFolder, readSchema } from "./read.mjs";

export function writeSettingsKeys() {
  const keys = Object.entries(readSchema("settings.schema.json").properties)
    .filter(([name]) => name !== "format")
    .map(([name, { description, examples = [], default: unset }]) => ({
      name,
      description,
      examples,
      unset,
    }));
  writeFileSync(
    join(generatedFolder, "settings-keys.ts"),
    `// Made from schemas/settings.schema.json by npm run generate. Not edited by hand.
export const settingsKeys: readonly {
  readonly name: string;
  readonly description: string;
  readonly examples: readonly unknown[];
  /** What holds where it is not set, if that is a single value. */
  readonly unset?: unknown;
}[] = ${JSON.stringify(keys)};
`,
  );
}
