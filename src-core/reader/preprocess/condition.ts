import type { WorkToken } from "../lexer/lexed-file.ts";
import { applyBinary, BINARY_PRECEDENCE, OPERATOR_WORDS } from "./condition-operators.ts";
import {
  type CharacterModel,
  type ConditionValue,
  conditionValue,
  readCharacter,
  readInteger,
  truth,
} from "./condition-values.ts";

const MAXIMUM_DEPTH = 200;
const ZERO = conditionValue(0n, false);

/** What the evaluation of an `#if` line asks for. */
export interface ConditionInput {
  /** Next token of the line, expanded; undefined at its end. */
  next(): WorkToken | undefined;
  /** Next token as written, for the operand of `defined`. */
  raw(): WorkToken | undefined;
  isDefined(name: string): boolean;
  /** Whether `__has_include(...)` finds its file; `spelling` keeps its quotes or angle brackets. */
  hasInclude(spelling: string, isNext: boolean): boolean;
  readonly characters: CharacterModel;
  readonly isCpp: boolean;
}

export type ConditionResult =
  | { readonly kind: "value"; readonly value: ConditionValue }
  | { readonly kind: "problem"; readonly message: string; readonly token: WorkToken | undefined };

/** Evaluates the expression of an `#if` (C11 6.10.1). */
export function evaluateCondition(input: ConditionInput): ConditionResult {
  return new ConditionReader(input).read();
}

class ConditionReader {
  private readonly input: ConditionInput;
  private current: WorkToken | undefined;
  private problem: { message: string; token: WorkToken | undefined } | undefined;
  private depth = 0;

  constructor(input: ConditionInput) {
    this.input = input;
  }

  read(): ConditionResult {
    this.advance();
    if (this.current === undefined)
      return { kind: "problem", message: "#if has no condition.", token: undefined };
    const value = this.comma(true);
    if (this.problem === undefined && this.current !== undefined) {
      this.fail(`"${this.current.text}" does not belong here in an #if condition.`);
    }
    return this.problem === undefined ? { kind: "value", value } : { kind: "problem", ...this.problem };
  }

  private advance(): void {
    this.current = this.problem === undefined ? this.input.next() : undefined;
  }

  private fail(message: string): ConditionValue {
    this.problem ??= { message, token: this.current };
    this.current = undefined;
    return ZERO;
  }

  /** The operator at hand, alternative spellings put straight. */
  private operator(): string {
    const { current } = this;
    if (current === undefined) return "";
    if (current.kind === "identifier" && this.input.isCpp)
      return OPERATOR_WORDS[current.text] ?? current.text;
    return current.text;
  }

  private accept(text: string): boolean {
    if (this.current?.kind !== "punctuator" || this.current.text !== text) return false;
    this.advance();
    return true;
  }

  private comma(isEvaluated: boolean): ConditionValue {
    let value = this.ternary(isEvaluated);
    while (this.accept(",")) value = this.ternary(isEvaluated);
    return value;
  }

  private ternary(isEvaluated: boolean): ConditionValue {
    if (this.depth >= MAXIMUM_DEPTH) return this.fail("This #if condition nests too deep.");
    this.depth += 1;
    const condition = this.binary(1, isEvaluated);
    let value = condition;
    if (this.accept("?")) {
      const isTrue = condition.value !== 0n;
      const first = this.comma(isEvaluated && isTrue);
      if (!this.accept(":")) this.fail('A ":" is missing behind "?" in this #if condition.');
      const second = this.ternary(isEvaluated && !isTrue);
      value = conditionValue((isTrue ? first : second).value, first.unsigned || second.unsigned);
    }
    this.depth -= 1;
    return value;
  }

