/** Notes: one line of trade words to entries of a case. */
export { joined } from "./joined.ts";
export { type Misread, readNote, type Told } from "./read-note.ts";
