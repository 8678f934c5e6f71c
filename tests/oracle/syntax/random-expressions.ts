/** Numbers below a limit, the same in every run with the same seed (a linear congruential generator). */
export type Chance = (limit: number) => number;

export function chance(seed: number): Chance {
  let state = seed;
  return (limit) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fff_ffff;
    return (state >> 8) % limit;
  };
}

function pick<T>(next: Chance, choices: readonly [T, ...T[]]): T {
  return choices[next(choices.length)] ?? choices[0];
}

/** What the expressions name. `m` is changed by at most one operator in each of them. */
export const declarations = `
typedef unsigned char T;
enum { V = 5 };
static int a, b, c, m, t[4];
static unsigned u;
static unsigned char d;
static int *p;
static int f(int x) { return x - 3; }
static void reset(void) { a = 7; b = -3; c = 12; m = 4; u = 9; d = 200; p = t; t[0] = 11; t[1] = -5; t[2] = 6; t[3] = 1; }
`;

/** An expression with few parentheses, so that precedence decides how it groups. */
export function randomExpression(next: Chance): string {
  return new Writer(next).expression(4);
}

class Writer {
  private readonly next: Chance;
  private changes = 0;

  constructor(next: Chance) {
    this.next = next;
  }

  expression(depth: number): string {
    const { next } = this;
    if (depth === 0) return this.operand(0);
    switch (next(10)) {
      case 0:
        return `${this.expression(depth - 1)} ? ${this.expression(depth - 1)} : ${this.expression(depth - 1)}`;
      case 1:
        return `${this.expression(depth - 1)} ${pick(next, ["/", "%"])} ${1 + next(9)}`;
      case 2:
        return `${this.expression(depth - 1)} ${pick(next, ["<<", ">>"])} ${next(6)}`;
      default:
        return `${this.expression(depth - 1)} ${this.operator()} ${this.expression(depth - 1)}`;
    }
  }

  private operator(): string {
    return pick(this.next, [
      "+",
      "-",
      "*",
      "&",
      "|",
      "^",
      "&&",
      "||",
      "==",
      "!=",
      "<",
      ">",
      "<=",
      ">=",
      "-",
      "&",
      "*",
    ]);
  }

  /** Unary operators, casts and names in parentheses before an operand. */
  private operand(nesting: number): string {
    const { next } = this;
    if (nesting > 3) return this.primary();
    switch (next(16)) {
      case 0:
        return `- ${this.operand(nesting + 1)}`;
      case 1:
        return `${pick(next, ["!", "~", "+"])} ${this.operand(nesting + 1)}`;
      case 2:
        return `(T) ${this.operand(nesting + 1)}`;
      case 3:
        return `(${pick(next, ["unsigned char", "int", "long", "signed char"])}) ${this.operand(nesting + 1)}`;
      case 4:
        // A cast with T, a calculation with a variable.
        return next(2) === 0
          ? `(T) ${pick(next, ["- t[1]", "+ d", "* p", "(a)", "(f)(b)"])}`
          : `(${pick(next, ["a", "b", "V"])}) ${pick(next, ["-", "+", "&", "*"])} ${pick(next, ["t[1]", "p[2]"])}`;
      case 5:
        return `(${this.expression(1)})`;
      case 6:
        return this.change();
      case 7:
        return `sizeof ${pick(next, ["a", "(a)", "(T)", "t", "*p", "(int)"])}`;
      default:
        return this.primary();
    }
  }

  private change(): string {
    if (this.changes > 0) return this.primary();
    this.changes += 1;
    return pick(this.next, [
      "m++",
      "--m",
      "- m--",
      "~m++",
      "(m = 3)",
      "(m += a)",
      "(a, m -= 2)",
      "(m *= 3, b)",
    ]);
  }

  private primary(): string {
    const { next } = this;
    return pick(next, [
      "a",
      "b",
      "c",
      "u",
      "d",
      "V",
      "t[1]",
      "p[2]",
      "*p",
      "*&a",
      "f(a)",
      "(f)(b)",
      `${next(300)}`,
      `t[a & 3]`,
    ]);
  }
}
