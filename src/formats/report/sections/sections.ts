/** The sections of a report in their order, by whom it is for: depth changes with the reader, facts never. */
import type { Audience, ReportResult, ReportWords } from "../../../report/index.ts";
import { list, text } from "../../page/blocks.ts";
import type { Part, ReportBlock } from "../blocks.ts";
import { found, notSeen, scores } from "./found.ts";
import { compared, herd } from "./herd.ts";
import { chosen, history } from "./history.ts";
import { cautions, method } from "./method.ts";
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

const parts = {
  history,
  chosen,
  found,
  scores,
  herd,
  compared,
  not_seen: notSeen,
  samples,
  diagnoses,
  next,
  cautions,
  method,
} satisfies Record<string, Part>;

type Name = keyof typeof parts;

/** What each reader gets, in order. */
const order: Readonly<Record<Audience, readonly Name[]>> = {
  farm: ["herd", "found", "scores", "compared", "next", "not_seen", "cautions"],
  colleague: [
    "history",
    "chosen",
    "found",
    "scores",
    "herd",
    "compared",
    "not_seen",
    "samples",
    "diagnoses",
    "next",
    "cautions",
    "method",
  ],
  laboratory: ["history", "chosen", "found", "samples", "diagnoses", "not_seen", "cautions", "method"],
};

export const sectionsOf = (report: ReportResult, audience: Audience, words: ReportWords): Section[] =>
  order[audience].flatMap((id) => {
    const blocks = parts[id](report, words, audience);
    return blocks.length === 0 ? [] : [{ id, title: words.say(id), blocks }];
  });
