import { Range, Uri, ViewColumn, window, workspace } from "vscode";
import type { Place } from "../server/language-server/client-messages/runs.ts";

/** Shows a line of the source beside a run, so that both stay in sight. */
export async function openPlace(root: string, place: Place, ribbon: ViewColumn | undefined): Promise<void> {
  const uri = Uri.joinPath(Uri.parse(root), place.file);
  try {
    const document = await workspace.openTextDocument(uri);
    const line = document.lineAt(Math.min(place.line, document.lineCount) - 1);
    const start = line.range.start.with(undefined, Math.min(place.column - 1, line.text.length));
    const shown = window.visibleTextEditors.find(
      (editor) => editor.document.uri.toString() === uri.toString(),
    );
    await window.showTextDocument(document, {
      viewColumn: shown?.viewColumn ?? (ribbon === ViewColumn.One ? ViewColumn.Two : ViewColumn.One),
      preserveFocus: true,
      selection: new Range(start, line.range.end),
    });
  } catch (error) {
    void window.showWarningMessage(`${place.file} could not be opened: ${String(error)}`);
  }
}
