/** The settings that hold for a file: the nearest carcase.yaml above it, or the defaults. */
import type { SettingsFile } from "../generated/settings.types.ts";
import {
  type Indicator,
  type Scale,
  indicators as shippedIndicators,
  scales as shippedScales,
} from "../knowledge/index.ts";
import { type ResolvedProtocol, resolveProtocols } from "./protocol.ts";

export interface Settings {
  /** The settings file, as shown to people; undefined for the defaults. */
  readonly file: string | undefined;
  readonly protocol: string;
  /** Levels by rule id, as written; whether such a rule exists is for the linter to say. */
  readonly rules: Readonly<Record<string, "error" | "warning" | "note" | "off">>;
  readonly scales: readonly Scale[];
  readonly protocols: ReadonlyMap<string, ResolvedProtocol>;
  readonly indicators: ReadonlyMap<string, Indicator>;
  /** Confidence level of intervals, 0.95 unless set. */
  readonly level: number;
  /** Whom to call on suspicion of a notifiable disease. */
  readonly authority: { readonly name: string; readonly telephone: string } | undefined;
  /** Alarm patterns that the country's list adds to those that always alarm. */
  readonly notifiable: readonly string[];
  /** Own limits of autolysis in hours, by temperature band and kind of test. */
  readonly autolysis: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

export const defaultSettings: Settings = buildSettings({ format: 1 }, undefined);

/**
 * Settings from a settings file.
 * @param value fits the schema and has no faults (see settings-faults.ts)
 */
export function buildSettings(value: SettingsFile, file: string | undefined): Settings {
  const scales = value.scales?.map((id) => shippedScales.get(id)).filter((scale) => scale !== undefined);
  return {
    file,
    protocol: value.protocol ?? "full",
    rules: value.rules ?? {},
    scales: scales ?? [...shippedScales.values()],
    protocols: resolveProtocols(value),
    indicators: new Map([...shippedIndicators, ...Object.entries(value.indicators ?? {})]),
    level: value.level ?? 0.95,
    authority: value.authority,
    notifiable: value.notifiable ?? [],
    autolysis: value.autolysis ?? {},
  };
}
