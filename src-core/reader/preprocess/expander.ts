import type { Span } from "../../finding.ts";
import { makeToken, type WorkToken } from "../lexer/lexed-file.ts";
import type { Language } from "../lexer/scanner.ts";
import { type MacroUse, outermostUse } from "../tokens.ts";
import { ARGUMENT_DEPTH, EXPANDED_TOKENS } from "./budget.ts";
import { collectArguments } from "./call-arguments.ts";
import { type Expansion, type Gap, pastEnd, pastName } from "./gap.ts";
import type { Macro } from "./macro.ts";
import type { MacroTable } from "./macro-table.ts";
import { type Argument, copyToken, substitute } from "./substitute.ts";

/** Where tokens come from when no expansion is being read: a file, line by line. */
export interface TokenSource {
  next(mode: ReadMode): WorkToken | undefined;
  /** Puts the token that `next` gave last back. */
  unread(): void;
  /** Puts what is left of the line into a list, up to the first name of a macro. */
  plain(isMacro: (name: string) => boolean, into: WorkToken[]): void;
}

/** `peek`: looking for the parenthesis of a call; `collect`: inside its arguments. */
export type ReadMode = "text" | "peek" | "collect";

/** What the expansion asks of the unit and tells it. */
export interface ExpanderSurroundings {
  /** The value of a built-in macro; undefined for one that leaves nothing. */
  builtIn(macro: Macro, name: WorkToken): WorkToken | undefined;
  /** A use written in a file itself. */
  use(use: MacroUse): void;
  /** `kind` names problems of which one is enough. */
  problem(kind: string | undefined, span: Span, message: string): void;
}

interface Context extends Expansion {
  index: number;
  /** Reopened to calls when the context has been read. */
  readonly macro: Macro | undefined;
}

/**
 * Macro expansion (C11 6.10.3). A stack of token lists being read stands for nested rescanning: a macro is
 * closed to calls as long as its expansion is on the stack, and a name met meanwhile stays painted for good.
 */
export class Expander {
  readonly language: Language;
  private readonly table: MacroTable;
  private readonly surroundings: ExpanderSurroundings;
  private source: TokenSource | undefined;
  private readonly contexts: Context[] = [];
  private floor = 0;
  private depth = 0;
  private spent = 0;
  /** Between the last token read and the next. */
  private gap: Gap = "open";

  constructor(language: Language, table: MacroTable, surroundings: ExpanderSurroundings) {
    this.language = language;
    this.table = table;
    this.surroundings = surroundings;
  }

  /** Runs `body` with tokens coming from `source`; `gap` stands before the first. */
  readingFrom<T>(source: TokenSource | undefined, body: () => T, gap: Gap = "open"): T {
    const { source: outerSource, floor: outerFloor, gap: outerGap } = this;
    this.gap = gap;
    this.source = source;
    this.floor = this.contexts.length;
    try {
      return body();
    } finally {
      // Macros outlive the unit in the cache: none may stay closed to calls.
      this.closeContexts();
      this.source = outerSource;
      this.floor = outerFloor;
      this.gap = outerGap;
    }
  }

  /** Runs `body` with `tokens` and nothing behind them. */
  readingList<T>(tokens: readonly WorkToken[], body: () => T, gap: Gap = "open"): T {
    const withTokens = () => {
      this.push(tokens);
      return body();
    };
    return this.readingFrom(undefined, withTokens, gap);
  }

  private push(tokens: readonly WorkToken[]): void {
    this.contexts.push({ tokens, endsInSpace: false, index: 0, macro: undefined });
  }

  /** The next token, not expanded. */
  raw(mode: ReadMode = "text"): WorkToken | undefined {
    while (this.contexts.length > this.floor) {
      const top = this.contexts[this.contexts.length - 1];
      if (top === undefined) break;
      const token = top.tokens[top.index];
      if (token !== undefined) {
        top.index += 1;
        return token;
      }
      this.contexts.pop();
      if (top.macro !== undefined) {
        top.macro.isOpen = false;
        this.gap = top.endsInSpace ? "wide" : pastEnd(this.gap);
      }
    }
    return this.source?.next(mode);
  }

