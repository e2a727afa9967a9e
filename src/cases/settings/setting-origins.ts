/** Each setting that holds for a folder, and where it comes from. */
import { resolve } from "node:path";
import { settingsKeys } from "../../generated/settings-keys.ts";
import type { Fault } from "../faults/fault.ts";
import { ArchiveContext } from "../files/archive-context.ts";
import { formatPath, isKeyed, type Path } from "../model/path.ts";

interface SettingOrigin {
  /** Its place in the settings file: `rules.treated-pig` */
  readonly setting: string;
  /** Null where the file lies outside the repository, so that nothing of it is shown. */
  readonly value: unknown;
  /** Where it is written; null for the value of the program itself. */
  readonly line: number | null;
}

export interface SettingOrigins {
  /** The settings file that holds; null where none does. */
  readonly file: string | null;
  readonly settings: readonly SettingOrigin[];
  /** Keys that are not set, and have no single value of their own then. */
  readonly not_set: readonly string[];
}

/**
 * @param config a settings file instead of the nearest; false for none
 * @returns faults instead, of settings that could not be read or used
 */
export function settingOrigins(folder: string, config?: string | false): SettingOrigins | readonly Fault[] {
  const context = new ArchiveContext(".", config, [folder]);
  const held = context.settings(resolve(folder));
  if (context.unreadable.length > 0) return context.unreadable;
  const document = context.written(held);
  const top = isKeyed(document?.value) ? document.value : {};
  const isSet = ({ name }: { readonly name: string }): boolean => top[name] !== undefined;
  const lineOf = (path: Path): number | null => document?.whereKey(path).line ?? null;
  const written = settingsKeys.filter(isSet).flatMap(({ name }) =>
    document?.isHidden === true
      ? { setting: name, value: null, line: lineOf([name]) }
      : leavesOf(top[name], [name]).map(({ path, value }) => ({
          setting: formatPath(path),
          value,
          line: lineOf(path),
        })),
  );
  const others = settingsKeys.filter((key) => !isSet(key));
  return {
    file: held.file ?? null,
    settings: [
      ...written,
      ...others.flatMap(({ name, unset }) =>
        unset === undefined ? [] : { setting: name, value: unset, line: null },
      ),
    ],
    not_set: others.flatMap(({ name, unset }) => (unset === undefined ? name : [])),
  };
}

/** A list is one value. */
const leavesOf = (value: unknown, path: Path): { readonly path: Path; readonly value: unknown }[] =>
  isKeyed(value)
    ? Object.entries(value).flatMap(([key, one]) => leavesOf(one, [...path, key]))
    : [{ path, value }];
