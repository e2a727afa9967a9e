/** Writes a seal behind all else that stands in a record: one fact a line, and no other line is touched. */
import { isDeepStrictEqual } from "node:util";
import { isKeyed } from "../cases/model/path.ts";
import { scalar } from "../cases/yaml/form.ts";
import { parseYaml } from "../cases/yaml/parse-yaml.ts";
import type { Seal } from "../seals/index.ts";
import { entryEnd } from "./with-value.ts";

/** @returns undefined where nothing can be added safely; what is given is proven by reading it anew */
export function withSeal(text: string, seal: Seal): string | undefined {
  const end = text.includes("\r\n") ? "\r\n" : "\n";
  const parsed = parseYaml(text);
  if (!parsed.ok) return undefined;
  const { document } = parsed;
  const { value } = document;
  if (!isKeyed(value)) return undefined;
  const before = value.seals;
  const lines = text.replace(/\r?\n$/, "").split(/\r?\n/);
  const isFirst = before === undefined;
  if (!isFirst && !Array.isArray(before)) return undefined;
  const key = document.whereKey(["seals"]).line - 1;
  const place = isFirst ? lines.length : entryEnd(lines, key, 0);
  const indent = isFirst ? "  " : (/^ *(?=- )/.exec(lines[key + 1] ?? "")?.[0] ?? "  ");
  const fresh = sealLines(seal).map((line, index) => `${indent}${index === 0 ? "- " : "  "}${line}`);
  const written = [...lines.slice(0, place), ...(isFirst ? ["seals:"] : []), ...fresh, ...lines.slice(place)];
  const after = `${written.join(end)}${end}`;
  const read = parseYaml(after);
  const expected = { ...value, seals: [...(before ?? []), seal] };
  return read.ok && isDeepStrictEqual(read.document.value, expected) ? after : undefined;
}

function sealLines({ by, at, because, files = {}, sha256, signature }: Seal): string[] {
  const named = Object.entries(files).map(([file, digest]) => `  ${scalar(file)}: "${digest}"`);
  return [
    `by: ${scalar(by)}`,
    `at: ${scalar(at)}`,
    ...(because === undefined ? [] : [`because: ${scalar(because)}`]),
    ...(named.length === 0 ? [] : ["files:", ...named]),
    `sha256: "${sha256}"`,
    ...(signature === undefined
      ? []
      : [
          "signature: |",
          ...signature
            .trimEnd()
            .split("\n")
            .map((line) => `  ${line}`),
        ]),
  ];
}
