import { makeToken, type WorkToken } from "../lexer/lexed-file.ts";
import type { Language } from "../lexer/scanner.ts";
import type { MacroUse } from "../tokens.ts";
import type { Macro } from "./macro.ts";
import { pasteTokens } from "./paste.ts";
import type { ReplacementItem } from "./replacement.ts";
import { stringifyTokens } from "./stringify.ts";

/** One argument of a call, expanded when first asked for. */
export interface Argument {
  readonly raw: readonly WorkToken[];
  /** The call ends before it: only the variable argument can be left out. */
  readonly isAbsent: boolean;
  expanded(): readonly WorkToken[];
}

export interface Call {
  readonly macro: Macro;
  readonly use: MacroUse;
  readonly name: WorkToken;
  readonly arguments: readonly Argument[];
  readonly language: Language;
  /** Counts work done; false once there was too much of it. */
  charge(tokens: number): boolean;
  badPaste(operator: WorkToken, left: WorkToken, right: WorkToken): void;
}

/** A copy of `token` with other spacing and, where it stands in a body, the use that brought it. */
export function copyToken(token: WorkToken, space: boolean, use: MacroUse | undefined): WorkToken {
  const { file, start, end, kind, text } = token;
  const copy = makeToken(file, start, end, kind, text, space, use);
  const { painted, keepsSpace } = token;
  return painted || keepsSpace ? { ...copy, painted, keepsSpace } : copy;
}

/** The replacement of one call: arguments put in, `#` and `##` carried out, not rescanned yet. */
export function substitute(call: Call): readonly WorkToken[] {
  const { macro, use, name } = call;
  if (macro.items === undefined) {
    call.charge(macro.body.length);
    return macro.body.map((token, index) => copyToken(token, index === 0 ? name.space : token.space, use));
  }
  return new Substitution(call).run(macro.items);
}

class Substitution {
  private readonly call: Call;
  private readonly out: WorkToken[] = [];
  /** White space that an empty argument leaves to the token behind it. */
  private carried = false;
  private sawEmpty = false;
  private isFirst = true;
  /** The last operand of a `##` was empty, so that a `##` behind joins nothing to what stands before. */
  private endsEmpty = false;

  constructor(call: Call) {
    this.call = call;
  }

  run(items: readonly ReplacementItem[]): readonly WorkToken[] {
    let paste: WorkToken | undefined;
    // The operand on the left of `paste` was empty (C11 calls it a placemarker).
    let isLeftEmpty = false;
    for (const item of items) {
      this.endsEmpty = false;
      const tokens = this.tokensOf(item);
      if (paste === undefined) this.append(tokens, this.isFirst ? this.call.name.space : item.token.space);
      else if (isLeftEmpty) this.append(tokens, false);
      else if (this.isRestAfterComma(item)) this.appendRest(item, tokens);
      else if (tokens.length > 0) this.join(paste, tokens);
      isLeftEmpty = this.endsEmpty || (tokens.length === 0 && (paste === undefined || isLeftEmpty));
      this.endsEmpty = isLeftEmpty && paste !== undefined;
      paste = item.paste;
      this.isFirst = false;
      if (!this.call.charge(tokens.length + 1)) break;
    }
    return this.out;
  }

  private append(tokens: readonly WorkToken[], space: boolean): void {
    const first = tokens[0];
    if (first === undefined) {
      this.carried ||= space;
      this.sawEmpty = true;
      return;
    }
    const wanted = space || this.carried || first.keepsSpace;
    const placed = first.space === wanted ? first : copyToken(first, wanted, first.macro);
    const isBehindEmpty = this.sawEmpty && wanted && this.out.length === 0;
    this.out.push(isBehindEmpty ? { ...placed, keepsSpace: true } : placed);
    this.carried = false;
    for (let index = 1; index < tokens.length; index += 1) {
      const token = tokens[index];
      if (token !== undefined) this.out.push(token);
    }
  }

  /** GNU: `, ## __VA_ARGS__` is no paste. It drops the comma where the rest is not given at all. */
  private appendRest(item: ReplacementItem, tokens: readonly WorkToken[]): void {
    if (item.kind === "parameter" && this.call.arguments[item.index]?.isAbsent) this.out.pop();
    else this.append(tokens, tokens[0]?.space ?? false);
  }

  private join(operator: WorkToken, tokens: readonly WorkToken[]): void {
    const left = this.out.pop();
    const [right, ...rest] = tokens;
    if (left === undefined || right === undefined) {
      for (const token of tokens) this.out.push(token);
      return;
    }
    const { use, language } = this.call;
    this.call.charge((left.text.length + right.text.length) >> 2);
    const joined = pasteTokens(left, right, operator, use, language);
    if (joined === undefined) {
      this.call.badPaste(operator, left, right);
      this.out.push(left, right);
    } else this.out.push(joined);
    for (const token of rest) this.out.push(token);
  }

  private tokensOf(item: ReplacementItem): readonly WorkToken[] {
    const { use } = this.call;
    switch (item.kind) {
      case "token":
        return [copyToken(item.token, item.token.space, use)];
      case "parameter": {
        const argument = this.call.arguments[item.index];
        if (argument === undefined) return [];
        return item.raw ? argument.raw : argument.expanded();
      }
      case "stringify": {
        const raw = this.call.arguments[item.index]?.raw ?? [];
        let length = 0;
        for (const token of raw) length += token.text.length;
        return this.call.charge(length >> 2) ? [stringifyTokens(raw, item.token, item.token.space, use)] : [];
      }
      case "optional": {
        const rest = this.call.arguments.at(-1)?.expanded() ?? [];
        const inner = new Substitution(this.call);
        const tokens = rest.length > 0 ? inner.run(item.items) : [];
        this.endsEmpty = inner.endsEmpty && !item.stringified;
        return item.stringified ? [stringifyTokens(tokens, item.token, item.token.space, use)] : tokens;
      }
    }
  }

  private isRestAfterComma(item: ReplacementItem): boolean {
    if (item.kind !== "parameter" || !this.call.macro.isVariadic) return false;
    return item.index === this.call.arguments.length - 1 && this.out.at(-1)?.text === ",";
  }
}
