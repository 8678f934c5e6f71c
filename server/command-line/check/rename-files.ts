import type { CheckResult, SettingsFault } from "../../../src-core/check-result.ts";
import type { Edit, Finding, Fix, Span } from "../../../src-core/finding.ts";

type Rename = (file: string) => string;

/** The same result with every file under the name that `rename` gives it. */
export function renameFiles(result: CheckResult, rename: Rename): CheckResult {
  return {
    ...result,
    findings: result.findings.map((finding) => renamedFinding(finding, rename)),
    notUnderstood: result.notUnderstood.map((one) => placed(one, rename)),
    settingsFaults: result.settingsFaults.map((fault) => renamedFault(fault, rename)),
    files: result.files.map(rename),
  };
}

function renamedFinding(finding: Finding, rename: Rename): Finding {
  return {
    ...placed(finding, rename),
    related: finding.related.map((one) => placed(one, rename)),
    fixes: finding.fixes.map((fix) => renamedFix(fix, rename)),
  };
}

function renamedFault(fault: SettingsFault, rename: Rename): SettingsFault {
  return {
    ...placed(fault, rename),
    fix: fault.fix === undefined ? undefined : renamedFix(fault.fix, rename),
  };
}

function renamedFix(fix: Fix, rename: Rename): Fix {
  return { ...fix, edits: fix.edits.map((edit): Edit => placed(edit, rename)) };
}

function placed<T extends { readonly span: Span }>(item: T, rename: Rename): T {
  const { file, start, end } = item.span;
  return { ...item, span: { file: rename(file), start, end } };
}
