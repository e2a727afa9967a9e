/** The question of a visit: in words, or about one indicator that exists. */
import { expect, test } from "vitest";
import { questionOf, questionText, readCases } from "../../src/cases/index.ts";
import { folderInTurns, smallCase } from "./temporary.ts";

const inFolder = folderInTurns();

function read(question: string) {
  const folder = inFolder({
    "v/visit.yaml": `format: 1\nvisit: v\ndate: 2026-03-14\n${question}\n`,
    "v/x-1.yaml": smallCase("x-1"),
  });
  const { visits } = readCases([folder], { from: folder });
  const [visit] = visits;
  if (visit === undefined) throw new Error("no visit was read");
  return visit;
}

test("a sentence names no indicator", () => {
  const visit = read("question: Is there atrophy?");
  expect(visit.faults).toEqual([]);
  expect(questionOf(visit)).toBeUndefined();
  expect(questionText(visit.record)).toEqual({ text: "Is there atrophy?", path: ["question"] });
});

test("indicator, direction and words are read", () => {
  const visit = read("question: {indicator: snout-grade-2-up, direction: fewer, text: Better since March?}");
  expect(visit.faults).toEqual([]);
  expect(questionOf(visit)).toEqual({ indicator: "snout-grade-2-up", direction: "fewer" });
  expect(questionText(visit.record)).toEqual({ text: "Better since March?", path: ["question", "text"] });
});

test("without a direction it is how common it is", () => {
  expect(questionOf(read("question: {indicator: snout-grade-2-up}"))).toEqual({
    indicator: "snout-grade-2-up",
    direction: undefined,
  });
});

test.each([
  [
    "question: {indicator: snout-grade-2-upp}",
    4,
    'question.indicator: there is no indicator "snout-grade-2-upp". Did you mean snout-grade-2-up?',
  ],
  [
    "question: {indicator: snout-grade-2-up, direction: less}",
    4,
    'question.direction: "less" is not one of fewer, more, either.',
  ],
  ["question: {direction: fewer}", 4, /^question\.indicator is missing\. Write it: /],
  ["question: [snout-grade-2-up]", 4, /^question: a list cannot be read here\. Write /],
])("%s is answered at its line", (question, line, message) => {
  const visit = read(question);
  expect(visit.faults).toHaveLength(1);
  expect(visit.faults[0]?.line).toBe(line);
  if (typeof message === "string") expect(visit.faults[0]?.message).toBe(message);
  else expect(visit.faults[0]?.message).toMatch(message);
});
