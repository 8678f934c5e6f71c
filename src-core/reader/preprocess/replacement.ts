import type { WorkToken } from "../lexer/lexed-file.ts";

interface ItemBasis {
  /** The token as it stands in the body: the name of the parameter, the `#`, or the token itself. */
  readonly token: WorkToken;
  /** The `##` behind it. */
  readonly paste: WorkToken | undefined;
}

/** One element of a macro's body (C11 6.10.3.1 to 6.10.3.3). */
export type ReplacementItem = ItemBasis &
  (
    | { readonly kind: "token" }
    /** `raw`: beside `##`, so that the argument is taken unexpanded. */
    | { readonly kind: "parameter"; readonly index: number; readonly raw: boolean }
    | { readonly kind: "stringify"; readonly index: number }
    /** `__VA_OPT__( ... )`, with `#` before it when `stringified`. */
    | { readonly kind: "optional"; readonly items: readonly ReplacementItem[]; readonly stringified: boolean }
  );

export interface ReplacementResult {
  /** Undefined where the body has neither operators nor parameters. */
  readonly items: readonly ReplacementItem[] | undefined;
  readonly problem: { readonly token: WorkToken; readonly message: string } | undefined;
}

/** Name of the parameter that collects the rest of the arguments, as the body spells it. */
function restName(parameters: readonly string[]): string | undefined {
  const last = parameters.at(-1);
  if (last === "...") return "__VA_ARGS__";
  return last?.endsWith("...") ? last.slice(0, -3) : undefined;
}

/** Recognises operators and parameters in a body. `parameters` is undefined for an object macro. */
export function readReplacement(
  body: readonly WorkToken[],
  parameters: readonly string[] | undefined,
): ReplacementResult {
  return new ReplacementReader(body, parameters).read();
}

class ReplacementReader {
  private readonly body: readonly WorkToken[];
  private readonly isFunction: boolean;
  private readonly isVariadic: boolean;
  private readonly indexes = new Map<string, number>();
  private problem: ReplacementResult["problem"];

  constructor(body: readonly WorkToken[], parameters: readonly string[] | undefined) {
    this.body = body;
    this.isFunction = parameters !== undefined;
    const rest = parameters === undefined ? undefined : restName(parameters);
    this.isVariadic = rest !== undefined;
    parameters?.forEach((name, index) => {
      this.indexes.set(name, index);
    });
    if (rest !== undefined && parameters !== undefined) this.indexes.set(rest, parameters.length - 1);
  }

  read(): ReplacementResult {
    const items = this.items(0, this.body.length);
    const isPlain = items.every((item) => item.kind === "token" && item.paste === undefined);
    return { items: isPlain && this.problem === undefined ? undefined : items, problem: this.problem };
  }

  private items(from: number, to: number): readonly ReplacementItem[] {
    const items: ReplacementItem[] = [];
    let index = from;
    let isPasted = false;
    while (index < to) {
      const token = this.body[index];
      if (token === undefined) break;
      if (isPasteOperator(token)) {
        this.fail(token, "## needs a token on both of its sides.");
        index += 1;
        continue;
      }
      const { item, end } = this.item(token, index, to);
      const operator = this.body[end];
      const paste = operator !== undefined && end < to && isPasteOperator(operator) ? operator : undefined;
      const isRaw = isPasted || paste !== undefined;
      items.push(item.kind === "parameter" ? { ...item, paste, raw: isRaw } : { ...item, paste });
      isPasted = paste !== undefined;
      index = paste === undefined ? end : end + 1;
      if (paste !== undefined && index >= to) this.fail(paste, "## needs a token on both of its sides.");
    }
    return items;
  }

  private item(token: WorkToken, index: number, to: number): { item: ReplacementItem; end: number } {
    const plain = { item: { kind: "token", token, paste: undefined } as const, end: index + 1 };
    if (this.isFunction && token.kind === "punctuator" && (token.text === "#" || token.text === "%:")) {
      const operand = this.body[index + 1];
      const parameter = operand === undefined ? undefined : this.indexes.get(operand.text);
      if (parameter !== undefined) {
        return { item: { kind: "stringify", token, index: parameter, paste: undefined }, end: index + 2 };
      }
      if (operand !== undefined && this.isOptional(operand, index + 1)) {
        return this.optional(token, index + 1, to) ?? plain;
      }
      this.fail(token, "# in a macro with parameters needs one of them behind it.");
      return plain;
    }
    if (token.kind !== "identifier") return plain;
    const parameter = this.indexes.get(token.text);
    if (parameter !== undefined) {
      const item = { kind: "parameter", token, index: parameter, raw: false, paste: undefined } as const;
      return { item, end: index + 1 };
    }
    return (this.isOptional(token, index) ? this.optional(token, index, to) : undefined) ?? plain;
  }

  private isOptional(token: WorkToken, index: number): boolean {
    return this.isVariadic && token.text === "__VA_OPT__" && this.body[index + 1]?.text === "(";
  }

  /** `__VA_OPT__ ( ... )` whose name stands at `index`; `token` is that name or the `#` before it. */
  private optional(
    token: WorkToken,
    index: number,
    to: number,
  ): { item: ReplacementItem; end: number } | undefined {
    let depth = 0;
    for (let end = index + 1; end < to; end += 1) {
      const text = this.body[end]?.text;
      if (text === "(") depth += 1;
      if (text === ")") depth -= 1;
      if (depth > 0) continue;
      const items = this.items(index + 2, end);
      const stringified = token.text !== "__VA_OPT__";
      return { item: { kind: "optional", token, items, stringified, paste: undefined }, end: end + 1 };
    }
    this.fail(token, "__VA_OPT__( is not closed in this macro.");
    return undefined;
  }

  private fail(token: WorkToken, message: string): void {
    this.problem ??= { token, message };
  }
}

function isPasteOperator(token: WorkToken): boolean {
  return token.kind === "punctuator" && (token.text === "##" || token.text === "%:%:");
}
