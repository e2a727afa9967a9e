/** The settings that hold, and where each comes from. */
import type { SettingOrigins } from "../../cases/index.ts";
import { flow } from "../../words/flow.ts";
import { type Block, gap, heading, table, text } from "../page/blocks.ts";
import { outputJson } from "../page/json.ts";
import { portablePath } from "../page/portable-path.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

export interface ShownSettings extends SettingOrigins {
  /** The folder or file that was asked about. */
  readonly of: string;
  /** Variables of the environment that are set and heeded. */
  readonly environment: readonly {
    readonly variable: string;
    readonly value: string;
    readonly does: string;
  }[];
}

export const settingsText = (shown: ShownSettings, style: Style, width: number): string =>
  textOf(blocksOf(shown), style, width);

function blocksOf({ of, file, settings, not_set, environment }: ShownSettings): Block[] {
  return [
    heading(`Settings for ${of}: ${file ?? "the program's own, and no settings file"}`),
    ...table(
      [{ head: "setting" }, { head: "value" }, { head: "from" }],
      settings.map(({ setting, value, line }) => [
        setting,
        value === null ? "not shown (outside the repository)" : flow(value),
        line === null ? "default" : `line ${line}`,
      ]),
    ),
    ...(not_set.length === 0 ? [] : [gap, text(`Not set: ${not_set.join(", ")}`, { hang: 2 })]),
    ...(environment.length === 0
      ? []
      : [
          heading("From the environment"),
          ...table(
            [{ head: "variable" }, { head: "value" }, { head: "does" }],
            environment.map(({ variable, value, does }) => [variable, value, does]),
          ),
        ]),
  ];
}

export const settingsJson = ({ file, of, ...shown }: ShownSettings): string =>
  outputJson("config", 1, {
    of: portablePath(of),
    file: file === null ? null : portablePath(file),
    ...shown,
  });
