/** Text as it stands in HTML and SVG, and in an attribute between double quotes. */
export const escapedMarkup = (text: string): string =>
  text.replaceAll(/[&<>"]/g, (char) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;" })[char] ?? "&quot;");
