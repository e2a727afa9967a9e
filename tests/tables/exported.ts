/** Exports made in a test, and read back. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { asyncBufferFromFile, parquetMetadataAsync, parquetReadObjects } from "hyparquet";
import { carcase } from "../end-to-end/run.ts";

export const key = "7c".repeat(32);

/** Exports, and fails where that does. */
export function exported(paths: readonly string[], folder: string, ...options: readonly string[]): string {
  const { code, err } = carcase(["export", "-q", ...paths, "-o", folder, ...options]);
  if (code !== 0) throw new Error(err);
  return folder;
}

export const filesBelow = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();

export const csvRowsOf = (file: string): Record<string, string>[] =>
  parse(readFileSync(file, "utf8"), { columns: true });

/** All that a folder of tables says, without compression: names of files, contents, metadata. */
export async function saidIn(folder: string): Promise<string> {
  const said: string[] = [];
  for (const file of filesBelow(folder)) {
    said.push(file.slice(folder.length));
    if (file.endsWith(".parquet")) {
      const buffer = await asyncBufferFromFile(file);
      const metadata = await parquetMetadataAsync(buffer);
      said.push(JSON.stringify([metadata, await parquetReadObjects({ file: buffer })], withBigInts));
      // What stands there as it is, too: statistics, dictionaries.
      said.push(readFileSync(file, "latin1"));
    } else said.push(readFileSync(file, "utf8"));
  }
  return said.join("\n");
}

const withBigInts = (_: string, value: unknown): unknown =>
  typeof value === "bigint"
    ? String(value)
    : value instanceof Uint8Array
      ? Buffer.from(value).toString()
      : value;
