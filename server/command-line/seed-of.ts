import { CannotDo } from "./cannot-do.ts";

/** What `--seed` says; 1 where it is not given. Throws `CannotDo` for what is no seed. */
export function seedOf(text: string | undefined): number {
  if (text === undefined) return 1;
  if (!/^\d{1,9}$/.test(text)) throw new CannotDo(`--seed needs a whole number from 0, not "${text}"`);
  return Number(text);
}
