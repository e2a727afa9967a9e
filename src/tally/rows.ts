/** The rows of a table as pigs: each cell a value at a path of its case. */
import type { Fault, Path } from "../cases/index.ts";
import { count } from "../words/listing.ts";
import type { ReadColumn } from "./columns.ts";
import type { Head } from "./head.ts";
import { type Cell, isFilled, noCell, type Table } from "./table.ts";
import { cellValue, isUnread, type Manner, type Value } from "./values.ts";

/** A value of a pig with the cell that says it. */
export interface Entry {
  readonly path: Path;
  readonly value: Value;
  readonly column: ReadColumn;
  readonly cell: Cell;
}

export interface Pig {
  readonly entries: readonly Entry[];
  readonly serial: Entry | undefined;
  readonly first: Cell;
}

/** Rows that hold no pig but the name of a sum of them. */
const totals =
  /^(?:sum|total|totals|mean|average|median|count|summe|gesamt|mittelwert|durchschnitt|suma|promedio)$/i;

export class Rows {
  readonly pigs: readonly Pig[];
  readonly faults: Fault[] = [];
  readonly said: string[] = [];

  constructor(table: Table, columns: readonly ReadColumn[], manner: Manner, head: Head) {
    let [blank, again] = [0, 0];
    const names = head.columns.map(({ cell }) => cell.text.toLowerCase());
    this.pigs = head.rows.flatMap((cells): Pig[] => {
      const first = cells.find(isFilled) ?? noCell;
      if (head.columns.every(({ column }, at) => (cells[column]?.text.toLowerCase() ?? "") === names[at])) {
        again++;
        return [];
      }
      const entries = columns.flatMap((column): Entry[] => {
        const cell = cells[column.column];
        if (cell === undefined || !isFilled(cell)) return [];
        const value = cellValue(cell, column, manner);
        if (isUnread(value)) {
          this.faults.push(table.fault(value.cell, `${column.head}: ${value.message}`));
          return [];
        }
        return [{ path: column.to.path, value, column, cell }];
      });
      const serial = entries.find(({ column }) => column.to.kind === "serial");
      const values = entries.filter((entry) => entry !== serial);
      if (values.length === 0 && cells.filter(isFilled).length <= 1) {
        blank++;
        return [];
      }
      if (totals.test(first.text)) {
        this.faults.push(
          table.fault(first, `"${first.text}" looks like a line of totals; take it out of the table`),
        );
        return [];
      }
      return [{ entries: values, serial, first }];
    });
    if (again > 0) this.said.push(`the head again in ${count(again, "line")}`);
    if (blank > 0) this.said.push(`${count(blank, "line")} left blank`);
    if (this.pigs.length === 0 && this.faults.length === 0)
      this.faults.push(
        table.fault(noCell, "no row below the head says anything of a pig; nothing is to be imported"),
      );
  }
}
