/** From one version of the format to the next: what changes, and how a file is written anew. */
export { migrateText, stepText } from "./migrate-text.ts";
export { type Migration, migrations, type Step } from "./migration.ts";
