/**
 * Tells a worker that its run is not wanted any more. The memory is shared, as a worker that runs firmware hears no
 * message before the run is over.
 */
export type CancelFlag = Int32Array;

/** Whether memory can be shared: not in a browser's page that is not isolated from others. */
export function sharesMemory(): boolean {
  return typeof SharedArrayBuffer !== "undefined";
}

export function newCancelFlag(): CancelFlag {
  return new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
}

export function cancel(flag: CancelFlag): void {
  Atomics.store(flag, 0, 1);
}

export function isCancelled(flag: CancelFlag | undefined): boolean {
  return flag !== undefined && Atomics.load(flag, 0) !== 0;
}
