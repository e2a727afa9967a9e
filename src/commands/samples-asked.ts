/** What commands are asked about by which samples leave: with an alarm standing there is its notice and nothing else. */
import { openAlarmsOf } from "../alarms/index.ts";
import { type Archive, readCases } from "../cases/index.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { withoutFormatFaults } from "./sound-cases.ts";

/**
 * The archive without cases that have format faults, which are said; undefined while an alarm stands, whose notice is said.
 * What was seen in one pig of a visit stops the samples of the others as well, where these alone were asked for.
 */
export function asksForSamples(run: Run<CommonOptions>): Archive | undefined {
  const archive = run.archive();
  if (openAlarmsOf(archive).length > 0) return undefined;
  const partly = archive.visits.filter(({ complete }) => !complete).map(({ folder }) => folder);
  if (partly.length > 0) {
    const alarms = openAlarmsOf(readCases(partly, run.reading().read));
    if (alarms.length > 0) {
      run.wasRead({ alarms, unreadable: [], passedOver: [], pathsWithoutCases: [] });
      return undefined;
    }
  }
  const sound = withoutFormatFaults(archive);
  run.faults(sound.faults);
  return sound.archive;
}
