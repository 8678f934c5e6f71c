import type { TypedAssemblyOperand, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { placeOf, writePlace } from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { lowerValue, shapeAt } from "./values.ts";

type Assembly = Extract<TypedStatement, { kind: "assembly" }>;

/** Instructions that change nothing that the program computes with: the machine is told of them. */
const single: ReadonlySet<string> = new Set(["nop", "sei", "cli", "wdr", "sleep"]);

/** The instruction that a function stands for; delays are as good as none, for time is not counted. */
export function instructionNamed(name: string): string | undefined {
  if (/^(_delay_(ms|us|loop_[12])|__builtin_avr_delay_cycles)$/.test(name)) return "nop";
  const word = /^__builtin_avr_(\w+)$/.exec(name)?.[1];
  return word !== undefined && single.has(word) ? word : undefined;
}

/** A call of one of the compiler's own functions, which needs no header. */
export function lowerOwn(
  scope: FunctionScope,
  { name, form, operands, what, at }: Extract<TypedExpression, { kind: "unresolved" }>,
): string {
  const word = form === "call" && name.startsWith("__builtin_") ? instructionNamed(name) : undefined;
  if (word === undefined) throw new CannotLower(what, at);
  const steps = operands.map((operand) => lowerValue(scope, operand));
  const told = `instruction(${scope.linkage.textNumber(word)},${scope.place(at)})`;
  return `(${[...steps, told, "0"].join(",")})`;
}

/** Jumps to the next instruction, which take two cycles. */
const isPause = (line: string): boolean => /^rjmp \.( ?\+ ?0)?$/.test(line);

/** Inline assembly of single instructions, and loops that count a variable down; all else is refused. */
export function lowerAssembly(scope: FunctionScope, statement: Assembly): string {
  const lines = linesOf(statement.text);
  const rest = lines.filter((line) => !single.has(line) && !isPause(line));
  const told = lines
    .filter((line) => single.has(line))
    .map((word) => `instruction(${scope.linkage.textNumber(word)},${scope.place(statement.at)});`)
    .join("");
  // `"+r" (x)` and no instruction keeps the compiler from knowing x, and x as it is.
  const changesNothing = statement.outputs.every(({ constraint }) => constraint.startsWith("+"));
  if (rest.length === 0 && changesNothing) return inputs(scope, statement) + told;
  const counted = countedDown(rest, statement);
  if (counted === undefined) throw new CannotLower(`inline assembly \`${statement.text}\``, statement.at);
  const { value } = counted;
  const shape = shapeAt(scope, value);
  const wanted = counted.instruction === "dec" ? 8 : 16;
  if (shape.kind !== "integer" || shape.truth || shape.bits !== wanted || value.type.kind !== "integer")
    throw new CannotLower(`inline assembly \`${statement.text}\` on this type`, statement.at);
  const zero = writePlace(scope, placeOf(scope, value), value.type, "0", scope.place(statement.at));
  return `${inputs(scope, statement)}${told}${zero};`;
}

function inputs(scope: FunctionScope, statement: Assembly): string {
  return statement.inputs.map(({ value }) => `${lowerValue(scope, value)};`).join("");
}

/** Instructions and labels one by one, in small letters, with single blanks. */
function linesOf(text: string): readonly string[] {
  return (
    text
      .replace(/\\[nr]/g, "\n")
      .replace(/\\t/g, " ")
      // What stands behind a semicolon is a comment (gas manual, "AVR Syntax: Special Characters").
      .replace(/;.*$/gm, "")
      .split("\n")
      .flatMap((line) => line.replace(/^\s*([\w.%=]+):/, "$1:\n").split("\n"))
      .map((line) =>
        line
          .trim()
          .toLowerCase()
          .replace(/\s*,\s*/g, ",")
          .replace(/\s+/g, " "),
      )
      .filter((line) => line !== "")
  );
}

interface Counted {
  readonly instruction: "dec" | "sbiw";
  readonly value: TypedAssemblyOperand["value"];
}

/** `1: dec %0`, `brne 1b`: the operand ends as 0, however often that goes round. */
function countedDown(lines: readonly string[], { outputs, inputs: given }: Assembly): Counted | undefined {
  const [label, count, branch, ...others] = lines;
  const [output, ...more] = outputs;
  if (label === undefined || count === undefined || branch === undefined || others.length > 0)
    return undefined;
  if (output === undefined || more.length > 0) return undefined;
  const name = label.endsWith(":") ? label.slice(0, -1) : "";
  if (branch !== `brne ${name}` && branch !== `brne ${name}b`) return undefined;
  const counter = /^(?:(dec) |(sbiw) )%(?:[ad]?0|[ad]?\[(\w+)\])(,1)?$/.exec(count);
  const instruction = counter?.[1] ?? counter?.[2];
  if (instruction !== "dec" && instruction !== "sbiw") return undefined;
  if ((instruction === "sbiw") !== (counter?.[4] !== undefined)) return undefined;
  if (counter?.[3] !== undefined && counter[3] !== output.name?.toLowerCase()) return undefined;
  // Whatever is counted has to begin with a value: its own, or that of the input that shares its place.
  const isBoth = /^\+/.test(output.constraint);
  const isShared = given.length === 1 && given[0]?.constraint === "0" && /^=/.test(output.constraint);
  if (isBoth ? given.length > 0 : !isShared) return undefined;
  return { instruction, value: output.value };
}
