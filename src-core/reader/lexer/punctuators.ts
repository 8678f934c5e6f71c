/** Punctuators of C11 6.4.6 and C++20 [lex.operators], longest first for each first character. */
const PUNCTUATORS = [
  ...["%:%:", "...", "<<=", ">>=", "->*", "<=>"],
  ...["<:", ":>", "<%", "%>", "%:", "->", "++", "--", "<<", ">>", "<=", ">=", "==", "!=", "&&", "||"],
  ...["*=", "/=", "%=", "+=", "-=", "&=", "^=", "|=", "##", "::", ".*"],
  ...["[", "]", "(", ")", "{", "}", ".", "&", "*", "+", "-", "~", "!", "/", "%", "<", ">", "^", "|"],
  ...["?", ":", ";", "=", ",", "#", "@"],
] as const;

const BY_FIRST: (readonly string[] | undefined)[] = Array.from({ length: 128 }, (_, code) => {
  const matches = PUNCTUATORS.filter((text) => text.charCodeAt(0) === code);
  return matches.length > 0 ? matches : undefined;
});

/** The longest punctuator that stands at `position`, or undefined. */
export function punctuatorAt(text: string, position: number): string | undefined {
  const candidates = BY_FIRST[text.charCodeAt(position)];
  if (candidates === undefined) return undefined;
  for (const candidate of candidates) {
    if (candidate.length === 1 || text.startsWith(candidate, position)) return candidate;
  }
  return undefined;
}
