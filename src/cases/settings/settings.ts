/** The settings that hold for a file: the nearest carcase.yaml above it, or the defaults. */
import type { LabelSheet, SettingsFile } from "../../generated/settings.types.ts";
import {
  type Indicator,
  type Scale,
  scaleIds,
  indicators as shippedIndicators,
} from "../../knowledge/index.ts";
import { type ResolvedProtocol, resolveProtocols } from "../model/protocol.ts";
import { type SampleSettings, sampleSettings } from "./sample-settings.ts";
import { allShipped } from "./settings-faults.ts";

export interface Settings {
  /** The settings file, as shown to people; undefined for the defaults. */
  readonly file: string | undefined;
  readonly protocol: string;
  /** Levels by rule id, as written; whether such a rule exists is for the linter to say. */
  readonly rules: Readonly<Record<string, "error" | "warning" | "note" | "off">>;
  /** Where the pages of rules are, with {rule} for the name of one. */
  readonly rulePages: string | undefined;
  /** Names of the scales to show, in this order, of the practice's own as well; undefined for the default. */
  readonly scales: readonly string[] | undefined;
  /** Scales of the practice's own, by name. */
  readonly houseScales: ReadonlyMap<string, Scale>;
  /** Names of those whose file is at fault as well; null when some are not known. */
  readonly houseScaleNames: readonly string[] | null;
  readonly protocols: ReadonlyMap<string, ResolvedProtocol>;
  readonly indicators: ReadonlyMap<string, Indicator>;
  /** Confidence level of intervals, 0.95 unless set. */
  readonly level: number;
  /** How two shares are tested, Fisher's test unless set. */
  readonly sharesTest: NonNullable<SettingsFile["shares_test"]>;
  /** Whom to call on suspicion of a notifiable disease; without a number only where the settings have a fault. */
  readonly authority: { readonly name: string; readonly telephone: string | undefined } | undefined;
  /** Alarm patterns that the country's list adds to those that always alarm. */
  readonly notifiable: readonly string[];
  /** Files that are not read when they are found by looking through a folder, in the way of .gitignore. */
  readonly exclude: readonly string[];
  /** What the columns of the practice's tables mean, by their head. */
  readonly columns: NonNullable<NonNullable<SettingsFile["import"]>["columns"]>;
  /** How tests of the laboratory err, by test and agent. */
  readonly tests: NonNullable<SettingsFile["tests"]>;
  /** What the columns of laboratories' tables mean, by their head. */
  readonly resultsColumns: Settings["columns"];
  /** Days within which a result is waited for, where they are set. */
  readonly resultsWithin: number | undefined;
  /** How reports of the practice look; files in it are paths from the folder of the settings. */
  readonly report: NonNullable<SettingsFile["report"]>;
  /** The practice's own sheets of labels, by name. */
  readonly labelSheets: ReadonlyMap<string, LabelSheet>;
  /** Own limits of autolysis in hours, by temperature band and kind of test. */
  readonly autolysis: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Sets of samples by name, and what the practice says of its containers. */
  readonly samples: SampleSettings;
}

export const defaultSettings: Settings = buildSettings({ format: 1 }, undefined);

/** What the practice adds in files of its own. */
export interface HouseFiles {
  /** Sound scales by name. */
  readonly scales: ReadonlyMap<string, Scale>;
  /** Names of all of them, sound or not; null when a file is missing or unreadable, and with it its name. */
  readonly names: readonly string[] | null;
  /** The names that each entry under `scales:` leads to. */
  readonly shown: readonly string[];
}

/**
 * Settings from a settings file.
 * @param value fits the schema and has no faults (see settings-faults.ts)
 * @param house what its scale files hold; without it `scales:` holds names of scales that ship
 */
export function buildSettings(value: SettingsFile, file: string | undefined, house?: HouseFiles): Settings {
  const houseScales = house?.scales ?? new Map();
  const known = (id: string): boolean => houseScales.has(id) || scaleIds.includes(id);
  // An indicator of a scale file that cannot be used has no answer; the file itself is reported.
  const own = Object.entries(value.indicators ?? {}).filter(
    ([, { score }]) => score === undefined || known(score.scale),
  );
  return {
    file,
    protocol: value.protocol ?? "full",
    rulePages: value.rule_pages,
    rules: value.rules ?? {},
    scales:
      value.scales === undefined
        ? undefined
        : (house?.shown ?? value.scales).filter((id) => id === allShipped || known(id)),
    houseScales,
    houseScaleNames: house === undefined ? [] : house.names,
    protocols: resolveProtocols(value),
    indicators: new Map([...shippedIndicators, ...own]),
    level: value.level ?? 0.95,
    sharesTest: value.shares_test ?? "fisher",
    authority: value.authority,
    notifiable: value.notifiable ?? [],
    exclude: value.exclude ?? [],
    columns: value.import?.columns ?? {},
    tests: value.tests ?? {},
    resultsColumns: value.import?.results_columns ?? {},
    resultsWithin: value.results_within,
    report: value.report ?? {},
    labelSheets: new Map(Object.entries(value.label_sheets ?? {})),
    autolysis: value.autolysis ?? {},
    samples: sampleSettings(value.samples),
  };
}
