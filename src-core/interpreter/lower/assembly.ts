import type { TypedAssemblyOperand, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { instructionNamed, isPause, linesOf, single } from "./instruction-names.ts";
import { placeOf, writePlace } from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { lowerValue, shapeAt } from "./values.ts";

type Assembly = Extract<TypedStatement, { kind: "assembly" }>;

/** A call of one of the compiler's own functions, which needs no header. */
export function lowerOwn(
  scope: FunctionScope,
  { name, form, operands, what, at }: Extract<TypedExpression, { kind: "unresolved" }>,
): string {
  const isDelay = form === "call" && name === "__builtin_avr_delay_cycles";
  const word = form === "call" && name.startsWith("__builtin_") ? instructionNamed(name) : undefined;
  if (word === undefined && !isDelay) throw new CannotLower(what, at);
  const steps = operands.map((operand) => lowerValue(scope, operand));
  if (word === undefined) return `(waited(Number(${steps[0] ?? "0"})),0)`;
  const told = `instruction(${scope.linkage.textNumber(word)},${scope.place(at)})`;
  return `(${[...steps, told, "0"].join(",")})`;
}

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
  const { value, start } = counted;
  const shape = shapeAt(scope, value);
  const wanted = counted.instruction === "dec" ? 8 : 16;
  if (shape.kind !== "integer" || shape.truth || shape.bits !== wanted || value.type.kind !== "integer")
    throw new CannotLower(`inline assembly \`${statement.text}\` on this type`, statement.at);
  const zero = writePlace(scope, placeOf(scope, value), value.type, "0", scope.place(statement.at));
  // DEC or SBIW, and BRNE, which is not taken in the last turn (AVR Instruction Set Manual).
  const each = counted.instruction === "dec" ? 3 : 4;
  const most = 2 ** wanted;
  const turns = `((${lowerValue(scope, start)})&${most - 1}||${most})`;
  const waits = scope.linkage.costs === undefined ? "" : `waited(${turns}*${each}-1);`;
  return `${inputs(scope, statement)}${told}${waits}${zero};`;
}

function inputs(scope: FunctionScope, statement: Assembly): string {
  return statement.inputs.map(({ value }) => `${lowerValue(scope, value)};`).join("");
}

interface Counted {
  readonly instruction: "dec" | "sbiw";
  readonly value: TypedAssemblyOperand["value"];
  /** What it has before the first turn. */
  readonly start: TypedAssemblyOperand["value"];
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
  return { instruction, value: output.value, start: given[0]?.value ?? output.value };
}
