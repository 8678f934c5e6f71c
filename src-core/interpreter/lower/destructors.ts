import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";
import { moved } from "./initializers.ts";
import { functionCode } from "./missing.ts";
import type { FunctionScope } from "./scope.ts";

function destructorOf(scope: FunctionScope, record: RecordDeclaration): FunctionSymbol | undefined {
  return scope.linkage.classOf(record)?.functions.find(isDestructor);
}

/** One that its author wrote. */
function isDestructor({ special, bodyless }: FunctionSymbol): boolean {
  return special === "destructor" && bodyless !== "default";
}

/** Whether something runs when an object of this type ends. */
export function needsDestroying(scope: FunctionScope, type: Type): boolean {
  if (type.kind === "array") return needsDestroying(scope, type.of);
  if (type.kind !== "record") return false;
  const { record } = type;
  return (
    destructorOf(scope, record) !== undefined ||
    record.fields.some((field) => needsDestroying(scope, field.type)) ||
    record.bases.some((base) => needsDestroying(scope, { kind: "record", record: base.record }))
  );
}

/** JavaScript expressions that end an object: arrays from their last element on (C++11 12.4). */
export function destroySteps(scope: FunctionScope, address: string, type: Type, at: At): string[] {
  if (!needsDestroying(scope, type)) return [];
  if (type.kind === "array") {
    const size = sizeOf(type.of, scope.linkage.model) ?? 0;
    const { length = 0 } = type;
    const each = scope.temporary();
    const steps = [`${each}=${address}+(${length - 1}-i)*${size}`, ...destroySteps(scope, each, type.of, at)];
    return [`repeat(${length},(i)=>{${steps.join(";")}})`];
  }
  if (type.kind !== "record") return [];
  const destructor = destructorOf(scope, type.record);
  if (destructor !== undefined) return [`${functionCode(scope, destructor, at)}(${address})`];
  return partSteps(scope, address, type.record, at);
}

/** Members from the last to the first, then bases. */
export function partSteps(
  scope: FunctionScope,
  address: string,
  record: RecordDeclaration,
  at: At,
): string[] {
  const fields = [...record.fields].reverse();
  return [
    ...fields.flatMap((field) => destroySteps(scope, moved(address, field.bitOffset >> 3), field.type, at)),
    ...[...record.bases]
      .reverse()
      .flatMap((base) =>
        destroySteps(scope, moved(address, base.offset), { kind: "record", record: base.record }, at),
      ),
  ];
}
