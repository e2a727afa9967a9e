/** The settings that hold for a file: the nearest carcase.yaml above it, or the defaults. */
import type { SettingsFile } from "../generated/settings.types.ts";
import {
  type Indicator,
  organById,
  type Scale,
  indicators as shippedIndicators,
  scales as shippedScales,
  systems,
} from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";
import { nearest } from "../words/nearest.ts";
import type { Path } from "./path.ts";
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
}

export const defaultSettings: Settings = buildSettings(undefined, undefined);

/** A value of the settings that fits the schema but names something that does not exist. */
export class SettingsError extends Error {
  readonly path: Path;
  constructor(path: Path, message: string) {
    super(message);
    this.path = path;
  }
}

/**
 * Settings from a valid settings file.
 * @throws SettingsError when it names a scale, organ or protocol that does not exist
 */
export function buildSettings(value: SettingsFile | undefined, file: string | undefined): Settings {
  const chosen = (value?.scales ?? [...shippedScales.keys()]).map((id, index) =>
    knownScale(id, ["scales", index]),
  );
  const own = Object.entries(value?.indicators ?? {});
  for (const [id, indicator] of own) checkIndicator(id, indicator);
  for (const [id, protocol] of Object.entries(value?.protocols ?? {}))
    for (const key of ["add", "leave_out"] as const)
      for (const [index, entry] of (protocol[key] ?? []).entries())
        checkDue(entry, ["protocols", id, key, index]);
  let protocols: Map<string, ResolvedProtocol>;
  try {
    protocols = resolveProtocols(value);
  } catch (error) {
    throw new SettingsError(["protocols"], (error as Error).message);
  }
  const protocol = value?.protocol ?? "full";
  if (!protocols.has(protocol))
    throw new SettingsError(
      ["protocol"],
      `protocol: ${unknownName(protocol, [...protocols.keys()], "protocol")}`,
    );
  return {
    file,
    protocol,
    rules: value?.rules ?? {},
    scales: chosen,
    protocols,
    indicators: new Map([...shippedIndicators, ...own]),
    level: value?.level ?? 0.95,
  };
}

/** Longer lists of names are not printed. */
const longList = 12;

/** `there is no scale "x". Did you mean y?` */
export function unknownName(name: string, known: readonly string[], what: string): string {
  const guess = nearest(name, known);
  const there =
    known.length > longList ? `None of the ${known.length} names is near.` : `There are ${listing(known)}.`;
  return `there is no ${what} "${name}". ${guess === undefined ? there : `Did you mean ${guess}?`}`;
}

function knownScale(id: string, path: Path): Scale {
  const scale = shippedScales.get(id);
  if (scale === undefined)
    throw new SettingsError(path, `scales: ${unknownName(id, [...shippedScales.keys()], "scale")}`);
  return scale;
}

function checkDue(entry: string, path: Path): void {
  if (entry === "base" || organById(entry) !== undefined || systems.some((system) => system.id === entry))
    return;
  const known = [...systems.map((system) => system.id), "base"];
  throw new SettingsError(
    path,
    `${unknownName(entry, known, "system or organ")} Write an organ as system.organ, such as nervous.brain.`,
  );
}

function checkIndicator(id: string, indicator: Indicator): void {
  const { score, finding } = indicator;
  const path = ["indicators", id];
  if ((score === undefined) === (finding === undefined))
    throw new SettingsError(path, `indicators.${id}: write either score or finding`);
  if (score !== undefined) {
    knownScale(score.scale, [...path, "score", "scale"]);
    if ((score.at_least === undefined) === (score.above === undefined))
      throw new SettingsError(path, `indicators.${id}.score: write either at_least or above`);
  }
  if (finding !== undefined && organById(finding.organ) === undefined)
    throw new SettingsError(
      path,
      `indicators.${id}.finding: there is no organ "${finding.organ}"; write it as system.organ`,
    );
}
