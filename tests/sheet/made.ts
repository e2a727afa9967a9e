/** Pigs as they come to the table, for the tests of the sheet. */
import { openAlarmsOf } from "../../src/alarms/index.ts";
import { type Case, readCases } from "../../src/cases/index.ts";
import type { TablePig } from "../../src/sheet/index.ts";

export function caseOf(yaml: string): Case {
  const bytes = new TextEncoder().encode(`format: 1\ncase: pig-01\n${yaml}\n`);
  const { cases, unreadable } = readCases(["-"], { input: { bytes, name: "pig.yaml" } });
  const [one] = cases;
  if (one === undefined || one.faults.length + unreadable.length > 0)
    throw new Error(JSON.stringify([unreadable, one?.faults.map(({ message }) => message)]));
  return one;
}

export const tablePig = (yaml: string, beside: readonly Case[] = []): TablePig => {
  const one = caseOf(yaml);
  return { id: one.id, one, beside, alarms: openAlarmsOf({ cases: [one], visits: [] }) };
};
