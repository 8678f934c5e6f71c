import type { CheckResult } from "../../check-result.ts";
import type { Finding, Fix, NotUnderstood, Severity, Span } from "../../finding.ts";
import { type FindingIdentity, identitiesOf } from "../../finding-identity.ts";
import type { RuleDescription } from "../../rule-description.ts";
import type { FileLines } from "../line-index.ts";
import { limitInWords, measuredInWords } from "../quantity.ts";
import type { ArtifactLocation } from "./artifact-location.ts";
import { fingerprintOf } from "./fingerprint.ts";

/** What a SARIF log says besides the findings. */
export interface SarifSurroundings {
  readonly version: string;
  /** Every rule that was there to be checked. */
  readonly rules: readonly RuleDescription[];
  /** The absolute URI of a rule's page (3.49.12). */
  readonly pageUriOf: (rule: string) => string;
  readonly locationOf: (file: string) => ArtifactLocation;
}

/** A rule's level as `level` has it (3.27.10). */
const levels: Readonly<Record<Severity, "error" | "warning" | "note">> = {
  error: "error",
  warning: "warning",
  info: "note",
};

/**
 * The result as a log file of the Static Analysis Results Interchange Format, version 2.1.0 (OASIS standard, 27 March
 * 2020; section numbers here are those of it, from memory). Lines and columns from 1, columns in UTF-16 units, the end
 * column one behind the last character (3.30.8).
 */
export function checkAsSarif(result: CheckResult, lines: FileLines, around: SarifSurroundings): string {
  const { rules, version, pageUriOf } = around;
  const identities = identitiesOf(result.findings, ({ span }) => {
    const index = lines.of(span.file);
    return index.lineText(index.placeOf(span.start).line);
  });
  const writer = new ResultWriter(lines, around);
  const run = {
    tool: {
      driver: {
        name: "Edgewise",
        version,
        semanticVersion: version,
        rules: rules.map((rule) => reportingDescriptor(rule, pageUriOf(rule.id))),
      },
    },
    columnKind: "utf16CodeUnits",
    originalUriBaseIds: {
      WORKING_FOLDER: { description: { text: "The folder in which the check was run." } },
    },
    invocations: [
      {
        executionSuccessful: true,
        toolExecutionNotifications: result.notUnderstood.map((one) => writer.notification(one)),
      },
    ],
    artifacts: result.files.map((file) => ({ location: around.locationOf(file) })),
    results: result.findings.map((finding, index) => writer.result(finding, identities[index])),
  };
  const log = {
    $schema: "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
    version: "2.1.0",
    runs: [run],
  };
  return `${JSON.stringify(log, undefined, 2)}\n`;
}

/** 3.49. */
function reportingDescriptor({ id, title, severity, why, source }: RuleDescription, helpUri: string): object {
  return {
    id,
    shortDescription: { text: sentence(title) },
    fullDescription: { text: why },
    help: { text: `${why}\n\nSource: ${source}` },
    helpUri,
    defaultConfiguration: { level: levels[severity] },
  };
}

/** 3.49.9: a short description is a single sentence. */
function sentence(title: string): string {
  return /[.!?]$/.test(title) ? title : `${title}.`;
}

class ResultWriter {
  readonly #lines: FileLines;
  readonly #locationOf: (file: string) => ArtifactLocation;
  readonly #ruleIndexes: ReadonlyMap<string, number>;

  constructor(lines: FileLines, { rules, locationOf }: SarifSurroundings) {
    this.#lines = lines;
    this.#locationOf = locationOf;
    this.#ruleIndexes = new Map(rules.map(({ id }, index) => [id, index]));
  }

  /** 3.27. */
  result(finding: Finding, identity: FindingIdentity | undefined): object {
    const { rule, severity, message, span, related, fixes } = finding;
    const ruleIndex = this.#ruleIndexes.get(rule);
    return {
      ruleId: rule,
      ...(ruleIndex === undefined ? {} : { ruleIndex }),
      level: levels[severity],
      message: { text: message },
      locations: [{ physicalLocation: this.#physicalLocation(span) }],
      ...(related.length === 0
        ? {}
        : {
            relatedLocations: related.map((one, index) => ({
              id: index + 1,
              physicalLocation: this.#physicalLocation(one.span),
              message: { text: one.message },
            })),
          }),
      ...(identity === undefined
        ? {}
        : { partialFingerprints: { "ruleFileLineText/v1": fingerprintOf(identity) } }),
      ...(fixes.length === 0 ? {} : { fixes: fixes.map((fix) => this.#fix(fix)) }),
      ...propertyBag(finding),
    };
  }

  /** What was not understood, as a notification of the run (3.20.21, 3.58). */
  notification({ span, message }: NotUnderstood): object {
    return {
      level: "note",
      message: { text: message },
      locations: [{ physicalLocation: this.#physicalLocation(span) }],
    };
  }

  /** 3.29. */
  #physicalLocation(span: Span): object {
    return { artifactLocation: this.#locationOf(span.file), region: this.#region(span) };
  }

  /** 3.30; nothing is deleted where an edit only inserts, so start and end are the same (3.57.3). */
  #region({ file, start, end }: Span): object {
    const index = this.#lines.of(file);
    const from = index.placeOf(start);
    const to = index.placeOf(end);
    return { startLine: from.line, startColumn: from.column, endLine: to.line, endColumn: to.column };
  }

  /** 3.55 to 3.57; the changes of one file stand together. */
  #fix({ title, edits }: Fix): object {
    const files = [...new Set(edits.map(({ span }) => span.file))];
    return {
      description: { text: title },
      artifactChanges: files.map((file) => ({
        artifactLocation: this.#locationOf(file),
        replacements: edits
          .filter(({ span }) => span.file === file)
          .map(({ span, text }) => ({ deletedRegion: this.#region(span), insertedContent: { text } })),
      })),
    };
  }
}

/** What the format has no place for (3.8). */
function propertyBag({ measured, limit, source }: Finding): object {
  const properties = {
    ...(measured === undefined ? {} : { measured: measuredInWords(measured) }),
    ...(limit === undefined ? {} : { limit: limitInWords(limit) }),
    ...(source === undefined ? {} : { source }),
  };
  return Object.keys(properties).length === 0 ? {} : { properties };
}
