export function runScore(_p: readonly string[], _o: unknown): number {
  return 2;
}
