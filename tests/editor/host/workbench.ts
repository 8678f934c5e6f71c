import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { FrameLocator, Locator, Page } from "playwright-core";
import { expect } from "vitest";
import { patience, retrying } from "./retrying.ts";

/** Of the browser, in which the functions below that are evaluated run. */
declare function requestAnimationFrame(call: (time: number) => void): void;

const folderOfPictures = "tests/editor/screenshots";

interface Limit {
  readonly timeout: number;
}

/** What a user does and sees in the editor's window. */
export class Workbench {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** Tries again until it works or patience is over; Escape closes what an attempt left open. */
  async retrying(attempt: (limit: Limit) => Promise<void>): Promise<void> {
    await retrying(attempt, () => this.page.keyboard.press("Escape"));
  }

  async openFile(name: string): Promise<void> {
    const row = this.page.locator(".explorer-folders-view .monaco-list-row", { hasText: name }).first();
    await row.waitFor(patience);
    await this.retrying(async (limit) => {
      await row.dblclick(limit);
      await this.page.locator(`.tab.active[data-resource-name="${name}"]`).waitFor(limit);
      await this.lines.first().waitFor(limit);
    });
  }

  /** Opens a file of whose name there is one, wherever it is. */
  async goToFile(name: string): Promise<void> {
    await this.retrying(async (limit) => {
      await this.page.keyboard.press("Control+p");
      const field = this.page.locator(".quick-input-widget input").first();
      await field.waitFor(limit);
      await field.fill(name, limit);
      await this.choice(name).click(limit);
      await this.page.locator(`.tab.active[data-resource-name="${name}"]`).waitFor(limit);
      await this.lines.first().waitFor(limit);
    });
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

  /** A lens above a line of the active editor. */
  lensWith(text: string): Locator {
    return this.page
      .locator(".editor-instance .codelens-decoration > :is(a, span)")
      .filter({ hasText: new RegExp(text.replaceAll(" ", "[ \\u00a0]")) });
  }

  /** Clicks something and picks a row of the list that it opens; `shown` runs while the list is open. */
  async pickFrom(opener: Locator, row: string, shown: () => Promise<void>): Promise<void> {
    const offered = this.page.locator(".quick-input-list .monaco-list-row", {
      has: this.page.getByText(row, { exact: true }),
    });
    await this.retrying(async (limit) => {
      await opener.first().click(limit);
      await offered.first().waitFor(limit);
      await shown();
      await offered.first().click(limit);
    });
  }

  get hover(): Locator {
    return this.page.locator(".monaco-hover:not(.hidden) .hover-contents, .monaco-hover .hover-row");
  }

  get statusItem(): Locator {
    return this.page.locator(".statusbar-item", { hasText: "Edgewise" });
  }

  /** The entry in the status bar once it shows this. */
  status(text: RegExp): Locator {
    return this.page.locator(".statusbar-item", { hasText: text });
  }

  /** The same by what it tells a screen reader, its tooltip among it. */
  statusWith(told: RegExp): Locator {
    return this.page.locator(".statusbar").getByRole("button", { name: told });
  }

  /** Messages of the editor. */
  get notifications(): Locator {
    return this.page.locator(".notification-toast, .notifications-center .notification-list-item");
  }

  async selectText(text: string): Promise<void> {
    await this.retrying((limit) => this.#select(text, limit));
  }

  async replaceText(text: string, by: string): Promise<void> {
    await this.selectText(text);
    await this.page.keyboard.type(by);
    await this.lineWith(by).first().waitFor(patience);
  }

  /** Applies the fix that the light bulb at a piece of underlined text offers; `shown` runs while the menu is open. */
  async applyFix(text: string, fix: string, shown: () => Promise<void>): Promise<void> {
    await this.errorSquiggles.first().waitFor(patience);
    await this.takeAction(text, fix, shown);
  }

  /** The same where nothing is underlined as an error. */
  async takeAction(text: string, title: string, shown: () => Promise<void>): Promise<void> {
    const action = this.page.locator(".action-widget .monaco-list-row", { hasText: title }).first();
    await this.retrying(async (limit) => {
      await this.#select(text, limit);
      await this.page.keyboard.press("Control+.");
      await action.waitFor(limit);
      await shown();
      await action.click(limit);
    });
  }

  /** Asks for completion at the cursor until a row with this text is offered. */
  async complete(text: string): Promise<Locator> {
    const offered = this.page.locator(".suggest-widget .monaco-list-row", { hasText: text }).first();
    await this.retrying(async (limit) => {
      await this.page.keyboard.press("Control+Space");
      await offered.waitFor(limit);
    });
    return offered;
  }

  /** Rests the mouse on a token of the source until a hover with this text is there. */
  async hoverOver(token: string, text: string): Promise<Locator> {
    const hover = this.hover.filter({ hasText: text }).first();
    await this.retrying(async (limit) => {
      // The editor asks for a hover as the mouse comes in.
      await this.page.mouse.move(0, 0);
      await this.lines.getByText(token, { exact: true }).first().hover(limit);
      await hover.waitFor(limit);
    });
    return hover;
  }

  /** Follows a link in the hover over a token. */
  async followLink(token: string, text: string): Promise<void> {
    await this.retrying(async (limit) => {
      await this.page.mouse.move(0, 0);
      await this.lines.getByText(token, { exact: true }).first().hover(limit);
      await this.page.locator(".monaco-hover a", { hasText: text }).first().click(limit);
    });
  }

  /** Selects a piece of text by searching for it. */
  async #select(text: string, limit: Limit): Promise<void> {
    // By key, as the first line may be out of sight.
    await this.page.keyboard.press("Control+1");
    await this.page.keyboard.press("Control+Home");
    await this.page.keyboard.press("Control+f");
    const widget = this.page.locator(".find-widget.visible");
    const field = widget.locator(".find-part textarea").first();
    await field.waitFor(limit);
    await field.fill(text);
    // On a busy machine the search comes after the next key.
    await widget.locator(".matchesCount", { hasText: / of [1-9]/ }).waitFor(limit);
    await this.page.keyboard.press("Enter");
    await this.page.keyboard.press("Escape");
    // What a next key opens would be closed again as the focus comes back.
    await widget.waitFor({ state: "hidden", ...limit });
    await this.page.locator(".editor-instance .monaco-editor.focused").first().waitFor(limit);
  }

  /** Runs a command by its title until `outcome` is to be seen. */
  async runCommand(title: string, outcome: Locator): Promise<void> {
    await this.retrying(async (limit) => {
      await this.#enterCommand(title, limit);
      await outcome.waitFor(limit);
    });
  }

  async #enterCommand(title: string, limit: Limit): Promise<void> {
    await this.page.keyboard.press("F1");
    const field = this.page.locator(".quick-input-widget input").first();
    await field.waitFor(limit);
    await field.fill(`>${title}`, limit);
    await this.page.locator(".quick-input-list .monaco-list-row", { hasText: title }).first().click(limit);
  }

