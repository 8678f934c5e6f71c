/** Names in lower case of folders that hold copies of sources, or none; hidden folders are left out as well. */
export { NOT_SOURCES as foldersWithoutSources } from "../project/folder-tree.ts";
