/** Text that YAML reads as it stands, in braces too; any other is put in quotes. */
const plain =
  /^(?:[A-Za-z][\w .°/-]*[\w°]|[A-Za-z]|-?\d+(?:\.\d+)?(?: x \d+(?:\.\d+)?)* (?:min|h|d|wk|mo|a|kg|g|°C|mm|cm|ml|l|%))$/u;
const day = /^\d{4}-\d{2}-\d{2}(?:T\d{2}:\d{2})?$/;
const otherwise = /^(?:y|n|yes|no|on|off|true|false|null)$/i;

export const isPlainText = (text: string): boolean =>
  (plain.test(text) || day.test(text)) && !otherwise.test(text);