  /** Shows a run: picks a row of each list that the command opens; `shown` runs while the first is open. */
  async showRun(rows: readonly string[], shown: () => Promise<void> = async () => {}): Promise<void> {
    await this.#pickAfter("Edgewise: Show a Run", rows, shown);
  }

  /** Shows a matrix, once: a command that is slow to show it is not run again, as the cells would begin anew. */
  async showMatrix(): Promise<void> {
    await this.retrying((limit) => this.#enterCommand("Edgewise: Show the Matrix", limit));
    await this.page.locator(".tab.active", { hasText: "Matrix: " }).waitFor(patience);
  }

  /** Opens the page of a term: the row of the list that searching for `words` leaves. */
  async explainTerm(words: string, row: string): Promise<void> {
    await this.#pickAfter("Edgewise: Explain a Term...", [row], () => this.page.keyboard.type(words));
  }

  /** One attempt picks them all, as the editor closes a list where a view takes the focus late. */
  async #pickAfter(title: string, rows: readonly string[], shown: () => Promise<void>): Promise<void> {
    const [first = ""] = rows;
    await this.retrying(async (limit) => {
      await this.#enterCommand(title, limit);
      await this.choice(first).waitFor(limit);
      await shown();
      for (const row of rows) await this.choice(row).click(limit);
    });
  }