  /** Puts back the token that `raw` gave last. */
  private unread(): void {
    const top = this.contexts.length > this.floor ? this.contexts[this.contexts.length - 1] : undefined;
    if (top !== undefined && top.index > 0) top.index -= 1;
    else this.source?.unread();
  }

  /** The next token of the expanded text; undefined at the end. */
  expanded(): WorkToken | undefined {
    for (;;) {
      const token = this.raw();
      if (token === undefined) return undefined;
      const { gap } = this;
      this.gap = "open";
      const found = this.unlessEntered(token);
      if (found !== undefined) return spaced(found, gap);
      // Ends that were passed on the way to the call's parentheses belong to the call.
      this.gap = pastName(gap, token.space);
    }
  }

  /** Expands all of the source into a list. */
  expandInto(tokens: WorkToken[]): void {
    const isMacro = (name: string): boolean => this.table.get(name) !== undefined;
    for (let token = this.expanded(); token !== undefined; token = this.expanded()) {
      tokens.push(token);
      // Most of a text calls no macro.
      if (this.contexts.length === this.floor && this.gap === "open") this.source?.plain(isMacro, tokens);
    }
  }

  /** The token as it stays in the text; undefined where the expansion that it began is on the stack. */
  private unlessEntered(token: WorkToken): WorkToken | undefined {
    if (token.kind !== "identifier" || token.painted) return token;
    const macro = this.table.get(token.text);
    if (macro === undefined) return token;
    if (macro.isOpen) return { ...token, painted: true };
    return this.enter(token, macro) ? undefined : token;
  }

  /** All that is left, expanded. */
  rest(): WorkToken[] {
    const tokens: WorkToken[] = [];
    for (let token = this.expanded(); token !== undefined; token = this.expanded()) tokens.push(token);
    return tokens;
  }

  /** Puts the replacement of a call on the stack; false where the name is no call or cannot be expanded. */
  private enter(name: WorkToken, macro: Macro): boolean {
    if (this.spent > EXPANDED_TOKENS) return false;
    if (macro.builtIn !== undefined && macro.parameters === undefined) {
      const value = this.surroundings.builtIn(macro, name);
      this.push(value === undefined ? [] : [value]);
      return true;
    }
    if (macro.parameters === undefined) {
      this.replace(name, macro, [], name);
      return true;
    }
    return this.enterCall(name, macro, macro.parameters);
  }

  private enterCall(name: WorkToken, macro: Macro, parameters: readonly string[]): boolean {
    const open = this.raw("peek");
    if (open === undefined) return false;
    if (open.text !== "(" || open.kind !== "punctuator") {
      this.unread();
      return false;
    }
    const result = collectArguments(open, parameters, macro.isVariadic, () => {
      const token = this.raw("collect");
      const { gap } = this;
      this.gap = "open";
      return token === undefined ? undefined : spaced(token, gap);
    });
    this.charge(result.tokens.length);
    if (result.problem !== undefined) {
      this.surroundings.problem(undefined, outermostPlace(name), `${name.text}: ${result.problem}`);
      this.push(result.tokens);
      this.push([{ ...name, painted: true }]);
      return true;
    }
    if (macro.builtIn !== undefined) return true;
    const last = result.tokens[result.tokens.length - 1] ?? open;
    const rest = result.arguments.length - 1;
    const args = result.arguments.map((raw, index) =>
      this.argument(raw, result.isRestAbsent && index === rest),
    );
    this.replace(name, macro, args, last);
    return true;
  }