  private binary(least: number, isEvaluated: boolean): ConditionValue {
    let left = this.unary(isEvaluated);
    for (;;) {
      const operator = this.operator();
      const precedence = Object.hasOwn(BINARY_PRECEDENCE, operator) ? (BINARY_PRECEDENCE[operator] ?? 0) : 0;
      if (precedence < least || precedence === 0) return left;
      this.advance();
      if (operator === "&&" || operator === "||") {
        const isTrue = left.value !== 0n;
        const isDecided = operator === "&&" ? !isTrue : isTrue;
        const right = this.binary(precedence + 1, isEvaluated && !isDecided);
        left = truth(isDecided ? isTrue : right.value !== 0n);
        continue;
      }
      const right = this.binary(precedence + 1, isEvaluated);
      const value = applyBinary(operator, left, right);
      if (typeof value !== "string") left = value;
      else if (isEvaluated) return this.fail(value);
      else left = conditionValue(0n, left.unsigned || right.unsigned);
    }
  }

  private unary(isEvaluated: boolean): ConditionValue {
    const operator = this.operator();
    if (!["-", "+", "~", "!"].includes(operator)) return this.primary(isEvaluated);
    this.advance();
    if (this.depth >= MAXIMUM_DEPTH) return this.fail("This #if condition nests too deep.");
    this.depth += 1;
    const { value, unsigned } = this.unary(isEvaluated);
    this.depth -= 1;
    if (operator === "-") return conditionValue(-value, unsigned);
    if (operator === "~") return conditionValue(~value, unsigned);
    return operator === "!" ? truth(value === 0n) : { value, unsigned };
  }

  private primary(isEvaluated: boolean): ConditionValue {
    const { current } = this;
    if (current === undefined) return this.fail("The #if condition ends where a value is expected.");
    if (current.kind === "number" || current.kind === "character") {
      const value =
        current.kind === "number"
          ? readInteger(current.text)
          : readCharacter(current.text, this.input.characters);
      if (typeof value === "string") return this.fail(value);
      this.advance();
      return value;
    }
    if (current.kind === "identifier") return this.name(current);
    if (this.accept("(")) {
      const value = this.comma(isEvaluated);
      if (this.problem === undefined && !this.accept(")"))
        this.fail('A ")" is missing in this #if condition.');
      return value;
    }
    return this.fail(`"${current.text}" cannot stand in an #if condition.`);
  }

  private name(token: WorkToken): ConditionValue {
    const { text } = token;
    if (text === "defined") return this.defined();
    if (text === "__has_include" || text === "__has_include_next") {
      return this.hasInclude(text === "__has_include_next");
    }
    this.advance();
    if (/^__has_(?:cpp_|c_)?(?:attribute|builtin|feature|extension)$/.test(text)) this.skipParentheses();
    else if (this.current?.text === "(") return this.fail(`${text} is no macro with parameters here.`);
    return truth(this.input.isCpp && text === "true");
  }

  private defined(): ConditionValue {
    const first = this.input.raw();
    const name = first?.text === "(" ? this.input.raw() : first;
    if (name?.kind !== "identifier") {
      this.current = name ?? this.current;
      return this.fail('"defined" needs the name of a macro.');
    }
    if (first?.text === "(" && this.input.raw()?.text !== ")") {
      return this.fail('A ")" is missing behind "defined".');
    }
    this.advance();
    return truth(this.input.isDefined(name.text));
  }

  private hasInclude(isNext: boolean): ConditionValue {
    if (this.input.raw()?.text !== "(") return this.fail("__has_include needs a header name in parentheses.");
    let spelling = "";
    this.advance();
    const isAngled = this.current?.text === "<";
    if (isAngled) {
      for (let token: WorkToken | undefined = this.current; token !== undefined; token = this.input.raw()) {
        spelling += token.text;
        if (token.text === ">") break;
      }
    } else spelling = this.current?.text ?? "";
    if (!/^(?:<.+>|".+")$/.test(spelling) || this.input.raw()?.text !== ")") {
      return this.fail("__has_include needs a header name in parentheses.");
    }
    this.advance();
    return truth(this.input.hasInclude(spelling, isNext));
  }

  private skipParentheses(): void {
    let depth = 0;
    while (this.current !== undefined) {
      if (this.current.text === "(") depth += 1;
      if (this.current.text === ")") depth -= 1;
      this.advance();
      if (depth <= 0) return;
    }
  }
}
