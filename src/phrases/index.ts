/** Notes: one line of trade words to entries of a case. */
export { type Joined, joined } from "./joined.ts";
export { type Misread, type ReadNote, readNote, type Told } from "./read-note.ts";