  private replace(name: WorkToken, macro: Macro, args: readonly Argument[], last: WorkToken): void {
    const use = this.useOf(name, macro, last);
    const expansion = substitute({
      macro,
      use,
      name,
      arguments: args,
      language: this.language,
      charge: (count) => this.charge(count),
      badPaste: (operator, left, right) => {
        const message = `## cannot join "${left.text}" and "${right.text}" into one token.`;
        this.surroundings.problem(undefined, outermostPlace({ ...operator, macro: use }), message);
      },
    });
    if (this.spent > EXPANDED_TOKENS) this.sayTooMuch(name);
    macro.isOpen = true;
    const { tokens, endsInSpace } = expansion;
    this.contexts.push({ tokens, endsInSpace, index: 0, macro });
  }

  private argument(raw: readonly WorkToken[], isAbsent: boolean): Argument {
    let expanded: Expansion | undefined;
    return {
      raw,
      isAbsent,
      expanded: () => {
        expanded ??= this.expandArgument(raw);
        return expanded;
      },
    };
  }

  private expandArgument(raw: readonly WorkToken[]): Expansion {
    if (!raw.some((token) => token.kind === "identifier")) return unexpanded(raw);
    if (this.depth >= ARGUMENT_DEPTH) {
      const [first] = raw;
      if (first !== undefined) {
        const message = `Macro arguments nest deeper than ${ARGUMENT_DEPTH} calls; the innermost stay unexpanded.`;
        this.surroundings.problem("argument depth", outermostPlace(first), message);
      }
      return unexpanded(raw);
    }
    this.depth += 1;
    const body = () => ({ tokens: this.rest(), endsInSpace: this.gap === "wide" });
    // An argument stands behind the name of its parameter.
    const expanded = this.readingList(withoutFirstSpace(raw), body, "tight");
    this.depth -= 1;
    this.charge(expanded.tokens.length);
    return expanded;
  }

  private useOf(name: WorkToken, macro: Macro, last: WorkToken): MacroUse {
    const isTogether = last.file === name.file && last.macro === name.macro && last.end >= name.end;
    const call = { file: name.file, start: name.start, end: isTogether ? last.end : name.end };
    const use = { name: name.text, call, definition: macro.definition, within: name.macro };
    if (name.macro === undefined) this.surroundings.use(use);
    return use;
  }

  private charge(tokens: number): boolean {
    this.spent += tokens;
    return this.spent <= EXPANDED_TOKENS;
  }

  private sayTooMuch(name: WorkToken): void {
    const message =
      `Macros expand to more than ${EXPANDED_TOKENS} tokens by ${name.text}; from here on they stay as written. ` +
      "Look for macros that use each other more than once.";
    this.surroundings.problem("expansion budget", outermostPlace(name), message);
  }

  private closeContexts(): void {
    while (this.contexts.length > this.floor) {
      const top = this.contexts.pop();
      if (top?.macro !== undefined) top.macro.isOpen = false;
    }
  }
}

function unexpanded(raw: readonly WorkToken[]): Expansion {
  return { tokens: withoutFirstSpace(raw), endsInSpace: false };
}

/** White space at the ends of an argument is none of it (C11 6.10.3.2). */
function withoutFirstSpace(raw: readonly WorkToken[]): readonly WorkToken[] {
  const [first, ...rest] = raw;
  return first?.space ? [copyToken(first, false, first.macro), ...rest] : raw;
}

/** The token behind a gap. */
function spaced(token: WorkToken, gap: Gap): WorkToken {
  return gap === "wide" && !token.space ? copyToken(token, true, token.macro) : token;
}

/** The place in a file of the outermost call that a token came out of. */
export function outermostPlace(token: WorkToken): Span {
  return token.macro === undefined ? token : outermostUse(token.macro).call;
}

/** A token a built-in macro stands for, at the place of its name. */
export function builtInToken(
  name: WorkToken,
  kind: "number" | "string",
  text: string,
  use: MacroUse,
): WorkToken {
  return makeToken(name.file, name.start, name.end, kind, text, false, use);
}
