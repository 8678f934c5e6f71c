/** Where faults of the server itself are told; never a message box. */
export type Log = (message: string) => void;

/**
 * Runs `work` and gives what it gives, or `otherwise` where it fails: a fault in one request must not end the
 * server or be shown as an answer. The fault goes to the log with `what` was being done.
 */
export async function guarded<T>(
  what: string,
  log: Log,
  otherwise: T,
  work: () => T | Promise<T>,
): Promise<T> {
  try {
    return await work();
  } catch (error) {
    log(`${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    return otherwise;
  }
}
