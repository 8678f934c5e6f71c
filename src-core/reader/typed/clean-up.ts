import type { Variable } from "./nodes.ts";

/** The function that is called with a variable's address when it ends: `__attribute__((cleanup(f)))` of gcc. */
export function cleanUpOf({ attributes }: Variable): string | undefined {
  return attributes.find(({ name }) => name === "cleanup" || name === "__cleanup__")?.arguments[0];
}
