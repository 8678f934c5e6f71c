import type { Registers } from "../../interpreter/outcome.ts";
import type { Chip } from "../../model/chips/chip.ts";

/** Registers of a chip with nothing behind them: they keep what is written, and tell which of the others were asked. */
export class BareRegisters implements Registers {
  /** What every bit is that nobody wrote. */
  idle: 0 | 1 = 0;
  readonly #names: ReadonlyMap<number, string>;
  readonly #bytes = new Map<number, number>();
  readonly #asked = new Set<string>();

  constructor(chip: Chip | undefined) {
    const registers = chip?.kind === "avr" ? chip.registers : [];
    this.#names = new Map(registers.map(({ address, name }) => [address, name]));
  }

  /** Names of those that were read before they were written. The status register is the processor's own. */
  get asked(): readonly string[] {
    return [...this.#asked].filter((name) => name !== "SREG");
  }

  /** As they are after a reset. */
  clear(): void {
    this.#bytes.clear();
    this.#asked.clear();
  }

  read(address: number, bytes: number): number {
    let value = 0;
    for (let index = bytes - 1; index >= 0; index -= 1) value = value * 256 + this.#byteAt(address + index);
    return value;
  }

  write(address: number, value: number, bytes: number): void {
    for (let index = 0; index < bytes; index += 1)
      this.#bytes.set(address + index, (value >>> (8 * index)) & 0xff);
  }

  #byteAt(address: number): number {
    const written = this.#bytes.get(address);
    if (written !== undefined) return written;
    const name = this.#names.get(address);
    if (name !== undefined) this.#asked.add(name);
    return this.idle * 0xff;
  }
}
