/** `carcase config`: which settings hold, and where does each come from? */
import { existsSync } from "node:fs";
import { dirname } from "node:path";
import { kindOf } from "../cases/files/file-kind.ts";
import { settingOrigins } from "../cases/index.ts";
import { type ShownSettings, settingsJson, settingsText } from "../formats/config/settings.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export function config(run: Run<CommonOptions>): number {
  const written = run.format<(shown: ShownSettings) => string>({
    text: (shown) => settingsText(shown, run.style, run.width),
    json: settingsJson,
  });
  const [of = "."] = run.paths;
  if (!existsSync(of)) throw new UsageError(`there is no file or folder "${of}"`);
  const origins = settingOrigins(kindOf(of) === "folder" ? of : dirname(of), run.options.config);
  if ("settings" in origins) run.write(written({ of, ...origins, environment: heeded() }));
  else run.faults(origins);
  return run.end();
}

/** What the environment says to carcase, by variable. */
export const heededVariables: Readonly<Record<string, string>> = {
  NO_COLOR: "no colours, unless --color always",
  FORCE_COLOR: "colours in a pipe too",
  TERM: "where it is dumb, no colours, and record asks line by line",
  COLUMNS: "characters a line may have",
  LC_ALL: "with UTF-8 in it, bars in tables",
  LC_CTYPE: "the same, where LC_ALL is not set",
  LANG: "the same, where neither is set",
  SOURCE_DATE_EPOCH: "the time of the run, in seconds",
  CI: "where it is true, lint never shrinks a baseline",
  GITHUB_ACTIONS: "where it is true, lint writes annotations unless --format is given",
  CARCASE_BROWSER: "the browser that prints reports as PDF",
};

const heeded = (): ShownSettings["environment"] =>
  Object.entries(heededVariables).flatMap(([variable, does]) => {
    const value = process.env[variable] ?? "";
    return value === "" ? [] : { variable, value, does };
  });
