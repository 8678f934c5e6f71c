import type { FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { RecordDeclaration } from "../../reader/types/types.ts";
import { destroySteps, needsDestroying } from "./destructors.ts";
import { firstSteps } from "./initializers.ts";
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
    const steps = firstSteps(scope, held, made, initializer, at);
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
  const record = made.kind === "record" ? made.record : undefined;
  const destructor = record && virtualDestructor(scope, record);
  if (destructor !== undefined) {
    const number = scope.linkage.methodNumber(destructor);
    const whole = scope.temporary();
    return `(${given},${held}===0?0:(${whole}=adjusted(${number},${held}),virtual(${number},${held},${scope.place(at)})(${whole}),released(${whole})),0)`;
  }
  return `(${given},${held}===0?0:(${[...destroySteps(scope, held, made, at), `released(${held})`].join(",")}),0)`;
}

/** The destructor of the class or of a base, where one says that it is virtual (C++11 12.4p9). */
function virtualDestructor(scope: FunctionScope, record: RecordDeclaration): FunctionSymbol | undefined {
  const own = scope.linkage.classOf(record)?.functions.find(({ special }) => special === "destructor");
  if (own?.isVirtual === true) return own;
  for (const base of record.bases) {
    const found = virtualDestructor(scope, base.record);
    if (found !== undefined) return found;
  }
  return undefined;
}
