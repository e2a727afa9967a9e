// npm run check:reference -- FILE.json: runs reference values, rows of {id, method, input, output}, against the library.
// Prints per method the rows, the worst relative error and the failures; ends with 1 when there is a failure.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { checkReference, tolerance } from "./reference/check.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const file = process.argv[2];

/** Ends with a message and 2: the question could not be asked. */
function refuse(message) {
  console.error(message);
  process.exit(2);
}

function readRows() {
  let content;
  try {
    content = JSON.parse(readFileSync(file, "utf8"));
  } catch (fault) {
    return refuse(`${file} cannot be read: ${fault.message}`);
  }
  const rows = Array.isArray(content) ? content : content?.rows;
  const fits = (row) =>
    typeof row?.method === "string" && row.input !== undefined && row.output !== undefined;
  if (!Array.isArray(rows) || rows.length === 0) return refuse(`${file} has no list of rows`);
  const odd = rows.findIndex((row) => !fits(row));
  if (odd >= 0) return refuse(`${file}: row ${odd + 1} needs method, input and output`);
  return rows;
}

if (file === undefined) refuse("usage: npm run check:reference -- FILE.json");
const rows = readRows();
if (!existsSync(join(root, "dist/statistics.js"))) await import("./setup.mjs");
const statistics = await import("../dist/statistics.js");
const results = checkReference(statistics, rows);

const width = Math.max(6, ...results.map(({ method }) => method.length));
console.log(
  `${"method".padEnd(width)}  ${"rows".padStart(5)}  ${"worst error".padStart(11)}  allowed  failures`,
);
for (const { method, rows: count, worst, failures, withdrawn } of results) {
  const error = withdrawn ? "withdrawn" : worst === null ? "not covered" : worst.toExponential(1);
  const allowed = tolerance(method).toExponential(0);
  console.log(
    `${method.padEnd(width)}  ${String(count).padStart(5)}  ${error.padStart(11)}  ${allowed.padStart(7)}  ${String(failures.length).padStart(8)}`,
  );
}
const failures = results.flatMap(({ failures }) => failures);
for (const { id, reason } of failures.slice(0, 50)) console.log(`${id ?? "row without id"}: ${reason}`);
const withheld = results.flatMap((result) => result.withheld);
if (withheld.length > 0)
  console.log(`An interval without width is wanted, and the library gives none: ${withheld.join(", ")}`);
if (failures.length > 50) console.log(`and ${failures.length - 50} more`);
console.log(`${rows.length} rows, ${failures.length} failures`);
process.exitCode = failures.length === 0 ? 0 : 1;
