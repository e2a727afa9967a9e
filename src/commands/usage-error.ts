/** Something the user can put right on the command line: one line, exit code 2. */
export class UsageError extends Error {}
