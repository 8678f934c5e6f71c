import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { RecordDeclaration } from "../../reader/types/types.ts";
import { destroySteps, needsDestroying } from "./destructors.ts";
import { firstSteps, ofClass } from "./initializers.ts";
import { objectFromCopy } from "./objects.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { lowerValue } from "./values.ts";

export function lowerNew(
  scope: FunctionScope,
  expression: Extract<TypedExpression, { kind: "new" }>,
): string {
  const { type, initializer, length, at } = expression;
  const made = type.kind === "pointer" ? type.to : type;
  const size = sizeOf(made, scope.linkage.model);
  if (size === undefined) throw new CannotLower("`new` of an unknown type", at);
  const held = scope.temporary();
  const p = scope.place(at);
  if (length === undefined) {
    const steps =
      initializer?.kind === "value" && made.kind === "record"
        ? [objectFromCopy(scope, held, ofClass(initializer.value, made.record))]
        : firstSteps(scope, held, made, initializer, at);
    return `(${[`${held}=taken(${size},${p})`, ...steps, held].join(",")})`;
  }
  const count = scope.temporary();
  const each = scope.temporary();
  const steps = firstSteps(scope, each, made, initializer, at);
  const loop =
    steps.length === 0 ? "" : `,repeat(${count},(i)=>{${each}=${held}+i*${size};${steps.join(";")}})`;
  return `(${count}=Number(${lowerValue(scope, length)}),${held}=taken(${size}*${count},${p})${loop},${held})`;
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
  if (made === undefined || !needsDestroying(scope, made)) return `(${given},released(${held}),0)`;
  const size = sizeOf(made, scope.linkage.model) ?? 1;
  if (array) {
    const each = scope.temporary();
    const steps = destroySteps(scope, each, made, at);
    return `(${given},repeat(blockBytes(${held})/${size},(i)=>{${each}=${held}+blockBytes(${held})-(i+1)*${size};${steps.join(";")}}),released(${held}),0)`;
  }
  if (made.kind === "record" && hasVirtualDestructor(scope, made.record))
    return `(${given},${held}===0?0:released(destroyed(${held},${scope.place(at)})),0)`;
  return `(${given},${held}===0?0:(${[...destroySteps(scope, held, made, at), `released(${held})`].join(",")}),0)`;
}

/** Whether the class or a base of it has a destructor that is virtual (C++11 12.4p9). */
function hasVirtualDestructor(scope: FunctionScope, record: RecordDeclaration): boolean {
  const functions = scope.linkage.classOf(record)?.functions ?? [];
  return (
    functions.some(({ special, isVirtual }) => special === "destructor" && isVirtual) ||
    record.bases.some((base) => hasVirtualDestructor(scope, base.record))
  );
}
