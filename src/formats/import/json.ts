/** What a table makes, for scripts. */
import type { Tally } from "../../tally/index.ts";
import { outputJson } from "../page/json.ts";
import { portablePath } from "../page/portable-path.ts";

export const importJson = ({ said, cases, visit }: Tally): string =>
  outputJson("import", 1, {
    read: said,
    visit: visit === undefined ? null : { file: portablePath(visit.file), text: visit.text },
    cases: cases.map(({ line, file, id, tag, text }) => ({
      line,
      file: portablePath(file),
      case: id,
      tag: tag === "" ? null : tag,
      text,
    })),
  });
