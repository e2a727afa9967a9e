/** What stands on the table after the knife: the containers of a pig or a visit, a line each, as people name them. */
import type { Case, Moment, Visit } from "../cases/index.ts";
import { capital, listing } from "../words/listing.ts";
import { fact } from "./fact.ts";
import { materialTitle, type Sample } from "./materials.ts";
import { isFixed, samplesOf } from "./samples.ts";
import { sampleAt } from "./times.ts";

type Into = NonNullable<Sample["into"]>;
type Test = NonNullable<Sample["for"]>[number];

/** One container. What is not recorded is undefined; the texts are as they were read. */
export interface Container {
  /** The number on its label. */
  readonly id: string;
  /** The case of the pig it came from, and the tag of that pig. */
  readonly pig: string;
  readonly tag: string | undefined;
  /** Other pigs with material in it, by their cases. */
  readonly pooledWith: readonly string[];
  /** `Lungs, left: edge of lesion, left middle lobe` */
  readonly what: string;
  /** What it came from, as a word of the format: `respiratory.lungs`, `csf`. */
  readonly from: string;
  readonly into: Into | undefined;
  /** `Formalin`, `Swab in transport medium`. */
  readonly container: string | undefined;
  readonly fixative: "formalin" | "ethanol" | undefined;
  readonly tests: readonly Test[];
  /** Its own time, or that of the step in which it was taken. */
  readonly at: Moment | undefined;
  /** As written: `2026-03-14T10:05`. */
  readonly takenAt: string | undefined;
  readonly amount: string | undefined;
  /** Bag or pot that it shares with others. */
  readonly bag: string | undefined;
  readonly note: string | undefined;
  readonly one: Case;
  readonly sample: Sample;
  /** Its place under `samples` of the case. */
  readonly index: number;
}

export const containersOfCase = fact((one: Case): readonly Container[] =>
  samplesOf(one).map(({ sample, index }) => {
    const { id, from, side, site, into, at, bag } = sample;
    const tag = one.record.pig?.tag;
    const place = side === undefined ? "" : `, ${side}`;
    return {
      id,
      pig: one.id,
      tag: tag === undefined ? undefined : String(tag),
      pooledWith: sample.pooled_with ?? [],
      what: `${capital(materialTitle(from))}${place}${site === undefined ? "" : `: ${site}`}`,
      from,
      into,
      container: into === undefined ? undefined : capital(containerNames([into])),
      fixative: isFixed(sample) ? (into === "ethanol" ? "ethanol" : "formalin") : undefined,
      tests: sample.for ?? [],
      at: sampleAt(one, sample),
      takenAt: at ?? (sampleAt(one, sample) === undefined ? undefined : one.record.steps?.gut_fixed),
      amount: sample.amount,
      bag: bag === undefined ? undefined : String(bag),
      note: sample.note,
      one,
      sample,
      index,
    };
  }),
);

/** The containers of a visit, pig by pig. */
export const containersOf = fact((visit: Visit): readonly Container[] =>
  visit.cases.flatMap(containersOfCase),
);

/** Every container of the format, as people call it. */
export const containerTitles: Readonly<Record<Into, string>> = {
  formalin: "formalin",
  chilled: "chilled",
  frozen: "frozen",
  ethanol: "ethanol",
  "transport-medium": "swab in transport medium",
  "charcoal-medium": "swab in charcoal medium",
  "anaerobic-medium": "swab in anaerobic medium",
  "viral-medium": "swab in viral medium",
  "dry-swab": "dry swab",
  "plain-tube": "plain tube",
  "edta-tube": "EDTA tube",
  "heparin-tube": "heparin tube",
  "citrate-tube": "citrate tube",
};

/** Every test of the format, as people call it. */
export const testTitles: Readonly<Record<Test, string>> = {
  histology: "histology",
  immunohistochemistry: "immunohistochemistry",
  culture: "culture",
  pcr: "PCR",
  serology: "serology",
  "virus-isolation": "virus isolation",
  toxicology: "toxicology",
  chemistry: "blood chemistry",
  parasitology: "parasitology",
  cytology: "cytology",
  sequencing: "sequencing",
  antibiogram: "antibiogram",
  archive: "archive",
};

const named = (words: readonly string[], titles: Readonly<Record<string, string>>): string =>
  listing(words.map((word) => titles[word] ?? word));
/** `plain tube and dry swab` */
export const containerNames = (into: readonly string[]): string => named(into, containerTitles);
/** `culture and PCR` */
export const testNames = (tests: readonly string[]): string => named(tests, testTitles);
