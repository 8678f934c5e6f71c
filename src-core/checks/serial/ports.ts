import type { PortName } from "../../facts/serial/serial-facts.ts";

/** Tells ports apart. */
export function portKey(port: PortName): string {
  return port.kind === "uart" ? `uart ${port.uart}` : `software ${port.name}`;
}
