/** Takes scales of the practice that turned out to be at fault out of everything that was read with them. */
import type { Scale } from "../../knowledge/index.ts";
import type { Archive, Case } from "../model/model.ts";
import type { Settings } from "./settings.ts";

/**
 * The same archive without the scales whose file has a fault, worked examples included once they were worked out:
 * their cases, settings and indicators no longer know them. Faults stay with their files.
 */
export function leaveOutFaultyScales(archive: Archive): Archive {
  const faulty = new Set(
    archive.scales.flatMap(({ scale, faults }) =>
      scale === undefined || faults.length === 0 ? [] : [scale],
    ),
  );
  if (faulty.size === 0) return archive;
  const changed = new Map<Settings, Settings>();
  const settingsOf = (before: Settings): Settings => {
    const after = changed.get(before) ?? withoutScales(before, faulty);
    changed.set(before, after);
    return after;
  };
  const cases = new Map(
    archive.cases.map((one): [Case, Case] => [one, { ...one, settings: settingsOf(one.settings) }]),
  );
  return {
    ...archive,
    cases: [...cases.values()],
    visits: archive.visits.map((visit) => ({
      ...visit,
      settings: settingsOf(visit.settings),
      cases: visit.cases.map((one) => cases.get(one) ?? one),
    })),
    farms: archive.farms.map((farm) => ({ ...farm, settings: settingsOf(farm.settings) })),
    scales: archive.scales.map((file) =>
      file.scale !== undefined && faulty.has(file.scale) ? { ...file, scale: undefined } : file,
    ),
  };
}

function withoutScales(settings: Settings, faulty: ReadonlySet<Scale>): Settings {
  const left = [...settings.houseScales].filter(([, scale]) => !faulty.has(scale));
  const gone = [...settings.houseScales].filter(([, scale]) => faulty.has(scale)).map(([id]) => id);
  if (gone.length === 0) return settings;
  return {
    ...settings,
    houseScales: new Map(left),
    scales: settings.scales?.filter((id) => !gone.includes(id)),
    indicators: new Map(
      [...settings.indicators].filter(([, { score }]) => score === undefined || !gone.includes(score.scale)),
    ),
  };
}
