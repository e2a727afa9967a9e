/** Which program this is, put in by the build. */
declare const __VERSION__: string;
declare const __SOURCES__: string;

/** The version of the package. */
export const version = __VERSION__;

/** A digest of what the program was built from: code, schemas and knowledge. */
export const sources = __SOURCES__;
