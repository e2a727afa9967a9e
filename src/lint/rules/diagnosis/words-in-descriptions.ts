import { interpretationWords } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import { notesOfOrgans } from "../../../record/index.ts";
import type { CaseRule, RuleRow } from "../../rule.ts";

interface WordsInDescriptions extends RuleRow {
  readonly words: readonly string[];
  /** Where the words mean what they say. */
  readonly except?: string;
  /** What the word is, and what to write. */
  readonly says: string;
}

const rows: readonly WordsInDescriptions[] = [
  {
    id: "interpretation-in-description",
    level: "note",
    summary: "The note of a finding says what was seen; what it means stands under diagnosis.",
    protects: "Typical of something is no description: the next reader can neither see it nor disagree.",
    lookAlike:
      "A note on what was done, such as swabbed for PRRS, holds the same word: it belongs under samples, with the test; what an old scar once was belongs under diagnosis.",
    source: interpretationWords.source,
    bad: {
      case: "lymphoid: {spleen: [{process: infarct, distribution: focal, size: 8 mm, colour: dark-red, note: typical of septicaemia}]}",
    },
    good: {
      case: "lymphoid: {spleen: [{process: infarct, distribution: focal, size: 8 mm, colour: dark-red, note: sunken 1 mm near the tail}]}",
    },
    words: [...interpretationWords.interpretation, ...interpretationWords.diseases],
    says: "is an interpretation. Write what was seen (colour, size, consistency, edge), and the rest under diagnosis.",
  },
  {
    id: "simile-in-description",
    level: "note",
    summary: "A description uses plain colours and measures, no food or fruit.",
    protects: "Two readers never think of the same strawberry, and the laboratory may not eat nutmeg.",
    lookAlike:
      "Food that was really there: content of the stomach is passed; a plum stone elsewhere is process: foreign-body, and its note is accepted.",
    source: interpretationWords.source,
    bad: {
      case: "lymphoid: {spleen: [{process: infarct, distribution: focal, size: 8 mm, colour: dark-red, note: like raspberry jam}]}",
    },
    good: {
      case: "lymphoid: {spleen: [{process: infarct, distribution: focal, size: 8 mm, colour: dark-red, note: raised 2 mm}]}",
    },
    words: interpretationWords.similes,
    // Food in the stomach is food.
    except: "stomach.stomach_content",
    says: "belongs in the kitchen. Write the colour, size or consistency in plain words.",
  },
];

/** Words that have no place in the description of a lesion. */
export const wordsInDescriptions: readonly CaseRule[] = rows.map(({ words, except, says, ...rule }) => ({
  ...rule,
  scope: "case",
  family: "diagnosis",
  check(one, report) {
    for (const { text, path, name } of notesOfOrgans(one)) {
      if (except !== undefined && name.startsWith(except)) continue;
      const word = wordIn(text, words);
      if (word !== undefined) report(`${name}: "${word}" ${says}`, path);
    }
  },
}));
