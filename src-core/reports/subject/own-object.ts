import type { Machine } from "../../interpreter/machine.ts";
import type { Program } from "../../reader/program/program.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";

/**
 * The address of the first object of a class that the firmware has at file level: one of its own, or what is inside of
 * another, such as a member or a base. Undefined for none.
 */
export function ownObject(program: Program, machine: Machine, record: RecordDeclaration): number | undefined {
  for (const variable of program.variables) {
    const offset = offsetIn(variable.type, record);
    const start = offset === undefined ? undefined : machine.addressOf(variable);
    if (offset !== undefined && start !== undefined) return start + offset;
  }
  return undefined;
}

/** Bytes in front of the first object of the class in what has this type. */
function offsetIn(type: Type, sought: RecordDeclaration): number | undefined {
  if (type.kind === "array") return offsetIn(type.of, sought);
  if (type.kind !== "record") return undefined;
  const { record } = type;
  if (isSame(record, sought)) return 0;
  for (const base of record.bases) {
    const inner = offsetIn({ kind: "record", record: base.record }, sought);
    if (inner !== undefined) return base.offset + inner;
  }
  if (record.keyword === "union") return undefined;
  for (const field of record.fields) {
    const inner = offsetIn(field.type, sought);
    if (inner !== undefined) return (field.bitOffset >> 3) + inner;
  }
  return undefined;
}

/** A class in a header is read once for each unit that includes it. */
function isSame(a: RecordDeclaration, b: RecordDeclaration): boolean {
  return a === b || (a.name !== "" && a.name === b.name);
}
