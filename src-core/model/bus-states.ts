/** What clock and data levels mean on the PS/2 port. The PS/2 Mouse/Keyboard Protocol, bus states. */
export type BusState = "idle" | "inhibited" | "request-to-send";

/** Clock low inhibits, whatever data is; clock high with data low is the host's request to send. */
export function busState(clock: 0 | 1, data: 0 | 1): BusState {
  if (clock === 0) return "inhibited";
  return data === 1 ? "idle" : "request-to-send";
}
