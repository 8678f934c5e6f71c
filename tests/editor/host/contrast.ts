import type { Locator } from "playwright-core";

/** What of a page is needed; the code below runs in the browser. */
interface PageElement {
  readonly parentElement: PageElement | null;
}

declare function getComputedStyle(element: PageElement): {
  readonly color: string;
  readonly backgroundColor: string;
};

/**
 * Texts below an element whose contrast with what is behind them is less than 4.5 to 1: Web Content Accessibility
 * Guidelines 2.1, success criterion 1.4.3, computed as "relative luminance" and "contrast ratio" are defined there.
 */
export function faintTexts(locator: Locator): Promise<readonly string[]> {
  return locator.evaluate((root) => {
    type Colour = readonly [red: number, green: number, blue: number, alpha: number];
    const colourOf = (text: string): Colour => {
      const [red = 0, green = 0, blue = 0, alpha = 1] = (text.match(/[\d.]+/g) ?? []).map(Number);
      // A colour that was mixed is told in shares of one.
      const whole = text.startsWith("color(") ? 255 : 1;
      return [red * whole, green * whole, blue * whole, alpha];
    };
    const over = (top: Colour, below: Colour): Colour => {
      const mix = (index: 0 | 1 | 2) => top[index] * top[3] + below[index] * (1 - top[3]);
      return [mix(0), mix(1), mix(2), 1];
    };
    const behind = (element: PageElement | null): Colour => {
      if (element === null) return [255, 255, 255, 1];
      const own = colourOf(getComputedStyle(element).backgroundColor);
      return own[3] === 1 ? own : over(own, behind(element.parentElement));
    };
    const luminance = (colour: Colour): number => {
      const [red = 0, green = 0, blue = 0] = [colour[0], colour[1], colour[2]].map((value) => {
        const share = value / 255;
        return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const faint: string[] = [];
    for (const element of root.querySelectorAll("*")) {
      const hasText = [...element.childNodes].some(
        (node) => node.nodeType === 3 && (node.textContent ?? "").trim() !== "",
      );
      if (!hasText || element.closest(".unseen") !== null) continue;
      const style = getComputedStyle(element);
      const back = behind(element);
      const [light, dark] = [luminance(over(colourOf(style.color), back)), luminance(back)].sort(
        (a, b) => b - a,
      );
      const ratio = ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
      if (ratio < 4.5)
        faint.push(`${element.textContent?.trim().slice(0, 40)}: ${ratio.toFixed(2)} (${style.color})`);
    }
    return faint;
  });
}
