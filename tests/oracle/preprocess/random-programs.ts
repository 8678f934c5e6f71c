/** A small repeatable generator of numbers (mulberry32), so that a printed seed brings a program back. */
function randomNumbers(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}

const OBJECTS = ["A", "B", "C", "D"];
const FUNCTIONS = ["f", "g", "h", "k"];
const PLAIN = [
  "x",
  "y",
  "1",
  "22",
  "+",
  "-",
  "[",
  "]",
  "<",
  "v",
  "'c'",
  '"s\\n"',
  ".",
  ";",
  "A",
  "B",
  "f",
  "g",
];

class Writer {
  private readonly below: (limit: number) => number;

  constructor(seed: number) {
    this.below = randomNumbers(seed);
  }

  private pick<T>(from: readonly T[], otherwise: T): T {
    return from[this.below(from.length)] ?? otherwise;
  }

  program(): string {
    const lines: string[] = [];
    for (const name of OBJECTS) lines.push(`#define ${name} ${this.body([], false)}`);
    for (const name of FUNCTIONS) lines.push(this.functionMacro(name));
    for (let index = 0; index < 8; index += 1) lines.push(this.line());
    if (this.below(2) === 0) lines.push(`#undef ${this.pick(OBJECTS, "A")}`, this.line(), this.conditional());
    return `${lines.join("\n")}\n`;
  }

  /** One parameter each, or only variable ones, so that calls made by rescanning rarely miscount. */
  private functionMacro(name: string): string {
    const kind = this.below(4);
    if (kind === 0) return `#define ${name}(...) ${this.body(["__VA_ARGS__"], true)}`;
    if (kind === 1) return `#define ${name}(p, ...) ${this.body(["p", "__VA_ARGS__"], true)}`;
    return `#define ${name}(p) ${this.body(["p"], true)}`;
  }

  private body(parameters: readonly string[], isFunction: boolean): string {
    const parts: string[] = [];
    const count = this.below(6);
    for (let index = 0; index < count; index += 1) {
      const parameter = parameters.length > 0 ? this.pick(parameters, "p") : "";
      const kind = this.below(parameter === "" ? 6 : 12);
      if (kind === 0) parts.push(`${this.pick(FUNCTIONS, "f")}(${this.argument(parameters)})`);
      else if (kind === 1) parts.push(this.pick(FUNCTIONS, "f"));
      else if (kind === 2) parts.push(this.pick(OBJECTS, "A"));
      else if (kind < 6) parts.push(this.pick(PLAIN, "x"));
      else if (kind === 6) parts.push(`#${this.below(2) === 0 ? " " : ""}${parameter}`);
      else if (kind === 7) parts.push(`${this.pick(["n", "A", "f", "x1"], "n")} ## ${parameter}`);
      else if (kind === 8) parts.push(`${parameter}##${this.pick(["n", "1", "_"], "n")}`);
      else parts.push(this.below(3) === 0 ? `(${parameter})` : parameter);
    }
    if (!isFunction && this.below(6) === 0) parts.push("x ## y");
    return parts.join(this.below(3) === 0 ? "" : " ").replace(/\/\//g, "/ /");
  }

  private argument(parameters: readonly string[]): string {
    const parts: string[] = [];
    for (let count = this.below(3); count >= 0; count -= 1) {
      const kind = this.below(8);
      if (kind === 0)
        parts.push(`${this.pick(FUNCTIONS, "f")}(${this.pick(PLAIN, "x").replace(/[[\]]/, "z")})`);
      else if (kind === 1 && parameters.length > 0) parts.push(this.pick(parameters, "p"));
      else if (kind === 2) parts.push(this.pick(FUNCTIONS, "f"));
      else if (kind < 5) parts.push(this.pick(OBJECTS, "A"));
      else parts.push(this.pick(PLAIN, "x"));
    }
    return this.below(9) === 0 ? "" : parts.join(this.below(2) === 0 ? " " : "  ");
  }

  private line(): string {
    const parts: string[] = [];
    for (let count = this.below(5); count >= 0; count -= 1) {
      const kind = this.below(5);
      if (kind < 2)
        parts.push(`${this.pick(FUNCTIONS, "f")}${this.pick(["", " ", "\n"], "")}(${this.argument([])})`);
      else if (kind === 2) parts.push(this.pick(FUNCTIONS, "f"));
      else if (kind === 3) parts.push(this.pick(OBJECTS, "A"));
      else parts.push(this.pick(PLAIN, "x"));
    }
    return parts.join(this.below(2) === 0 ? " " : "");
  }

  private conditional(): string {
    const operand = () =>
      this.pick(["1", "-1", "0u", "2", "~0", "3u", "defined A", "!defined(B)", "'a'", "z"], "1");
    const operator = () =>
      this.pick(["+", "-", "*", "<", ">", "==", "&&", "||", "&", "|", "^", "<<", ">>", "?1:"], "+");
    const condition = `(${operand()} ${operator()} ${operand()}) ${operator()} ${operand()}`;
    return `#if ${condition}\ntaken\n#else\nnot taken\n#endif`;
  }
}

export function randomProgram(seed: number): string {
  return new Writer(seed).program();
}

/** Takes away what a random program may have defined. */
export const undefineAll = [...OBJECTS, ...FUNCTIONS].map((name) => `#undef ${name}\n`).join("");
