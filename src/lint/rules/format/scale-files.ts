import { type FormatRule, practice } from "../../rule.ts";
import { reportedElsewhere } from "../../shared/rule-rows.ts";

const source = "source: {cite: practice of H. Marlow 2026, confidence: common-practice}";

const scale = (value: number): string => `format: 1
id: our-ventral
title: Ventral conchae 0-8
short: [ventral, "0-8"]
organ: respiratory.turbinates
parts:
  left: {read: left.ventral, max: 4}
  right: {read: right.ventral, max: 4}
combine: sum
range: [0, 8]
boundary: Whole grades only; the grades of both ventral conchae are added.
examples:
  - {case: slight on one side, record: {left: {ventral: 1}, right: {ventral: 0}}, value: ${value}, source: {cite: worked by hand, confidence: derived}}`;

/** What a scale file of the practice must be; the reader of scales checks it. */
export const scaleFiles: readonly FormatRule[] = reportedElsewhere([
  {
    id: "scale-format",
    level: "error",
    locked: true,
    summary: "A scale file of the practice has the form of those that ship, a name of its own and a source.",
    protects:
      "A scale without source, boundary rule or example gives numbers that nobody can check; one under a name that ships would be mixed up with it.",
    lookAlike:
      "A published scale that ships under another name: carcase explain scales lists them, and it needs no file of yours.",
    source: practice("schemas/scale.schema.json of this project"),
    bad: { scale: scale(1) },
    good: { scale: `${scale(1)}\n${source}` },
  },
  {
    id: "scale-example",
    level: "error",
    locked: true,
    summary: "The worked examples in a scale file of the practice come out as the file says.",
    protects:
      "A cut point typed wrongly would go into every score; the example is the check that the file means what you mean.",
    lookAlike:
      "A scale that is right and an example worked out wrongly by hand: work it through again, and correct the one of the two that is at fault.",
    source: practice("a scale is worked through by hand once before it is used; common practice"),
    bad: { scale: `${scale(2)}\n${source}` },
    good: { scale: `${scale(1)}\n${source}` },
  },
]);
