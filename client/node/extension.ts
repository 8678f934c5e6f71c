import { extensionWith } from "../activation.ts";

/** The extension on a desktop or a remote machine. */
export const { activate, deactivate } = extensionWith(() => import("./client-library.ts"));
