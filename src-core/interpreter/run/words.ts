import { sizeOf } from "../../reader/types/layout.ts";
import type { DataModel, Type } from "../../reader/types/types.ts";

/** A number or pointer of several bytes inside an object; `offset` in bytes from the object's start. */
export interface Word {
  readonly offset: number;
  readonly bytes: number;
}

/** What of an object takes several accesses on a machine that reads and writes bytes; bit-fields left out. */
export function* wordsOf(type: Type, model: DataModel, offset = 0): Generator<Word> {
  if (type.kind === "array") {
    const size = sizeOf(type.of, model);
    if (size === undefined || size === 1) return;
    for (let index = 0; index < (type.length ?? 0); index += 1)
      yield* wordsOf(type.of, model, offset + index * size);
    return;
  }
  if (type.kind === "record") {
    for (const { record, offset: base } of type.record.bases)
      yield* wordsOf({ kind: "record", record }, model, offset + base);
    for (const field of type.record.fields) {
      if (field.bitWidth === undefined) yield* wordsOf(field.type, model, offset + field.bitOffset / 8);
    }
    return;
  }
  const bytes = sizeOf(type, model);
  if (bytes !== undefined && bytes > 1) yield { offset, bytes };
}
