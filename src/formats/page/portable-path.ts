/** Paths of files as other programs want them, the same on every machine. */
import { isAbsolute, sep } from "node:path";
import { pathToFileURL } from "node:url";

/** With `/` between folders and no `./` in front. */
export const portablePath = (file: string): string =>
  file
    .split(sep)
    .join("/")
    .replace(/^(?:\.\/)+/, "");

/** A relative reference, percent-encoded; an absolute path becomes a `file:` address. */
export function fileUri(file: string): string {
  // Half a character cannot be encoded.
  const sound = file.replaceAll(/\p{Cs}/gu, "\ufffd");
  if (isAbsolute(sound)) return pathToFileURL(sound).href;
  return portablePath(sound).split("/").map(encodeURIComponent).join("/");
}
