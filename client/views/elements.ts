type Attributes = Readonly<Record<string, string | number | boolean>>;

/** An HTML element with attributes and what is in it; an attribute that is `false` is left out. */
export function make<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  attributes: Attributes,
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  setAttributes(element, attributes);
  element.append(...inside);
  return element;
}

/** The same for a drawing. */
export function draw(name: string, attributes: Attributes, ...inside: readonly (Node | string)[]): Element {
  const element = document.createElementNS("http://www.w3.org/2000/svg", name);
  setAttributes(element, attributes);
  element.append(...inside);
  return element;
}

function setAttributes(element: Element, attributes: Attributes): void {
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== false) element.setAttribute(key, value === true ? "" : String(value));
  }
}

interface Host<Message> {
  postMessage(message: Message): void;
}

declare function acquireVsCodeApi(): Host<unknown>;

/** The extension that the page belongs to. May be asked for once. */
export function hostOf<Message>(): Host<Message> {
  return acquireVsCodeApi();
}
