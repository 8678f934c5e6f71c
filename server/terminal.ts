/** The reader of a pipe may leave early, as `head` does; there is nobody left to tell then. */
export function endWhenReaderLeaves(stream: NodeJS.WriteStream): void {
  stream.on("error", () => process.exit());
}

/** Whether to colour what is written to `stream`: a terminal that can, and a user who has not declined. */
export function wantsColours(stream: { readonly isTTY?: boolean }, environment: NodeJS.ProcessEnv): boolean {
  return stream.isTTY === true && !environment.NO_COLOR && environment.TERM !== "dumb";
}
