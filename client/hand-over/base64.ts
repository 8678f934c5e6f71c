/** How many bytes become characters at a time: the arguments of a call are limited. */
const piece = 0x8000;

export function asBase64(bytes: Uint8Array): string {
  let characters = "";
  for (let start = 0; start < bytes.length; start += piece) {
    characters += String.fromCharCode(...bytes.subarray(start, start + piece));
  }
  return btoa(characters);
}
