import type { TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { calledType } from "../../reader/types/derive.ts";
import type { Call } from "./expressions.ts";
import type { KnownPlaces, PlaceNames } from "./known-places.ts";

/** What a call may store into: objects that it gets by reference, and those whose address it gets. */
export function forgetHandedOver(call: Call, known: KnownPlaces, names: PlaceNames): void {
  const called = call.kind === "method-call" ? call.method.type : calledType(call.callee.type);
  for (const [index, argument] of call.arguments.entries()) {
    const parameter = called?.parameters[index];
    const isWay =
      parameter === undefined ||
      ((parameter.kind === "reference" || parameter.kind === "pointer") && parameter.to.const !== true);
    const place = isWay ? names.placeOf(argument) : undefined;
    if (place !== undefined) known.forget(place);
  }
}

/** Forgets all that a statement may change however often it is run. */
export function forgetChanged(statement: TypedStatement, known: KnownPlaces, names: PlaceNames): void {
  const forget = (target: TypedExpression): void => {
    const place = names.placeOf(target);
    if (place === undefined) known.forgetShared();
    else known.forget(place);
  };
  walkStatement(statement, {
    expression(expression) {
      if (expression.kind === "assign" || expression.kind === "compound-assign") forget(expression.target);
      else if (expression.kind === "update") forget(expression.operand);
      else if (expression.kind === "call" || expression.kind === "method-call") {
        known.forgetShared();
        forgetHandedOver(expression, known, names);
      }
      return true;
    },
  });
}
