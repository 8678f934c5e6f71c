/** SARIF 2.1.0, 3.4: a URI, or one relative to a folder that the reader knows. */
export interface ArtifactLocation {
  /** RFC 3986; relative to the folder of `uriBaseId` where that is there. */
  readonly uri: string;
  readonly uriBaseId?: "WORKING_FOLDER";
}

/**
 * Where a file is that is named as seen from the working folder. `absoluteUriOf` gives the URI of one that lies outside
 * of it, which a relative reference must not climb to.
 */
export function artifactLocation(file: string, absoluteUriOf: (file: string) => string): ArtifactLocation {
  const isOutside = file.startsWith("/") || file.split("/").includes("..") || /^[A-Za-z]:/.test(file);
  if (isOutside) return { uri: absoluteUriOf(file) };
  return { uri: file.split("/").map(encodeURIComponent).join("/"), uriBaseId: "WORKING_FOLDER" };
}
