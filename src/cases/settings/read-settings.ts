/** The settings of a folder, and the scale files of the practice that they name, without any case. */
import { resolve } from "node:path";
import type { Fault } from "../faults/fault.ts";
import { ArchiveContext } from "../files/archive-context.ts";
import type { HouseScale } from "../model/model.ts";
import type { Settings } from "./settings.ts";

export interface ReadSettings {
  readonly settings: Settings;
  readonly scales: readonly HouseScale[];
  /** Files that could not be read or used. */
  readonly unreadable: readonly Fault[];
}

/**
 * Reads the settings that hold for a folder: those of `config`, or of the nearest carcase.yaml above it; with false the program's own.
 * @returns nothing is thrown for bad files, they are listed
 */
export function readSettings(folder = ".", config?: string | false): ReadSettings {
  const context = new ArchiveContext(folder, config);
  const settings = context.settings(resolve(folder));
  return { settings, scales: context.scales, unreadable: context.unreadable };
}
