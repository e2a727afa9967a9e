/** An archive read folder by folder, each let go before the next is read, with what can be counted of it. */
import { dirname } from "node:path";
import { type OpenAlarm, openAlarmsOf } from "../alarms/index.ts";
import {
  type Archive,
  ArchiveReader,
  allFaults,
  byFile,
  type Fault,
  type HouseScale,
  leaveOutFaultyScales,
  type ReadOptions,
} from "../cases/index.ts";
import { checkHouseScales } from "../herd/index.ts";
import type { TabledFolder } from "../tables/index.ts";
import { compileLater, filesIn, holdHeapDown } from "./hold-heap.ts";
import { withoutCopies, withoutFormatFaults } from "./sound-cases.ts";
import { progressOf } from "./streams.ts";

/** What is to be said when all folders were read. */
export interface FoldersEnd extends Pick<Archive, "unreadable" | "passedOver" | "pathsWithoutCases"> {
  readonly alarms: readonly OpenAlarm[];
  /** Why cases, results and scales were left out. */
  readonly leftOut: readonly Fault[];
}

/**
 * The folders, each with its sound cases: what `Run.countable` gives of a whole archive. No case comes twice.
 * @param told gets what is to be said at the end
 * @param keyOf the folders come in the order of their keys, those of one folder above together; without it as they are named
 */
export function* soundFolders(
  paths: readonly string[],
  options: ReadOptions,
  told: (end: FoldersEnd) => void,
  keyOf?: (location: string) => string,
): Iterable<TabledFolder> {
  const reader = new ArchiveReader(paths, options);
  const files = filesIn(reader.folders);
  holdHeapDown(files);
  compileLater(files);
  const alarms: OpenAlarm[] = [];
  const faults: Fault[] = [];
  const met = new Map<string, string>();
  const checked = new Map<string, HouseScale>();
  const progress = progressOf("folders");
  const folders = keyOf === undefined ? reader.folders : inOrderOf(reader.folders, keyOf);
  for (const [index, folder] of folders.entries()) {
    const read = reader.read(folder);
    alarms.push(...openAlarmsOf(read));
    for (const scale of reader.end().scales)
      if (!checked.has(scale.file))
        for (const one of checkHouseScales({ scales: [scale] }).scales) checked.set(scale.file, one);
    const scales = [...checked.values()];
    const whole = leaveOutFaultyScales({
      ...read,
      scales,
      unreadable: [],
      passedOver: [],
      pathsWithoutCases: [],
    });
    const sound = withoutFormatFaults(whole);
    const { archive, faults: copies } = withoutCopies(sound.archive, met);
    faults.push(...sound.faults, ...copies);
    const kept = new Set(archive.cases);
    const [visit] = archive.visits;
    const results = visit?.results.filter((file) => file.faults.length === 0) ?? [];
    faults.push(...(visit?.results.flatMap((file) => file.faults) ?? []));
    yield {
      cases: archive.cases,
      visit: visit && { ...visit, results, cases: visit.cases.filter((one) => kept.has(one)) },
    };
    reader.letGo(folders[index + 1]);
    progress(index + 1, folders.length);
  }
  const end = reader.end();
  told({
    alarms: alarms.sort(byFile),
    unreadable: allFaults([end]),
    passedOver: [...end.passedOver].sort(),
    pathsWithoutCases: end.pathsWithoutCases,
    leftOut: allFaults([{ around: [], asked: faults }]),
  });
}

const inOrderOf = (
  folders: ArchiveReader["folders"],
  keyOf: (location: string) => string,
): ArchiveReader["folders"] =>
  folders
    .map((folder) => ({ folder, key: [keyOf(dirname(folder.location)), keyOf(folder.location)].join(" ") }))
    .sort((a, b) => (a.key < b.key ? -1 : 1))
    .map(({ folder }) => folder);
