/**
 * What a runner of continuous integration would obey in a log, made a text again. `::name` counts at the start of a line,
 * behind blanks and colours too; `##[name]` and its like count anywhere in it.
 */
const command = /(?=::)(?<=^(?:[^\S\n]|\u001b\[[\d;]*m)*)|(?=\[)(?<=##\w*)/gm;

/** Puts a backslash before it: a shell and Markdown read the text behind it as it was. */
export const withoutCommands = (text: string): string => text.replace(command, "\\");
