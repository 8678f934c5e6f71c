import { type QuickPickItem, type QuickPickOptions, window } from "vscode";

type Options = Pick<QuickPickOptions, "title" | "placeHolder" | "matchOnDetail">;

/** Asks for one of these, of which one is shown now and ready to be taken; undefined where none was. */
export function pickOne<Item extends QuickPickItem>(
  among: readonly Item[],
  { title, placeHolder, matchOnDetail }: Options,
  shownNow: Item | undefined,
): Promise<Item | undefined> {
  return new Promise((resolve) => {
    const pick = window.createQuickPick<Item>();
    pick.title = title;
    pick.placeholder = placeHolder;
    pick.matchOnDetail = matchOnDetail === true;
    const marked = shownNow && { ...shownNow, description: "shown now" };
    pick.items = among.map((item) => (marked !== undefined && item === shownNow ? marked : item));
    if (marked !== undefined) pick.activeItems = [marked];
    pick.onDidAccept(() => {
      resolve(pick.selectedItems[0]);
      pick.hide();
    });
    pick.onDidHide(() => {
      resolve(undefined);
      pick.dispose();
    });
    pick.show();
  });
}
