/** The settings of a folder, and the scale files of the practice that they name, without any case. */
import { resolve } from "node:path";
import type { Fault } from "./fault.ts";
import type { HouseScale } from "./model.ts";
import type { Settings } from "./settings.ts";
import { Surroundings } from "./surroundings.ts";

export interface ReadSettings {
  readonly settings: Settings;
  readonly scales: readonly HouseScale[];
  /** Files that could not be read or used. */
  readonly unreadable: readonly Fault[];
}

/**
 * Reads the settings that hold for a folder: those of `config`, or of the nearest carcase.yaml above it.
 * @returns nothing is thrown for bad files, they are listed
 */
export function readSettings(folder = ".", config?: string): ReadSettings {
  const surroundings = new Surroundings(folder, config);
  const settings = surroundings.settings(resolve(folder));
  return { settings, scales: surroundings.scales, unreadable: surroundings.unreadable };
}
