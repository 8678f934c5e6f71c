import type { Token } from "../tokens.ts";

const RECORD_WORDS: ReadonlySet<string> = new Set(["struct", "union", "class", "enum"]);
const ATTRIBUTE_WORDS: ReadonlySet<string> = new Set(["__attribute__", "__attribute", "alignas", "_Alignas"]);

/** What the braces at top level are the braces of. */
type Body = "function" | "block" | "value";

/** Follows one top-level declaration token by token and tells where it ends. */
export class DeclarationScan {
  private readonly brackets: string[] = [];
  private braces = 0;
  private body: Body | undefined;
  private previous: Token | undefined;
  private sawInitializer = false;
  private sawParameters = false;
  private sawMemberInitializers = false;
  private isBlock = false;
  private angles = 0;

  /** True while a brace is open. */
  isInBraces(): boolean {
    return this.braces > 0;
  }

  /** Takes the next token; true where it is the declaration's last. */
  isLast(token: Token): boolean {
    const isEnd = token.kind === "punctuator" ? this.punctuator(token.text) : this.word(token);
    this.previous = token;
    return isEnd;
  }

  private word(token: Token): boolean {
    if (this.brackets.length > 0) return false;
    if (token.text === "namespace") this.isBlock = true;
    if (token.kind === "string" && this.previous?.text === "extern") this.isBlock = true;
    else if (this.isBlock && RECORD_WORDS.has(token.text)) this.isBlock = false;
    return false;
  }

  private punctuator(text: string): boolean {
    switch (text) {
      case "<":
        if (this.previous?.text === "template" || this.angles > 0) this.angles += 1;
        return false;
      case ">":
        if (this.angles > 0) this.angles -= 1;
        return false;
      case ">>":
        this.angles = Math.max(0, this.angles - 2);
        return false;
      case "(":
      case "[":
      case "{":
      case "<%":
      case "<:":
        this.open(text);
        return false;
      case ")":
      case "]":
      case ":>":
        this.closeBracket(text === ")" ? "(" : "[");
        return false;
      case "}":
      case "%>":
        return this.closeBrace();
      case ";":
        return this.braces === 0;
      case "=":
        if (this.brackets.length === 0 && this.angles === 0 && this.previous?.text !== "operator") {
          this.sawInitializer = true;
        }
        return false;
      case ":":
        if (this.brackets.length === 0 && this.sawParameters) this.sawMemberInitializers = true;
        return false;
      default:
        return false;
    }
  }

  private open(text: string): void {
    if (text === "{" || text === "<%") {
      if (this.brackets.length === 0) this.body = this.bodyAt();
      this.braces += 1;
      this.brackets.push("{");
      return;
    }
    const isOutside = this.brackets.length === 0 && this.angles === 0;
    if (text === "(" && isOutside && !ATTRIBUTE_WORDS.has(this.previous?.text ?? ""))
      this.sawParameters = true;
    this.brackets.push(text === "(" ? "(" : "[");
  }

  private bodyAt(): Body {
    if (this.sawInitializer) return "value";
    if (this.sawMemberInitializers) {
      const before = this.previous?.text ?? "";
      return before === ")" || before === "}" ? "function" : "value";
    }
    if (this.sawParameters) return "function";
    return this.isBlock || this.previous === undefined ? "block" : "value";
  }

  private closeBracket(open: string): void {
    if (this.brackets.at(-1) === open) this.brackets.pop();
  }

  private closeBrace(): boolean {
    if (this.braces === 0) return true;
    this.braces -= 1;
    // Parentheses left open inside the braces end with them.
    while (this.brackets.pop() !== "{");
    return this.braces === 0 && this.brackets.length === 0 && this.body !== "value";
  }
}
