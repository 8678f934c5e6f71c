import { objectAt } from "./objects.ts";
import { addressOf } from "./places.ts";
import { CannotLower, type FunctionScope, type Lambda } from "./scope.ts";
import { shapeOf, stored } from "./shape.ts";
import { shapeAt, valueAs } from "./values.ts";

/** Makes a lambda at an address: an object that holds copies of what it captures, or where that lies. */
export function lambdaAt(scope: FunctionScope, room: string, lambda: Lambda): string {
  const { linkage } = scope;
  const pointer = linkage.model.pointer / 8;
  const p = scope.place(lambda.at);
  linkage.declareLambda(lambda);
  const steps = lambda.captures.map(({ source, reference, field }) => {
    const to = `(${room}+${field.bitOffset / 8})`;
    if (reference) return `s${pointer}(${to},${addressOf(scope, source)},${p})`;
    const shape = shapeOf(field.type, linkage.model);
    if (shape === undefined) throw new CannotLower("a lambda that holds a copy of this", source.at);
    if (shape.kind !== "object") return stored(shape, to, valueAs(scope, source, shape), p);
    if (shapeAt(scope, source).kind !== "object")
      throw new CannotLower("a lambda that holds a copy of this", source.at);
    return objectAt(scope, to, source);
  });
  if (lambda.self !== undefined)
    steps.push(`s${pointer}((${room}+${lambda.self.bitOffset / 8}),${scope.self},${p})`);
  return `(${[...steps, room].join(",")})`;
}

/** Lets a lambda's body find what it captured. */
export function enterLambda(scope: FunctionScope, lambda: Lambda): void {
  const load = `l${scope.linkage.model.pointer / 8}`;
  for (const { variable, reference, field } of lambda.captures) {
    scope.captured.add(variable);
    const at = `(self+${field.bitOffset / 8})`;
    scope.addresses.set(variable, reference ? `${load}(${at},0)` : at);
  }
  scope.self = lambda.self === undefined ? "self" : `${load}((self+${lambda.self.bitOffset / 8}),0)`;
}
