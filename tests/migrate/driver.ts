/** `carcase migrate`, as it will be called when there is a format 2. */
import { migrate } from "../../src/commands/migrate.ts";
import { Run } from "../../src/commands/run.ts";
import { toTwo } from "./to-two.ts";

const args = process.argv.slice(2);
const paths = args.filter((one) => !one.startsWith("-"));
const options = {
  format: "text",
  color: false as const,
  ...(args.includes("--dry-run") && { dryRun: true as const }),
};
process.exitCode = migrate(new Run(paths.length === 0 ? ["."] : paths, options), [toTwo], 2);
