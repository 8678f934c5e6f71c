/** Red, green and blue from 0 to 255, and how much of what is below they hide, from 0 to 1. */
export type Colour = readonly [red: number, green: number, blue: number, alpha: number];

/** A colour as a canvas writes it: `#rrggbb` or `rgba(r, g, b, a)`. */
export function colourOf(text: string): Colour {
  const [, hex] = /^#([0-9a-f]{6})$/i.exec(text) ?? [];
  if (hex !== undefined) {
    const value = Number.parseInt(hex, 16);
    return [(value >> 16) & 255, (value >> 8) & 255, value & 255, 1];
  }
  const [red = 0, green = 0, blue = 0, alpha = 1] = (text.match(/[\d.]+/g) ?? []).map(Number);
  return [red, green, blue, alpha];
}

/** The one of two inks that stands out more from `fill` on `paper`; both inks and the paper hide all below. */
export function inkOn(fill: Colour, paper: Colour, inks: readonly [Colour, Colour]): Colour {
  const ground = over(fill, paper);
  const [first, second] = inks;
  return contrast(first, ground) >= contrast(second, ground) ? first : second;
}

function over(top: Colour, below: Colour): Colour {
  const mix = (index: 0 | 1 | 2): number => top[index] * top[3] + below[index] * (1 - top[3]);
  return [mix(0), mix(1), mix(2), 1];
}

/** From 1 to 21: Web Content Accessibility Guidelines 2.1, "contrast ratio". */
export function contrast(one: Colour, other: Colour): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

/** The same, "relative luminance". */
function luminance([red, green, blue]: Colour): number {
  return 0.2126 * share(red) + 0.7152 * share(green) + 0.0722 * share(blue);
}

function share(value: number): number {
  const part = value / 255;
  return part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
}
