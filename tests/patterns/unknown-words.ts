/** Words of a condition that do not exist in the case format. */
import { vocabulary } from "../../src/generated/knowledge.ts";
import { alarmSigns, type Condition, organById } from "../../src/knowledge/index.ts";

const { signs: _signs, ...words } = vocabulary;
const signs = Object.entries(vocabulary.signs).flatMap(([family, list]) => [family, ...list.words]);

export function unknownWords(condition: Condition): string[] {
  const { all = [], any = [], none = [], at_least, pigs, finding } = condition;
  const inner = [
    ...all,
    ...any,
    ...none,
    ...(at_least?.of ?? []),
    ...(pigs === undefined ? [] : [pigs.with]),
  ];
  const described = Object.entries({ ...finding?.with, ...finding?.unless });
  return [
    ...inner.flatMap(unknownWords),
    ...(finding?.organs ?? []).filter((id) => organById(id) === undefined),
    ...(finding?.process ?? []).filter((word) => !vocabulary.process.includes(word)),
    ...described.flatMap(([key, list]) =>
      list.filter((word) => !(words as Record<string, readonly string[]>)[key]?.includes(word)),
    ),
    ...(condition.grade === undefined || organById(condition.grade.organ) !== undefined ? [] : ["grade"]),
    ...[condition.signs, condition.herd_signs, condition.several]
      .flatMap((list) => list ?? [])
      .filter((word) => !signs.includes(word)),
    ...(condition.alarm_check ?? []).filter((word) => !alarmSigns.has(word)),
  ];
}
