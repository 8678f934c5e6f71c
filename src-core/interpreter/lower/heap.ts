import type { At, TypedExpression } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";
import { destroySteps, needsDestroying } from "./destructors.ts";
import { defaultSteps, firstSteps, initialized, ofClass } from "./initializers.ts";
import { objectFromCopy } from "./objects.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { lowerValue } from "./values.ts";

type New = Extract<TypedExpression, { kind: "new" }>;

export function lowerNew(scope: FunctionScope, expression: New): string {
  const { type, initializer, length, placement, at } = expression;
  const made = type.kind === "pointer" ? type.to : type;
  const size = sizeOf(made, scope.linkage.model);
  if (size === undefined) throw new CannotLower("`new` of an unknown type", at);
  if (made.kind === "record" && hasOwnHeap(scope, made.record))
    throw new CannotLower("`new` of a class that has its own", at);
  const held = scope.temporary();
  if (length !== undefined) return newArray(scope, expression, length, made, size, held);
  const room =
    placement === undefined
      ? heapRoom(scope, "operator new", String(size), at)
      : lowerValue(scope, placement);
  const steps =
    initializer?.kind === "value" && made.kind === "record"
      ? [objectFromCopy(scope, held, ofClass(initializer.value, made.record))]
      : firstSteps(scope, held, made, initializer, at);
  return `(${[`${held}=${room}`, ...steps, held].join(",")})`;
}

function newArray(
  scope: FunctionScope,
  { initializer, placement, at }: New,
  length: TypedExpression,
  made: Type,
  size: number,
  held: string,
): string {
  if (placement !== undefined) throw new CannotLower("an array made at a given place", at);
  const [count, each] = [scope.temporary(), scope.temporary()];
  const elements = (from: number, steps: readonly string[]): string[] =>
    steps.length === 0
      ? []
      : [`repeat(${count}-${from},(i)=>{${each}=${held}+(i+${from})*${size};${steps.join(";")}})`];
  const start = [
    `${count}=Number(${lowerValue(scope, length)})`,
    `${held}=${heapRoom(scope, "operator new[]", `${size}*${count}`, at)}`,
  ];
  if (initializer?.kind !== "aggregate" || initializer.type.kind !== "array") {
    const steps = firstSteps(scope, each, made, initializer, at);
    return `(${[...start, ...elements(0, steps), held].join(",")})`;
  }
  const given = initializer.type.length ?? 0;
  const steps = [
    `zero(${held},${size}*${count},${scope.place(at)})`,
    ...initialized(scope, held, initializer.type, initializer, "as-it-is"),
    ...elements(given, defaultSteps(scope, each, made, at)),
  ];
  return `(${[...start, ...steps, held].join(",")})`;
}

/** Room for an object: the heap's, or what the program's own function gives. */
function heapRoom(
  scope: FunctionScope,
  name: "operator new" | "operator new[]",
  bytes: string,
  at: At,
): string {
  const own = scope.linkage.ownFunction(name, 1);
  if (own !== undefined) return `F[${scope.linkage.functionNumber(own)}](${bytes})`;
  return `taken(${bytes},${scope.place(at)})`;
}

/** JavaScript that gives back room, as `heapRoom` took it. */
function released(scope: FunctionScope, array: boolean, address: string): string {
  const own = scope.linkage.ownFunction(array ? "operator delete[]" : "operator delete", 1);
  return own === undefined ? `released(${address})` : `F[${scope.linkage.functionNumber(own)}](${address})`;
}

export function lowerDelete(
  scope: FunctionScope,
  expression: Extract<TypedExpression, { kind: "delete" }>,
): string {
  const { operand, array, at } = expression;
  const held = scope.temporary();
  const given = `${held}=${lowerValue(scope, operand)}`;
  const { type } = operand;
  const made = type.kind === "pointer" ? type.to : undefined;
  if (made?.kind === "record" && hasOwnHeap(scope, made.record))
    throw new CannotLower("`delete` of a class that has its own", at);
  const end = (address: string): string => released(scope, array, address);
  if (!array && made?.kind === "record" && hasVirtualDestructor(scope, made.record)) {
    const whole = scope.temporary();
    return `(${given},${held}===0?0:(${whole}=destroyed(${held},${scope.place(at)}),${end(whole)}),0)`;
  }
  if (made === undefined || !needsDestroying(scope, made)) return `(${given},${held}===0?0:${end(held)},0)`;
  const size = sizeOf(made, scope.linkage.model) ?? 1;
  if (array) {
    // The length is that of the block: only the heap's own blocks tell it.
    if (scope.linkage.ownFunction("operator new[]", 1) !== undefined)
      throw new CannotLower("`delete[]` of objects with destructors that the program's own `new[]` made", at);
    const each = scope.temporary();
    const steps = destroySteps(scope, each, made, at);
    return `(${given},repeat(blockBytes(${held})/${size},(i)=>{${each}=${held}+blockBytes(${held})-(i+1)*${size};${steps.join(";")}}),${end(held)},0)`;
  }
  return `(${given},${held}===0?0:(${[...destroySteps(scope, held, made, at), end(held)].join(",")}),0)`;
}

/** Whether a class or a base of it says itself how it comes onto the heap. */
function hasOwnHeap(scope: FunctionScope, record: RecordDeclaration): boolean {
  const functions = scope.linkage.classOf(record)?.functions ?? [];
  return (
    functions.some(({ name }) => /^operator (new|delete)/.test(name)) ||
    record.bases.some((base) => hasOwnHeap(scope, base.record))
  );
}

/** Whether the class or a base of it has a destructor that is virtual (C++11 12.4p9). */
function hasVirtualDestructor(scope: FunctionScope, record: RecordDeclaration): boolean {
  const functions = scope.linkage.classOf(record)?.functions ?? [];
  return (
    functions.some(({ special, isVirtual }) => special === "destructor" && isVirtual) ||
    record.bases.some((base) => hasVirtualDestructor(scope, base.record))
  );
}
