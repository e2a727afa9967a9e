/** The one form in which the paths of a run are shown, whichever way a file was reached. */
import { isAbsolute, join, relative, resolve, sep } from "node:path";

/**
 * A file in or below the folder that the run started from is shown from there. Any other is shown as the path that led
 * to it was written, and where none did (settings, a farm above it), from the starting folder as well, unless absolute
 * paths were written.
 */
export class ShownPaths {
  readonly #from: string;
  readonly #below: string;
  readonly #asked: readonly { readonly written: string; readonly location: string }[];

  /** @param from the folder that the run started from; @param asked paths as they were written */
  constructor(from: string, asked: readonly string[]) {
    this.#from = resolve(from);
    this.#below = this.#from.endsWith(sep) ? this.#from : this.#from + sep;
    // The nearest of several paths that lead to a file comes first, whatever was asked for first.
    this.#asked = [...asked]
      .sort()
      .map((written) => ({ written, location: resolve(from, written) }))
      .sort((a, b) => b.location.length - a.location.length);
  }

  show(location: string): string {
    // As `relative` says, for all but a few.
    if (location.startsWith(this.#below)) return location.slice(this.#below.length);
    const inside = relative(this.#from, location);
    if (isInside(inside)) return inside || ".";
    for (const one of this.#asked) {
      const rest = relative(one.location, location);
      if (isInside(rest)) return join(one.written, rest);
    }
    return this.#asked.some(({ written }) => isAbsolute(written)) ? location : inside;
  }
}

/** Whether a relative path stays in its folder; a name may begin with two points. */
export const isInside = (path: string): boolean =>
  path !== ".." && !path.startsWith(`..${sep}`) && !isAbsolute(path);
