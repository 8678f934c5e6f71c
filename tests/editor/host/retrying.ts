import { errors } from "playwright-core";

/** How long a user waits for something, in milliseconds: a loaded machine with two cores takes its time. */
export const patience = { timeout: Number(process.env.EDGEWISE_PATIENCE ?? 150_000) };

/** How long one attempt may take at first, in milliseconds; each has twice the time of the one before. */
const firstLimit = 5_000;

/**
 * Does what a user does once more when nothing comes of it: on a busy machine a key may be pressed before the
 * editor can answer it, and what it opened may be closed again as the focus moves. `giveUp` ends an attempt that
 * came to nothing. Every wait of an attempt takes the limit handed to it.
 * @throws what the last attempt threw, once the patience is over; at once what is no time-out.
 */
export async function retrying(
  attempt: (limit: { readonly timeout: number }) => Promise<void>,
  giveUp: () => Promise<void>,
): Promise<void> {
  const end = Date.now() + patience.timeout;
  for (let timeout = firstLimit; ; timeout *= 2) {
    try {
      await attempt({ timeout });
      return;
    } catch (error) {
      if (!(error instanceof errors.TimeoutError) || Date.now() >= end) throw error;
    }
    await giveUp();
  }
}