  /** The same by keys alone. */
  async commandByKey(title: string): Promise<void> {
    const row = this.page.locator(".quick-input-list .monaco-list-row.focused", { hasText: title });
    await this.retrying(async (limit) => {
      await this.page.keyboard.press("F1");
      await this.page.locator(".quick-input-widget input").first().waitFor(limit);
      await this.page.keyboard.type(title);
      await row.waitFor(limit);
      await this.page.keyboard.press("Enter");
      await row.waitFor({ state: "hidden", ...limit });
    });
  }

  /** Saves with what asks where to, under the name that it proposes. */
  async saveWith(button: Locator, name: string): Promise<void> {
    await button.click();
    await this.confirmPath(name);
  }

  /** Takes what the dialog that asks for a file proposes. */
  async confirmPath(name: string): Promise<void> {
    const field = this.page.locator(".quick-input-widget input").first();
    await field.waitFor(patience);
    await expect.poll(() => field.inputValue(), patience).toContain(name);
    await this.screenshot(`save-${name}`);
    await field.press("Enter");
    await field.waitFor({ state: "hidden", ...patience });
  }

  /** Keeps a picture of a drawing that was saved. */
  async pictureOf(svg: string, name: string): Promise<void> {
    const page = await this.page.context().browser()?.newPage();
    if (page === undefined) throw new Error("the browser is gone");
    await page.setContent(svg);
    await page.screenshot({ path: join(folderOfPictures, `${name}.png`) });
    await page.close();
  }

  /** Drags something to and fro for some seconds; gives the milliseconds from each picture that the browser made to the next. */
  async framesWhilePanning(what: Locator): Promise<readonly number[]> {
    const box = await what.boundingBox();
    if (box === null) throw new Error("there is nothing to drag");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    // So close that there is something to move through.
    await this.page.mouse.move(x, y);
    for (let turns = 0; turns < 12; turns++) await this.page.mouse.wheel(0, -100);
    await what.evaluate(() => {
      const times: number[] = [];
      const note = (time: number): void => {
        times.push(time);
        requestAnimationFrame(note);
      };
      requestAnimationFrame(note);
      Object.assign(globalThis, { times });
    });
    await this.page.mouse.down();
    for (let step = 0; step < 120; step++) {
      await this.page.mouse.move(x + 300 * Math.sin(step / 10), y);
      await this.page.waitForTimeout(16);
    }
    await this.page.mouse.up();
    const times = await what.evaluate(() =>
      (globalThis as unknown as { times: readonly number[] }).times.slice(),
    );
    return times.slice(1).map((time, index) => time - (times[index] ?? time));
  }

  async closeEditors(): Promise<void> {
    await this.runCommand("View: Close All Editors", this.page.locator(".editor-group-container.empty"));
  }

  /** A row of the list that asks something. */
  choice(text: string): Locator {
    return this.page.locator(".quick-input-list .monaco-list-row", { hasText: text }).first();
  }

  /** What is inside the view of the active tab. */
  get view(): FrameLocator {
    return this.page.locator("iframe.webview:visible").first().contentFrame().frameLocator("#active-frame");
  }

  /** A picture of docs/pictures, without messages in it; taken anew for good where EDGEWISE_PICTURES says so. */
  async picture(name: string): Promise<void> {
    await this.retrying(async (limit) => {
      const clear = this.notifications.locator(".codicon-notifications-clear");
      // A message also goes by itself, under the mouse even.
      while ((await clear.count()) > 0) {
        await clear.first().click(limit);
        await this.notifications.first().waitFor({ state: "detached", ...limit });
      }
    });
    await this.screenshot(name);
    if (process.env.EDGEWISE_PICTURES === "1")
      await this.page.screenshot({ path: join("docs/pictures", `${name}.png`) });
  }

  /** For people who want to see what the test saw; the folder is not under version control. */
  async screenshot(name: string): Promise<void> {
    mkdirSync(folderOfPictures, { recursive: true });
    await this.page.screenshot({ path: join(folderOfPictures, `${name}.png`) });
  }
}
