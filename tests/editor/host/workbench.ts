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
    await this.lines.first().click(patience);
    await this.page.keyboard.press("Control+f");
    const field = this.page.locator(".find-widget.visible .find-part textarea").first();
    await field.waitFor(patience);
    await field.fill(text);
    await this.page.keyboard.press("Enter");
    await this.page.keyboard.press("Escape");
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
