import type {
  At,
  FunctionDefinition,
  FunctionSymbol,
  TypedInitializer,
  TypedStatement,
  Variable,
} from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { alignmentOf, sizeOf } from "../../reader/types/layout.ts";
import type { Field, RecordDeclaration, Type } from "../../reader/types/types.ts";
import { inBlocks, numberLabels } from "./blocks.ts";
import { callCycles } from "./cycles/functions.ts";
import { destroySteps, partSteps } from "./destructors.ts";
import { furtherParameter } from "./further-arguments.ts";
import { addressed } from "./in-memory.ts";
import { classMarks, firstSteps, initialized, memberSteps } from "./initializers.ts";
import { enterLambda } from "./lambdas.ts";
import { resultVariable } from "./results.ts";
import { CannotLower, FunctionScope, type Lambda, type Linkage } from "./scope.ts";
import { shapeOf, stored } from "./shape.ts";
import { inOrder, leaveMark, leaving, lowerStatement, orStop, spending, stopAt } from "./statements.ts";
import { isPlainSwitch } from "./switches.ts";
import { wholeSteps } from "./temporaries.ts";

/** JavaScript for a function: an arrow function of its parameters, as `call` takes them. */
export function lowerFunction(
  linkage: Linkage,
  symbol: FunctionSymbol,
  definition: FunctionDefinition,
  lambda: Lambda | undefined,
): string {
  const scope = new FunctionScope(linkage, addressed(definition));
  if (lambda !== undefined) enterLambda(scope, lambda);
  return lowerBody(scope, symbol, definition);
}

/** JavaScript that initialises an object at file level. */
export function lowerGlobal(linkage: Linkage, variable: Variable): string {
  const { type, at, initializer } = variable;
  return lowerObject(linkage, type, linkage.globalAddress(variable), at, initializer);
}

/** JavaScript that gives the object at an address its first value. */
export function lowerObject(
  linkage: Linkage,
  type: Type,
  place: number,
  at: At,
  initializer: TypedInitializer | undefined = undefined,
): string {
  const scope = new FunctionScope(linkage, new Set());
  const address = String(place);
  const body = orStop(scope, () =>
    inOrder(wholeSteps(scope, () => firstSteps(scope, address, type, initializer, at))),
  );
  return framed(scope, "()", body, at);
}

/** JavaScript that ends an object of a class: a function of its address. */
export function lowerEnd(linkage: Linkage, record: RecordDeclaration, at: At): string {
  const scope = new FunctionScope(linkage, new Set());
  const body = orStop(scope, () => inOrder(destroySteps(scope, "o", { kind: "record", record }, at)));
  return framed(scope, "(o)", body, at);
}

function lowerBody(scope: FunctionScope, symbol: FunctionSymbol, definition: FunctionDefinition): string {
  const { linkage } = scope;
  scope.returns = symbol.type.returns;
  const parameters: string[] = [];
  if (scope.returns.kind === "record") parameters.push("result");
  if (symbol.memberOf !== undefined && !symbol.isStatic) parameters.push("self");
  let prologue = "";
  for (const variable of definition.parameters) {
    const name = scope.nameFor(variable);
    parameters.push(name);
    const shape = shapeOf(variable.type, linkage.model);
    if (shape?.kind === "object") scope.addresses.set(variable, name);
    else if (shape !== undefined && scope.inMemory.has(variable) && variable.type.kind !== "reference") {
      const room = scope.room(
        sizeOf(variable.type, linkage.model) ?? 1,
        alignmentOf(variable.type, linkage.model),
      );
      scope.addresses.set(variable, room);
      prologue += `${stored(shape, room, name, scope.place(variable.at))};`;
    }
  }
  if (symbol.type.variadic) parameters.push(furtherParameter);
  const { special, memberOf, at } = symbol;
  // Whatever way the destructor's body is left, the parts of the object end after it (C++11 12.4p8).
  const isDestructor = special === "destructor" && memberOf !== undefined;
  const parts = isDestructor ? partSteps(scope, "self", memberOf, at).reverse() : [];
  scope.destroyed.push({ owner: undefined, steps: parts });
  scope.resultVariable = resultVariable(scope, definition, scope.returns);
  if (scope.resultVariable !== undefined) scope.addresses.set(scope.resultVariable, "result");
  const { costs } = linkage;
  const called = costs && callCycles(symbol, definition, costs, linkage);
  const body =
    (called === undefined || called.enter === 0 ? "" : spending(scope, called.enter, symbol.at)) +
    prologue +
    memberCode(scope, symbol, definition) +
    statementsOf(scope, definition.body) +
    leaving(scope, 0);
  return framed(scope, `(${parameters.join(",")})`, body, symbol.at, called?.leave);
}

function statementsOf(scope: FunctionScope, body: TypedStatement): string {
  if (!needsBlocks(body)) return lowerStatement(scope, body);
  // A jump may pass over any initialiser.
  walkStatement(body, {
    statement: (statement) => {
      if (statement.kind === "variables")
        for (const variable of statement.variables) scope.unsure.add(variable);
      return true;
    },
  });
  numberLabels(scope, body);
  return inBlocks(scope, body);
}

function needsBlocks(body: TypedStatement): boolean {
  let needs = false;
  walkStatement(body, {
    expression: (expression) => expression.kind !== "lambda",
    statement: (statement) => {
      if (statement.kind === "label" || statement.kind === "goto") needs = true;
      if (statement.kind === "switch" && !isPlainSwitch(statement)) needs = true;
      return !needs;
    },
  });
  return needs;
}

function memberCode(scope: FunctionScope, symbol: FunctionSymbol, definition: FunctionDefinition): string {
  const { memberOf, special, at } = symbol;
  if (special === "destructor" && memberOf !== undefined) {
    // From here on the object is one of this class (C++11 12.7p4).
    return inOrder(classMarks(scope, "self", memberOf, memberOf, 0, scope.place(at)));
  }
  if (special !== "constructor" || memberOf === undefined) return "";
  const said = new Map<Field | RecordDeclaration, TypedInitializer>();
  for (const { target, initializer } of definition.memberInitializers) {
    if (target === undefined)
      return stopAt(scope, new CannotLower("an initialiser of an unknown member", at));
    said.set(target, initializer);
  }
  return orStop(scope, () => {
    const delegated = said.get(memberOf);
    if (delegated === undefined) return inOrder(memberSteps(scope, "self", memberOf, at, said));
    const type: Type = { kind: "record", record: memberOf };
    return inOrder(wholeSteps(scope, () => initialized(scope, "self", type, delegated, "as-it-is")));
  });
}

/** The function with its frame, whose size is known once the body is lowered; `cycles` are those of going back. */
function framed(
  scope: FunctionScope,
  parameters: string,
  body: string,
  at: FunctionSymbol["at"],
  cycles = 0,
): string {
  const bytes = Math.ceil(scope.frameBytes / 8) * 8;
  const variables = scope.declared.length === 0 ? "" : `let ${scope.declared.join(",")};`;
  const enter = `${variables}const f=enter(${bytes},${scope.place(at)});`;
  // The next statement of the caller sees whether any are left.
  const back = cycles === 0 ? "" : `C[0]-=${cycles};`;
  return `${parameters}=>{${enter}${body}${leaveMark}}`.replaceAll(leaveMark, `${back}leave(${bytes});`);
}
