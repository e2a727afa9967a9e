/**
 * What a report says, before it is known in which language and on what paper: plain data that can be kept, and from which the
 * same page can be made later and elsewhere. A sentence is a message with its values; what people wrote stays as they wrote it.
 */
import type { ReportValues } from "../generated/knowledge/messages.ts";

/** One sentence: which message, and what stands in its gaps. */
export type Said = {
  readonly [Key in keyof ReportValues]: Record<never, never> extends ReportValues[Key]
    ? { readonly say: Key; readonly values?: undefined }
    : { readonly say: Key; readonly values: Nested<ReportValues[Key]> };
}[keyof ReportValues];

/** In a gap for a word may stand a name that has a translation, or another sentence. */
type Nested<Values> = {
  readonly [Gap in keyof Values]: Values[Gap] extends number
    ? Values[Gap]
    : Values[Gap] | Term | Said | Listing;
};

/** The name of a thing, in the language of the reader. */
export interface Term {
  readonly term:
    | "indicators"
    | "scales"
    | "systems"
    | "bases"
    | "lobes"
    | "organs"
    | "materials"
    | "containers"
    | "tests";
  readonly id: string;
  /** Its English title, for what is the practice's own. */
  readonly title?: string;
  /** It rests on a definition from memory, and is marked. */
  readonly from_memory?: true;
}

/** Things one after the other, with the reader's `and`. */
export interface Listing {
  readonly list: readonly (string | Term | Said)[];
}

export type Audience = "farm" | "colleague" | "laboratory";
export const audiences: readonly Audience[] = ["farm", "colleague", "laboratory"];

/** Where a state of an organ system comes from: see the figure of completeness. */
export type Looked = "lesion" | "normal" | "left" | "blank";

export interface ReportPig {
  readonly id: string;
  readonly visit: string | null;
  readonly group: string | null;
  /** How it was chosen; null where that is not recorded. */
  readonly basis: string | null;
  readonly age_days: number | null;
  readonly systems: Readonly<Record<string, { readonly looked: Looked; readonly reason: string | null }>>;
  /** Findings in the words of the record, by organ. */
  readonly findings: readonly { readonly organ: string; readonly process: string; readonly words: string }[];
  /** Per cent consolidated, by lobe; null where the lungs were not graded. */
  readonly lobes: Readonly<Record<string, number>> | null;
  readonly pleurisy: Readonly<Record<"left" | "right", readonly string[]>> | null;
  readonly conchae: {
    readonly left: Readonly<Record<"dorsal" | "ventral", number | null>>;
    readonly right: Readonly<Record<"dorsal" | "ventral", number | null>>;
    readonly septum: string | null;
  } | null;
  readonly scores: readonly {
    readonly scale: string;
    readonly value: number;
    readonly from_memory: boolean;
  }[];
  /** Hours after death within which a test of a sample of this pig keeps its full worth. */
  readonly limits: readonly { readonly test: string; readonly hours: number }[];
  /** Hours after death of what was done, and what it was. */
  readonly steps: readonly { readonly hours: number; readonly what: string; readonly late: boolean }[];
  readonly samples: readonly {
    readonly id: string;
    readonly from: string;
    readonly into: string | null;
    readonly tests: readonly string[];
    readonly at: string | null;
    /** Tests that have no result yet. */
    readonly open: readonly string[];
    readonly results: readonly {
      readonly test: string;
      /** Agent or analyte by its name; null where the test looks for none. */
      readonly of: string | null;
      /** How the laboratory reads it, or the value with its unit. */
      readonly said: string | null;
    }[];
  }[];
  readonly diagnosis: {
    readonly morphologic: readonly string[];
    readonly aetiologic: readonly string[];
    /** Those of them that name a cause: neither pending nor denied. */
    readonly causes: readonly string[];
    readonly differentials: readonly string[];
    readonly basis: string | null;
  };
  readonly photographs: readonly ReportPhotograph[];
}

/** A photograph without its pixels: they are looked up by their digest. */
export interface ReportPhotograph {
  readonly file: string;
  /** A system, an organ or the carcass, as the case or the name of the file says. */
  readonly shows: string | null;
  readonly note: string | null;
  /** Of the file as it lay beside the case; null where nobody read it. */
  readonly sha256: string | null;
}

/** A share of pigs chosen in one way. */
export interface ReportShare {
  readonly visit: string | null;
  readonly indicator: string;
  readonly title: string;
  readonly basis: string | null;
  readonly affected: number;
  readonly examined: number;
  /** Between 0 and 1, weighted where groups are taken together. */
  readonly proportion: number | null;
  /** Null for `of these pigs`, and where the share is known exactly. */
  readonly limits: readonly [number, number] | null;
  readonly level: number;
  readonly stands: boolean;
  /** The sentence of the herd table, in English. */
  readonly wording: string;
  readonly source: string | null;
  readonly from_memory: boolean;
}

/** A scale with the pigs of each visit on it. */
export interface ReportScale {
  readonly scale: string;
  readonly title: string;
  readonly organ: string;
  readonly least: number;
  readonly most: number;
  readonly grades: readonly number[];
  readonly source: string;
  readonly from_memory: boolean;
}

export interface ReportVisit {
  readonly id: string;
  readonly date: string | null;
  readonly pigs: number;
  readonly complaint: string | null;
  readonly question: string | null;
  readonly chosen: readonly {
    readonly basis: string | null;
    readonly pigs: number;
    readonly stands: boolean;
  }[];
  readonly chosen_note: string | null;
  readonly groups: readonly {
    readonly name: string;
    readonly at_risk: number | null;
    readonly affected: number | null;
    readonly dead: number | null;
    readonly onset: string | null;
  }[];
  readonly treatments: readonly {
    readonly words: string;
    readonly from: string | null;
    readonly to: string | null;
  }[];
  /** Days on which results of the laboratory came, and how many. */
  readonly reported: readonly { readonly day: string; readonly results: number }[];
  readonly vaccinations: readonly string[];
  readonly changes: readonly string[];
  readonly recommendations: readonly {
    readonly what: string;
    readonly who: string | null;
    readonly until: string | null;
    readonly because: string | null;
  }[];
}

/** A disease that the findings fit, the best first; statements are those of the knowledge, in English. */
export interface ReportFit {
  readonly disease: string;
  readonly name: string;
  readonly favour: readonly string[];
  readonly against: readonly string[];
  /** Organs that matter for it and that nobody looked at. */
  readonly unseen: readonly string[];
}

export interface ReportResult {
  readonly made_by: string;
  readonly of: "case" | "visit" | "farm";
  readonly title: Said;
  readonly farm: string | null;
  readonly by: string | null;
  readonly day: string | null;
  /** The first screen. */
  readonly answer: readonly Said[];
  /** In order of their days. */
  readonly visits: readonly ReportVisit[];
  readonly pigs: readonly ReportPig[];
  readonly shares: readonly ReportShare[];
  /** One an organ, told first. */
  readonly scales: readonly ReportScale[];
  /** What the last visit, or the pig, fits: the first three. */
  readonly fits: readonly ReportFit[];
  /** The sentences of `carcase compare`, in English; null without an earlier visit. */
  readonly compared: readonly string[] | null;
  readonly files: readonly { readonly file: string; readonly sha256: string }[];
}
