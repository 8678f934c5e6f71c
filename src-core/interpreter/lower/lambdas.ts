import { copied } from "./calls.ts";
import { needsDestroying } from "./destructors.ts";
import { addressOf, roomFor } from "./places.ts";
import { CannotLower, type FunctionScope, type Lambda } from "./scope.ts";
import { shapeOf, stored } from "./shape.ts";
import { shapeAt, valueAs } from "./values.ts";

/** A lambda: an object that holds copies of what it captures, or where that lies. Its value is its address. */
export function lowerLambda(scope: FunctionScope, lambda: Lambda): string {
  const { linkage } = scope;
  const pointer = linkage.model.pointer / 8;
  const p = scope.place(lambda.at);
  linkage.declareLambda(lambda);
  const room = roomFor(scope, lambda.type, lambda);
  const steps = lambda.captures.map(({ source, reference, field }) => {
    const to = `(${room}+${field.bitOffset / 8})`;
    if (reference) return `s${pointer}(${to},${addressOf(scope, source)},${p})`;
    const shape = shapeOf(field.type, linkage.model);
    if (shape === undefined) throw new CannotLower("a lambda that holds a copy of this", source.at);
    if (needsDestroying(scope, field.type))
      throw new CannotLower("a lambda that holds an object with a destructor", source.at);
    if (shape.kind !== "object") return stored(shape, to, valueAs(scope, source, shape), p);
    if (shapeAt(scope, source).kind !== "object")
      throw new CannotLower("a lambda that holds a copy of this", source.at);
    return copied(scope, to, source);
  });
  if (lambda.self !== undefined)
    steps.push(`s${pointer}((${room}+${lambda.self.bitOffset / 8}),${scope.self},${p})`);
  return `(${[...steps, room].join(",")})`;
}

/** Lets a lambda's body find what it captured. */
export function enterLambda(scope: FunctionScope, lambda: Lambda): void {
  const load = `l${scope.linkage.model.pointer / 8}`;
  for (const { variable, reference, field } of lambda.captures) {
    const at = `(self+${field.bitOffset / 8})`;
    scope.addresses.set(variable, reference ? `${load}(${at},0)` : at);
  }
  scope.self = lambda.self === undefined ? "self" : `${load}((self+${lambda.self.bitOffset / 8}),0)`;
}
