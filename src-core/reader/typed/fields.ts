import type { Field, RecordDeclaration } from "../types/types.ts";

/** The way to a field of this very record: through unnamed inner records to the one named. */
export function fieldPath(record: RecordDeclaration, name: string): readonly Field[] | undefined {
  for (const field of record.fields) {
    if (field.name === name) return [field];
  }
  for (const field of record.fields) {
    if (field.name !== "" || field.type.kind !== "record") continue;
    const rest = fieldPath(field.type.record, name);
    if (rest !== undefined) return [field, ...rest];
  }
  return undefined;
}

export interface FoundField {
  /** Base classes to convert to first, outermost derived first. */
  readonly bases: readonly RecordDeclaration[];
  readonly path: readonly Field[];
}

/** The same, base classes included. */
export function findField(record: RecordDeclaration, name: string): FoundField | undefined {
  const path = fieldPath(record, name);
  if (path !== undefined) return { bases: [], path };
  for (const base of record.bases) {
    const found = findField(base.record, name);
    if (found !== undefined) return { bases: [base.record, ...found.bases], path: found.path };
  }
  return undefined;
}
