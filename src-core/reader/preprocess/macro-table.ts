import type { Macro } from "./macro.ts";

/** What one inclusion looked up and changed, so that it can be repeated without reading the file again. */
export interface TableRecord {
  /** Macros looked up before the inclusion itself defined or undefined them, as they were then. */
  readonly looked: Map<string, Macro | undefined>;
  /** Names it changed, with the macro that stands at its end. */
  readonly changed: Map<string, Macro | undefined>;
}

/** The macros that stand at the point reached, with a record of uses for inclusions that are being kept. */
export class MacroTable {
  private readonly macros: Map<string, Macro>;
  private readonly records: TableRecord[] = [];

  constructor(macros: Iterable<readonly [string, Macro]>) {
    this.macros = new Map(macros);
  }

  get(name: string): Macro | undefined {
    const macro = this.macros.get(name);
    if (this.records.length > 0) this.noteLook(name, macro);
    return macro;
  }

  set(name: string, macro: Macro | undefined): void {
    if (macro === undefined) this.macros.delete(name);
    else this.macros.set(name, macro);
    for (const record of this.records) record.changed.set(name, macro);
  }

  entries(): ReadonlyMap<string, Macro> {
    return this.macros;
  }

  startRecord(): TableRecord {
    const record: TableRecord = { looked: new Map(), changed: new Map() };
    this.records.push(record);
    return record;
  }

  endRecord(record: TableRecord): void {
    const index = this.records.indexOf(record);
    if (index >= 0) this.records.splice(index, 1);
  }

  /** True if everything the recorded inclusion looked up is now as it was then. */
  wouldRepeat(record: TableRecord): boolean {
    for (const [name, macro] of record.looked) if (this.macros.get(name) !== macro) return false;
    return true;
  }

  repeat(record: TableRecord): void {
    for (const [name, macro] of record.looked) this.noteLook(name, macro);
    for (const [name, macro] of record.changed) this.set(name, macro);
  }

  private noteLook(name: string, macro: Macro | undefined): void {
    for (const record of this.records) {
      if (!record.changed.has(name) && !record.looked.has(name)) record.looked.set(name, macro);
    }
  }
}
