import type { MainAccess } from "../../facts/board/shared-variables.ts";
import type { Edit, Fix, Span } from "../../finding.ts";
import type { Program, ProgramUnit } from "../../reader/program/program.ts";
import { type Token, visibleRange } from "../../reader/tokens.ts";
import type { TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf } from "../../reader/typed/walk.ts";
import { inserted } from "../literal.ts";

const BLOCK = "ATOMIC_BLOCK(ATOMIC_RESTORESTATE)";

/**
 * The statement in an atomic block, with the header that the block needs. Undefined for a statement that does more than
 * take or set the value, so that interrupts would be off for longer than anybody can tell here.
 */
export function atomicFix(program: Program, { statement }: MainAccess): Fix | undefined {
  if (expressionsIn(statement).some(mayTakeLong)) return undefined;
  const unit = program.units.find(({ preprocessed }) => preprocessed.tokens.includes(statement.at.first));
  const around = unit && editsAround(statement);
  if (unit === undefined || around === undefined) return undefined;
  const header = headerFor(unit, around.span.file);
  return header && { title: "Turn interrupts off meanwhile", edits: [...header, ...around.edits] };
}

interface Around {
  readonly span: Span;
  readonly edits: readonly Edit[];
}

function editsAround(statement: TypedStatement): Around | undefined {
  const { first, last } = statement.at;
  if (first.macro !== undefined || last.macro !== undefined || last.text !== ";") return undefined;
  const span = visibleRange(first, last);
  const { file, start, end } = span;
  switch (statement.kind) {
    case "expression":
    case "return":
      return { span, edits: [inserted(file, start, `${BLOCK} { `), inserted(file, end, " }")] };
    case "variables": {
      const [variable, ...others] = statement.variables;
      if (variable?.initializer?.kind !== "value" || others.length > 0) return undefined;
      const { type, storage, at, name } = variable;
      const isPlain = type.kind === "integer" || type.kind === "floating" || type.kind === "record";
      // `auto` needs its initialiser.
      if (!isPlain || type.const === true || storage !== "local" || first.text === "auto") return undefined;
      if (at.last.macro !== undefined) return undefined;
      const middle = inserted(file, at.last.end, `; ${BLOCK} { ${name}`);
      return { span, edits: [middle, inserted(file, end, " }")] };
    }
    default:
      return undefined;
  }
}

function mayTakeLong(expression: TypedExpression): boolean {
  switch (expression.kind) {
    case "call":
    case "method-call":
    case "new":
    case "delete":
    case "lambda":
    case "statement-value":
    case "unresolved":
      return true;
    default:
      return operandsOf(expression).some(mayTakeLong);
  }
}

/** Above the first declaration of the file; nothing where the block is known already. */
function headerFor({ preprocessed }: ProgramUnit, file: string): readonly Edit[] | undefined {
  if (preprocessed.macros.has("ATOMIC_BLOCK")) return [];
  const first: Token | undefined = preprocessed.tokens.find(
    (token) => token.file === file && token.macro === undefined,
  );
  return first && [inserted(file, first.start, "#include <util/atomic.h>\n")];
}
