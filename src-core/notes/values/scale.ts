/** One whole number, or two with a bar between them, each 1 to 999: `2`, `1/2`, `3/4`. */
export const SCALE_PATTERN = "^[1-9][0-9]{0,2}(/[1-9][0-9]{0,2})?$";

/** Counts out per count in, above zero; undefined where `text` is no such number. */
export function parseScale(text: string): number | undefined {
  if (!new RegExp(SCALE_PATTERN).test(text)) return undefined;
  const [over, under = "1"] = text.split("/");
  return Number(over) / Number(under);
}

/** `1/2`, `3`: the fraction with the smallest numbers that comes to this. */
export function formatScale(scale: number): string {
  for (let under = 1; under < 1000; under += 1) {
    const over = Math.round(scale * under);
    if (over >= 1 && over / under === scale) return under === 1 ? `${over}` : `${over}/${under}`;
  }
  return String(scale);
}
