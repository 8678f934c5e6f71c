import type { AvrChip } from "../../model/chips/chip.ts";

/** Bytes of the core's buffers, of which one stays free; 2 or more. */
export interface BufferSizes {
  readonly receive: number;
  readonly transmit: number;
}

/**
 * SERIAL_RX_BUFFER_SIZE and SERIAL_TX_BUFFER_SIZE of `HardwareSerial.h`: 64, or 16 where there is little RAM, unless the
 * build defines them. Undefined for a definition that is no plain number of 2 or more.
 */
export function bufferSizes(model: AvrChip, defines: ReadonlyMap<string, string>): BufferSizes | undefined {
  const usual = model.memory.ramEnd - model.memory.ramStart < 1023 ? 16 : 64;
  const size = (name: string): number => {
    const said = defines.get(name)?.trim();
    return said === undefined ? usual : /^(0x[0-9a-f]+|[1-9]\d*)$/i.test(said) ? Number(said) : 0;
  };
  const sizes = { receive: size("SERIAL_RX_BUFFER_SIZE"), transmit: size("SERIAL_TX_BUFFER_SIZE") };
  return sizes.receive < 2 || sizes.transmit < 2 ? undefined : sizes;
}
