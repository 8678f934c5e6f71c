import { type Confidence, formatConfidence, formatSources, type Source } from "../../model/sources.ts";

/** `Source: title, place; from memory of the document.`; undefined where nothing is cited. */
export function citation(sources: readonly Source[], confidence: Confidence = "read"): string | undefined {
  const said = [formatSources(sources), formatConfidence(confidence)].filter(Boolean).join("; ");
  return said === "" ? undefined : `Source: ${said}.`;
}
