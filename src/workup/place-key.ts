/** A place in a record as one word, to know it again. */
import { formatPath, type Path } from "../cases/index.ts";
import type { Subject } from "../patterns/index.ts";

export const placeKey = ({ subject, path }: { readonly subject: Subject; readonly path: Path }): string =>
  `${subject.file} ${formatPath(path)}`;
