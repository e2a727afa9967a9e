import type { Case } from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import { affirmed, occurrences } from "../../../notes/index.ts";
import { samplesOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const poolUnnamed: CaseRule = {
  id: "pool-unnamed",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "A sample that holds material from other pigs names them under pooled_with.",
  protects:
    "A pool described only in words is filed as the result of one pig, and a positive is put down to the wrong one.",
  lookAlike:
    "A pool of several organs of this pig, or a number that counts millilitres, pieces or days: both are passed, and so is not pooled.",
  source: sampleRules.pools.source,
  bad: {
    case: 'samples: [{id: 01-A, from: blood, site: "pooled with 02 and 03", into: edta-tube, for: [pcr]}]',
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
  },
  good: {
    case: "samples: [{id: 01-A, from: blood, site: not pooled with 02, into: edta-tube, for: [pcr]}]",
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
  },
  check(one, report) {
    if (one.record.samples === undefined) return;
    const { words } = sampleRules.pools;
    for (const { sample, index } of samplesOf(one))
      for (const key of ["site", "note"] as const) {
        const text = sample.pooled_with === undefined ? sample[key] : undefined;
        const [word] = affirmed(text, words);
        const other = word === undefined ? undefined : otherIn(text ?? "", one);
        if (word !== undefined && other !== undefined)
          report(
            `samples[${index}].${key}: "${word.text}" names other pigs ("${other}"), but the sample is filed under this one alone. Write pooled_with: and their case ids, or bag each pig separately.`,
            ["samples", index, key],
          );
      }
  },
};

/** Who else is named: a word for other pigs, or one of them; a number that counts or measures something is no pig. */
function otherIn(text: string, one: Case): string | undefined {
  const { others, amounts } = sampleRules.pools;
  const [word] = occurrences(text, others);
  if (word !== undefined) return word.text;
  return occurrences(text, namesOfOthers(one)).find(
    ({ text: name, index, end }) =>
      !isAmount(text.slice(end), amounts) && isName(name, text.slice(0, index), text.slice(end)),
  )?.text;
}

/** No part of a date; and a number as people say it, `2` for 02, only where a pig is named. */
const isName = (name: string, before: string, after: string): boolean =>
  !/\d[./-]$/.test(before.replace(/(?<!\d)\d{1,2}-$/, "")) &&
  !/^-\d/.test(after) &&
  (!/^[1-9]\d?$/.test(name) || namesPig(before));

/** Whether a text goes on to a pig: `with`, `pig no.`, `+ #`. */
function namesPig(before: string): boolean {
  const gap = /(?<![\s.#])[\s.#]*$/u.exec(before);
  const said = before.slice(0, gap?.index);
  return (
    gap?.[0].includes("#") === true || /(?:\b(?:with|mit|avec|as|als|pig|and|und|no|nr)|[+,])$/iu.test(said)
  );
}

const isAmount = (after: string, amounts: readonly string[]): boolean =>
  /^[.,:]\d/.test(after) ||
  occurrences(after, amounts).some(({ index }) => after.slice(0, index).trim() === "");

/** Ids of the other cases of the visit, and what people call them: the number at the end. */
function namesOfOthers({ id, visit }: Case): string[] {
  const ids = (visit?.record.cases ?? []).filter((other) => other !== id);
  const numbers = ids.flatMap((other) => /(?<!\d)\d+$/.exec(other)?.[0] ?? []);
  return [...ids, ...numbers, ...numbers.map((number) => String(Number(number)))];
}
