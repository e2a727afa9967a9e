import type { FormatRule } from "../../rule.ts";

const scale = `format: 1
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
  - {case: slight on both sides, record: {left: {ventral: 1}, right: {ventral: 1}}, value: 2, source: {cite: worked by hand, confidence: derived}}`;

export const scaleFormat: FormatRule = {
  id: "scale-format",
  scope: "format",
  family: "format",
  level: "error",
  locked: true,
  summary:
    "A scale file of the practice has the form of those that ship, a name of its own, and says who says so.",
  protects:
    "A scale without source, boundary rule or example gives numbers that nobody can check; one under a name that ships would be mixed with it.",
  source: { cite: "schemas/scale.schema.json of this project", confidence: "common-practice" },
  bad: { scale },
  good: {
    scale: `${scale}\nsource: {cite: practice of H. Marlow 2026, confidence: common-practice}`,
  },
};
