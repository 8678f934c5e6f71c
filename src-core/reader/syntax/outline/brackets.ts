/** For each token the index of the bracket that closes or opens it; -1 for other tokens and unmatched brackets. */
export interface Brackets {
  readonly partner: Int32Array;
  /** The deepest nesting met. */
  readonly depth: number;
}

const closers: Readonly<Record<string, string>> = { "(": ")", "[": "]", "{": "}" };

/**
 * Pairs the brackets of a chunk. A brace closes what stands open inside it, so a missing parenthesis is felt
 * no further than the block it stands in.
 */
export function matchBrackets(texts: readonly string[]): Brackets {
  const partner = new Int32Array(texts.length).fill(-1);
  const open: number[] = [];
  let braces = 0;
  let depth = 0;
  for (let index = 0; index < texts.length; index += 1) {
    const text = texts[index] ?? "";
    if (closers[text] !== undefined) {
      open.push(index);
      if (text === "{") braces += 1;
      depth = Math.max(depth, open.length);
    } else if (text === ")" || text === "]" || text === "}") {
      if (text === "}" && braces === 0) continue;
      const opener = openerFor(texts, open, text);
      if (opener === undefined) continue;
      if (text === "}") braces -= 1;
      partner[opener] = index;
      partner[index] = opener;
    }
  }
  return { partner, depth };
}

function openerFor(texts: readonly string[], open: number[], closer: string): number | undefined {
  const top = open[open.length - 1];
  if (top === undefined) return undefined;
  if (closers[texts[top] ?? ""] === closer) return open.pop();
  if (closer !== "}") {
    // `( [ )`: the bracket in between was left open, unless a brace lies between too.
    const below = open[open.length - 2];
    if (below === undefined || texts[top] === "{" || closers[texts[below] ?? ""] !== closer) return undefined;
    open.length -= 2;
    return below;
  }
  const brace = lastBrace(texts, open);
  if (brace < 0) return undefined;
  const opener = open[brace];
  open.length = brace;
  return opener;
}

function lastBrace(texts: readonly string[], open: readonly number[]): number {
  for (let index = open.length - 1; index >= 0; index -= 1) {
    if (texts[open[index] ?? -1] === "{") return index;
  }
  return -1;
}
