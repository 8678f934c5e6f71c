/** What a key does while the ribbon has the focus. */
export type KeyAction =
  | { readonly do: "zoom"; readonly factor: number }
  | { readonly do: "pan"; readonly share: number }
  | { readonly do: "begin" | "end" | "whole" | "open" | "measure" | "find" | "drop" }
  | { readonly do: "row"; readonly by: 1 | -1 }
  | { readonly do: "step"; readonly by: 1 | -1 };

export interface Key {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
}

/** Undefined for a key that is the editor's. */
export function actionOf({ key, shiftKey, ctrlKey, altKey, metaKey }: Key): KeyAction | undefined {
  if (ctrlKey || altKey || metaKey) return undefined;
  // Letters are the same with Shift or Caps Lock.
  switch (key.length === 1 ? key.toLowerCase() : key) {
    case "+":
    case "=":
      return { do: "zoom", factor: 0.5 };
    case "-":
      return { do: "zoom", factor: 2 };
    case "0":
      return { do: "whole" };
    case "ArrowLeft":
      return shiftKey ? { do: "step", by: -1 } : { do: "pan", share: -0.2 };
    case "ArrowRight":
      return shiftKey ? { do: "step", by: 1 } : { do: "pan", share: 0.2 };
    case "ArrowUp":
      return { do: "row", by: -1 };
    case "ArrowDown":
      return { do: "row", by: 1 };
    case "Home":
      return { do: "begin" };
    case "End":
      return { do: "end" };
    case "Enter":
      return { do: "open" };
    case "m":
      return { do: "measure" };
    case "/":
      return { do: "find" };
    case "Escape":
      return { do: "drop" };
    default:
      return undefined;
  }
}

/** For a list of help, in the order in which one needs them. */
export const keysInWords: readonly (readonly [keys: string, does: string])[] = [
  ["+ \u2212 or wheel", "closer, further"],
  ["\u2190 \u2192, drag or Shift+wheel", "move"],
  ["Home, End, 0", "begin, end, whole run"],
  ["\u2191 \u2193", "row"],
  ["Shift+\u2190 \u2192", "edge or frame of the row"],
  ["Enter or click", "its line of code"],
  ["M or Shift+click", "measure from, to; M once more: its end"],
  ["/", "find a byte"],
];
