import type {
  FunctionDefinition,
  TypedExpression,
  TypedInitializer,
  Variable,
} from "../../reader/typed/nodes.ts";
import { expressionsOf, walkExpression, walkStatement } from "../../reader/typed/walk.ts";

/** Names of variables and members that flow into the locals of a function, through however many assignments. */
export class Flow {
  readonly #into = new Map<Variable, Set<TypedExpression>>();

  constructor({ body }: FunctionDefinition) {
    walkStatement(body, {
      statement: (statement) => {
        if (statement.kind === "variables") for (const each of statement.variables) this.#first(each);
        return true;
      },
      expression: (expression) => {
        if (expression.kind === "assign" || expression.kind === "compound-assign")
          this.#add(targetOf(expression.target), expression.value);
        return true;
      },
    });
  }

  /** Whether an expression reads something of this name, itself or through locals that hold it. */
  mentions(expression: TypedExpression, name: string): boolean {
    return this.#mentions(expression, name, new Set());
  }

  #mentions(expression: TypedExpression, name: string, seen: Set<Variable>): boolean {
    let found = false;
    walkExpression(expression, {
      expression: (each) => {
        if (found) return false;
        if (each.kind === "member" && each.field.name === name) found = true;
        if (each.kind === "variable") {
          const { variable } = each;
          found ||= variable.name === name;
          if (!found && !seen.has(variable)) {
            seen.add(variable);
            for (const value of this.#into.get(variable) ?? []) found ||= this.#mentions(value, name, seen);
          }
        }
        return !found;
      },
    });
    return found;
  }

  #first(variable: Variable): void {
    const { initializer } = variable;
    if (initializer === undefined) return;
    for (const value of valuesOf(initializer)) this.#add(variable, value);
  }

  #add(variable: Variable | undefined, value: TypedExpression): void {
    if (variable === undefined) return;
    const known = this.#into.get(variable);
    if (known === undefined) this.#into.set(variable, new Set([value]));
    else known.add(value);
  }
}

function valuesOf(initializer: TypedInitializer): readonly TypedExpression[] {
  return expressionsOf(initializer);
}

/** The variable that an assignment changes, as a whole or in part. */
function targetOf(target: TypedExpression): Variable | undefined {
  switch (target.kind) {
    case "variable":
      return target.variable;
    case "member":
      return targetOf(target.object);
    case "index":
      return targetOf(target.array);
    case "convert":
      return targetOf(target.operand);
    default:
      return undefined;
  }
}
