import { makeToken, type WorkToken } from "../lexer/lexed-file.ts";
import type { Language } from "../lexer/scanner.ts";
import type { MacroUse } from "../tokens.ts";
import { type Expansion, type Gap, isSpaced, pastEnd, pastName } from "./gap.ts";
import type { Macro } from "./macro.ts";
import { pasteTokens } from "./paste.ts";
import type { ReplacementItem } from "./replacement.ts";
import { stringifyTokens } from "./stringify.ts";

/** One argument of a call, expanded when first asked for. */
export interface Argument {
  readonly raw: readonly WorkToken[];
  /** The call ends before it: only the variable argument can be left out. */
  readonly isAbsent: boolean;
  expanded(): Expansion;
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
  return token.painted ? { ...copy, painted: true } : copy;
}

/** The replacement of one call: arguments put in, `#` and `##` carried out, not rescanned yet. */
export function substitute(call: Call): Expansion {
  const { macro, use } = call;
  if (macro.items === undefined) {
    call.charge(macro.body.length);
    const tokens = macro.body.map((token, index) => copyToken(token, index > 0 && token.space, use));
    return { tokens, endsInSpace: false };
  }
  return new Substitution(call).run(macro.items);
}

class Substitution {
  private readonly call: Call;
  private readonly out: WorkToken[] = [];
  /** Between the last token of `out` and the next. */
  private gap: Gap = "tight";
  private isFirst = true;
  /** The last operand of a `##` was empty, so that a `##` behind joins nothing to what stands before. */
  private endsEmpty = false;

  constructor(call: Call) {
    this.call = call;
  }

  run(items: readonly ReplacementItem[]): Expansion {
    let paste: WorkToken | undefined;
    // The operand on the left of `paste` was empty (C11 calls it a placemarker).
    let isLeftEmpty = false;
    for (const item of items) {
      this.endsEmpty = false;
      const isArgument = item.kind !== "token";
      if (isArgument && paste === undefined && !this.isFirst) this.gap = pastName(this.gap, item.token.space);
      const { tokens, endsInSpace } = this.expansionOf(item);
      if (paste === undefined || isLeftEmpty) this.append(tokens);
      else if (this.isRestAfterComma(item)) this.appendRest(item, tokens);
      else if (tokens.length > 0) this.join(paste, tokens);
      if (endsInSpace) this.gap = "wide";
      if (isArgument && item.paste === undefined) this.gap = pastEnd(this.gap);
      isLeftEmpty = this.endsEmpty || (tokens.length === 0 && (paste === undefined || isLeftEmpty));
      this.endsEmpty = isLeftEmpty && paste !== undefined;
      paste = item.paste;
      this.isFirst = false;
      if (!this.call.charge(tokens.length + 1)) break;
    }
    return { tokens: this.out, endsInSpace: this.gap === "wide" };
  }

  private append(tokens: readonly WorkToken[]): void {
    const [first, ...rest] = tokens;
    if (first === undefined) return;
    const space = first.space || this.gap === "wide";
    this.out.push(first.space === space ? first : copyToken(first, space, first.macro));
    for (const token of rest) this.out.push(token);
    this.gap = "open";
  }

  /** GNU: `, ## __VA_ARGS__` is no paste. It drops the comma where the rest is not given at all. */
  private appendRest(item: ReplacementItem, tokens: readonly WorkToken[]): void {
    if (item.kind === "parameter" && this.call.arguments[item.index]?.isAbsent) this.out.pop();
    else this.append(tokens);
  }

  private join(operator: WorkToken, tokens: readonly WorkToken[]): void {
    const left = this.out.pop();
    const [right, ...rest] = tokens;
    this.gap = "open";
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

  private expansionOf(item: ReplacementItem): Expansion {
    const { use } = this.call;
    switch (item.kind) {
      case "token":
        return bare([copyToken(item.token, isSpaced(this.gap, item.token.space), use)]);
      case "parameter": {
        const argument = this.call.arguments[item.index];
        if (argument === undefined) return bare([]);
        return item.raw ? bare(this.behindGap(argument.raw)) : argument.expanded();
      }
      case "stringify": {
        const raw = this.call.arguments[item.index]?.raw ?? [];
        let length = 0;
        for (const token of raw) length += token.text.length;
        return bare(this.call.charge(length >> 2) ? [stringifyTokens(raw, item.token, use)] : []);
      }
      case "optional": {
        const rest = this.call.arguments.at(-1)?.expanded().tokens ?? [];
        const inner = new Substitution(this.call);
        const tokens = rest.length > 0 ? inner.run(item.items).tokens : [];
        this.endsEmpty = inner.endsEmpty && !item.stringified;
        return bare(item.stringified ? [stringifyTokens(tokens, item.token, use)] : tokens);
      }
    }
  }

  private behindGap(raw: readonly WorkToken[]): readonly WorkToken[] {
    const [first, ...rest] = raw;
    if (first === undefined) return raw;
    const space = isSpaced(this.gap, first.space);
    return first.space === space ? raw : [copyToken(first, space, first.macro), ...rest];
  }

  private isRestAfterComma(item: ReplacementItem): boolean {
    if (item.kind !== "parameter" || !this.call.macro.isVariadic) return false;
    return item.index === this.call.arguments.length - 1 && this.out.at(-1)?.text === ",";
  }
}

function bare(tokens: readonly WorkToken[]): Expansion {
  return { tokens, endsInSpace: false };
}
