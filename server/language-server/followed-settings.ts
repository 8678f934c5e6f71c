import type { Connection, InitializeParams } from "vscode-languageserver";
import { defaultSettings, type ServerSettings, settingsFrom } from "./settings.ts";

/** The client's settings as it last sent them. */
export class FollowedSettings {
  #now: ServerSettings = defaultSettings;

  constructor(connection: Connection, { capabilities }: InitializeParams) {
    const refreshes = capabilities.workspace?.inlayHint?.refreshSupport === true;
    connection.onDidChangeConfiguration(({ settings }) => {
      const before = this.#now;
      this.#now = settingsFrom(settings);
      if (refreshes && before.inlayHints !== this.#now.inlayHints)
        void connection.languages.inlayHint.refresh();
    });
  }

  get now(): ServerSettings {
    return this.#now;
  }
}
