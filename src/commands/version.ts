/** The version of the package, put in by the build. */
declare const __VERSION__: string;

export const version = __VERSION__;
