/** The tally of snouts and lungs: a row a pig. */
import { pathOf, valueAt } from "../cases/index.ts";
import { type Notice, noticesOf, type SheetFact, type TablePig } from "./pig-sheet.ts";
import type { Words } from "./words.ts";

export interface TallySheet {
  /** The visit, or nothing where there is none yet. */
  readonly of: string;
  readonly notices: readonly Notice[];
  readonly cautions: readonly string[];
  readonly facts: readonly SheetFact[];
  readonly rows: readonly { readonly number: string; readonly tag: string }[];
}

/** Cautions of a line on which snouts are sawn. */
const steps = ["before-knife", "skull-opened"] as const;

const section = pathOf("respiratory.turbinates.section");
const asText = (value: unknown): string | undefined => (typeof value === "string" ? value : undefined);

/** What all pigs share stands once, above the table; the pigs of several visits stand below each other. */
export function tallySheet(pigs: readonly TablePig[], words: Words): TallySheet {
  const [first] = pigs;
  const shared = (of: (pig: TablePig) => string | number | undefined): string => {
    const values = new Set(pigs.map((pig) => String(of(pig) ?? "")));
    return values.size === 1 ? ([...values][0] ?? "") : "";
  };
  const alarms = [
    ...new Map(
      pigs.flatMap((pig) => pig.alarms).map((one) => [`${one.id} ${one.pattern?.id}`, one]),
    ).values(),
  ];
  return {
    of: shared(({ one }) => one.visit?.id),
    notices: first === undefined ? [] : noticesOf(alarms, first.one.settings, words),
    cautions: steps.flatMap((step) => words.cautions(step)),
    facts: [
      { key: "farm", value: shared(({ one }) => one.farm?.id) },
      { key: "date", value: shared(({ one, date }) => date ?? one.visit?.record.date) },
      { key: "group", value: shared(({ one }) => one.record.pig?.group) },
      { key: "age", value: shared(({ one }) => one.record.pig?.age ?? one.ageClass) },
      {
        key: "examiner",
        value: shared(
          ({ one, examiner }) => examiner ?? one.record.examiner ?? one.visit?.record.veterinarian,
        ),
      },
      { key: "snout", value: shared(({ one }) => asText(valueAt(one.record, section))) },
      { key: "basis", value: shared(({ one }) => one.record.selection?.basis) },
      { key: "protocol", value: shared(({ one }) => one.protocol.id) },
    ],
    rows: tallyRows(pigs),
  };
}

/** Numbers as in the ids of the pigs. */
export const tallyRows = (pigs: readonly TablePig[]): TallySheet["rows"] =>
  pigs.map(({ id, one, tag }, index) => ({
    number: /\d{1,4}$/.exec(id)?.[0] ?? String(index + 1),
    tag: tag ?? String(one.record.pig?.tag ?? ""),
  }));
