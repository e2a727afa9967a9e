/** The case archive as the rest of the program sees it: typed records that know where they stand in their file. */
import type { CaseFile } from "../../generated/case.types.ts";
import type { FarmFile } from "../../generated/farm.types.ts";
import type { ResultsFile } from "../../generated/results.types.ts";
import type { VisitFile } from "../../generated/visit.types.ts";
import type { AgeClass, PlacedOrgan, Scale } from "../../knowledge/index.ts";
import type { Fault } from "../faults/fault.ts";
import type { Settings } from "../settings/settings.ts";
import type { SourceDocument } from "../yaml/document.ts";
import type { OrganState } from "./organ-state.ts";
import type { Path } from "./path.ts";
import type { ResolvedProtocol } from "./protocol.ts";

/** A file that was read, with its valid content. */
interface Filed<Content> {
  /** As shown to people (see ShownPaths). */
  readonly file: string;
  readonly document: SourceDocument;
  readonly record: Content;
  /** Values that do not fit the format; they are not in `record`. */
  readonly faults: readonly Fault[];
  readonly settings: Settings;
}

/** One pig, one necropsy. */
export interface Case extends Filed<CaseFile> {
  /** The case id, or the file name when the case does not name itself. */
  readonly id: string;
  /** What the record has from the defaults of its visit. */
  readonly inherited: readonly Path[];
  readonly protocol: ResolvedProtocol;
  /** Set when the case names a protocol that does not exist; `protocol` is then the default. */
  readonly unknownProtocol: string | undefined;
  /** As written, or from the age. */
  readonly ageClass: AgeClass | undefined;
  readonly ageDays: number | undefined;
  readonly weightKg: number | undefined;
  readonly signs: readonly string[];
  /** The organs that this examination had to cover. */
  readonly due: readonly PlacedOrgan[];
  /** Those of them that may not be left out; the others are wanted. */
  readonly must: ReadonlySet<PlacedOrgan>;
  /** The state of any organ, due or not. */
  organ(organ: PlacedOrgan): OrganState;
  /** The visit and farm the case belongs to. */
  readonly visit: VisitContext | undefined;
  readonly farm: Farm | undefined;
}

/** One farm, one day: what a case knows of its visit. */
export interface VisitContext extends Filed<VisitFile> {
  readonly id: string;
  readonly folder: string;
  readonly farm: Farm | undefined;
  /** What laboratories answered, a file each, in the order of their names. */
  readonly results: readonly Results[];
}

/** What a laboratory answered about the samples of a visit. */
export type Results = Filed<ResultsFile>;

/** A visit with the cases that were read of it. */
export interface Visit extends VisitContext {
  readonly cases: readonly Case[];
  /** Whether all files of the visit were looked at and every case could be read, so that absence means something. */
  readonly complete: boolean;
  /** Files of its folder that the settings exclude. */
  readonly excluded: readonly string[];
}

export interface Farm extends Filed<FarmFile> {
  readonly id: string;
  readonly folder: string;
}

/** A scale file of the practice, named in the settings. */
export interface HouseScale extends Filed<Partial<Scale>> {
  /** As written, or the name of the file. */
  readonly id: string;
  /** The scale, when nothing is wrong with the file; only then it is used. */
  readonly scale: Scale | undefined;
}

export interface Archive {
  readonly cases: readonly Case[];
  readonly visits: readonly Visit[];
  readonly farms: readonly Farm[];
  /** Scale files of the practice that the settings of the cases name. */
  readonly scales: readonly HouseScale[];
  /** Files of which nothing could be made. */
  readonly unreadable: readonly Fault[];
  /** YAML files of other tools that were met on the way. */
  readonly passedOver: readonly string[];
  /** Paths that were asked for and led to no case. */
  readonly pathsWithoutCases: readonly string[];
}
