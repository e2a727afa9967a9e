/** The sections of a report in their order, by whom it is for: depth changes with the reader, facts never. */
import { isReportSection, type ReportSection, reportSections } from "../../../knowledge/index.ts";
import type { Audience, ReportResult, ReportWords } from "../../../report/index.ts";
import { list, text } from "../../page/blocks.ts";
import { Html } from "../../page/html.ts";
import type { Part, Reader, ReportBlock } from "../blocks.ts";
import type { OwnSection } from "../dress.ts";
import { found, notSeen, scores } from "./found.ts";
import { compared, herd } from "./herd.ts";
import { chosen, history } from "./history.ts";
import { cautions, method } from "./method.ts";
import { photographs } from "./photographs.ts";
import { diagnoses, samples } from "./samples.ts";

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly ReportBlock[];
}

const next: Part = ({ visits }, words) => {
  const all = visits.at(-1)?.recommendations ?? [];
  if (all.length === 0) return [text(words.say("next_empty"))];
  return list(
    null,
    all.map(({ what, who, until, because }) => {
      const whose = [who, until === null ? null : words.say("until", { day: until })].filter(
        (part) => part !== null,
      );
      return `${what}${whose.length === 0 ? "" : ` (${whose.join(", ")})`}${because === null ? "" : `: ${because}`}`;
    }),
  );
};

const parts: Readonly<Record<ReportSection, Part>> = {
  history,
  chosen,
  found,
  photographs,
  scores,
  herd,
  compared,
  not_seen: notSeen,
  samples,
  diagnoses,
  next,
  cautions,
  method,
};

/** What each reader gets, in order. */
const order: Readonly<Record<Audience, readonly ReportSection[]>> = {
  farm: ["herd", "found", "photographs", "scores", "compared", "next", "not_seen", "cautions"],
  colleague: reportSections,
  laboratory: [
    "history",
    "chosen",
    "found",
    "photographs",
    "samples",
    "diagnoses",
    "not_seen",
    "cautions",
    "method",
  ],
};

/** In the order of the practice first; what it does not name follows in ours, and its own sections last. */
export function sectionsOf(report: ReportResult, words: ReportWords, reader: Reader): Section[] {
  const { audience, dress } = reader;
  const ids = new Set([...(dress.order[audience] ?? []), ...order[audience], ...dress.extra.keys()]);
  return [...ids].flatMap((id): Section[] => {
    const own = dress.extra.get(id);
    if (own !== undefined) return [{ id: `own-${id}`, title: own.title, blocks: ownBlocks(own) }];
    if (!isReportSection(id)) return [];
    const made = dress.replaced.get(id);
    const blocks = made === undefined ? parts[id](report, words, reader) : [{ kind: "made" as const, made }];
    return blocks.length === 0 ? [] : [{ id, title: words.say(id), blocks }];
  });
}

const ownBlocks = ({ body }: OwnSection): ReportBlock[] =>
  body instanceof Html ? [{ kind: "made", made: body }] : body.map((paragraph) => text(paragraph));
