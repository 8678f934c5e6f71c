import type { FindingIdentity } from "../../finding-identity.ts";

const prime = 0x100000001b3n;
const offsetBasis = 0xcbf29ce484222325n;

/** The identity as 16 hexadecimal digits: FNV-1a of 64 bits (draft-eastlake-fnv, from memory) of them. */
export function fingerprintOf({ rule, file, text, occurrence }: FindingIdentity): string {
  return fnv1a(JSON.stringify([rule, file, text, occurrence]))
    .toString(16)
    .padStart(16, "0");
}

/** FNV-1a of 64 bits over the UTF-8 of a text. */
export function fnv1a(text: string): bigint {
  let hash = offsetBasis;
  for (const byte of new TextEncoder().encode(text)) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * prime);
  }
  return hash;
}
