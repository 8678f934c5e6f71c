import type { Program } from "../../reader/program/program.ts";
import type { At, FunctionDefinition, TypedExpression } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";

/** An expression of the firmware and the function that it stands in. */
export interface Stored {
  readonly expression: TypedExpression;
  readonly definition: FunctionDefinition;
}

/** The expression at a place that a machine named: of a compound assignment, what is combined. */
export function storedExpression(program: Program, at: At): Stored | undefined {
  let found: Stored | undefined;
  for (const symbol of program.functions) {
    const { definition } = symbol;
    if (definition === undefined || symbol.at.first.file !== at.first.file) continue;
    walkStatement(definition.body, {
      expression: (expression) => {
        if (found === undefined && expression.at === at) {
          const isCompound = expression.kind === "compound-assign";
          found = { expression: isCompound ? expression.value : expression, definition };
        }
        return found === undefined;
      },
    });
    if (found !== undefined) return found;
  }
  return undefined;
}
