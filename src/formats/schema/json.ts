/** The schemas for editors, for scripts. */
import { schemaLine } from "../../schemas/index.ts";
import { outputJson } from "../page/json.ts";
import type { ListedSchema } from "./text.ts";

export const schemaListJson = (schemas: readonly ListedSchema[]): string =>
  outputJson("schema", 1, {
    schemas: schemas.map(({ path, ...one }) => ({
      ...one,
      line: path === undefined ? null : schemaLine(path),
    })),
  });
