import { extensionWith } from "../activation.ts";

/** The extension in a browser. */
export const { activate, deactivate } = extensionWith(() => import("./client-library.ts"));
