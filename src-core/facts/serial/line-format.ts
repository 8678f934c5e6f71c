/** Data bits, parity and stop bits of one asynchronous frame. */
export interface LineFormat {
  readonly dataBits: 5 | 6 | 7 | 8 | 9;
  readonly parity: "none" | "even" | "odd";
  readonly stopBits: 1 | 2;
}
