import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";

const patience = { timeout: 60_000 };

/** What a user does and sees in the editor's window. */
export class Workbench {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async openFile(name: string): Promise<void> {
    await this.page
      .locator(".explorer-folders-view .monaco-list-row", { hasText: name })
      .first()
      .dblclick(patience);
    await this.page.locator(`.tab.active[data-resource-name="${name}"]`).waitFor(patience);
    await this.lines.first().waitFor(patience);
  }

  /** Lines of the active editor. */
  get lines(): Locator {
    return this.page.locator(".editor-instance .view-line");
  }

  lineWith(text: string): Locator {
    // The editor writes blanks as no-break spaces.
    return this.lines.filter({
      hasText: new RegExp(text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&").replaceAll(" ", "[ \\u00a0]")),
    });
  }

  get errorSquiggles(): Locator {
    return this.page.locator(".squiggly-error");
  }

  get hover(): Locator {
    return this.page.locator(".monaco-hover:not(.hidden) .hover-contents, .monaco-hover .hover-row");
  }

  get statusItem(): Locator {
    return this.page.locator(".statusbar-item", { hasText: "Edgewise" });
  }

  /** Puts the cursor behind a piece of text by searching for it. */
  async selectText(text: string): Promise<void> {
    // By key, as the first line may be out of sight.
    await this.page.keyboard.press("Control+1");
    await this.page.keyboard.press("Control+Home");
    await this.page.keyboard.press("Control+f");
    const widget = this.page.locator(".find-widget.visible");
    const field = widget.locator(".find-part textarea").first();
    await field.waitFor(patience);
    await field.fill(text);
    // On a busy machine the search comes after the next key.
    await widget.locator(".matchesCount", { hasText: / of [1-9]/ }).waitFor(patience);
    await this.page.keyboard.press("Enter");
    await this.page.keyboard.press("Escape");
    // What a next key opens would be closed again as the focus comes back.
    await widget.waitFor({ state: "hidden", ...patience });
    await this.page.locator(".editor-instance .monaco-editor.focused").first().waitFor(patience);
  }

  async replaceText(text: string, by: string): Promise<void> {
    await this.selectText(text);
    await this.page.keyboard.type(by);
  }

  /** Rests the mouse on a token of the source. */
  async pointAt(token: string): Promise<void> {
    await this.lines.getByText(token, { exact: true }).first().hover(patience);
  }

  /** For people who want to see what the test saw; the folder is not under version control. */
  async screenshot(name: string): Promise<void> {
    mkdirSync("tests/editor/screenshots", { recursive: true });
    await this.page.screenshot({ path: join("tests/editor/screenshots", `${name}.png`) });
  }
}
