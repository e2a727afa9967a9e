/** The one side of the body that free text names: undefined when it names none, or both. */
export function namedSide(text: string | undefined): "left" | "right" | undefined {
  const left = /\bleft\b/i.test(text ?? "");
  const right = /\bright\b/i.test(text ?? "");
  if (left === right || namesBoth(text)) return undefined;
  return left ? "left" : "right";
}

/** Whether free text says that both sides are meant. */
export const namesBoth = (text: string | undefined): boolean =>
  /\b(both|bilateral|each side)\b/i.test(text ?? "") ||
  (/\bleft\b/i.test(text ?? "") && /\bright\b/i.test(text ?? ""));
