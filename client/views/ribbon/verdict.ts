import type {
  FaultText,
  LabelledText,
  Place,
  RunOverview,
} from "../../../server/language-server/client-messages/runs.ts";
import { make } from "../elements.ts";
import { pathsPicture } from "./paths-picture.ts";

interface Follow {
  moment(time: number): void;
  place(place: Place): void;
}

/** What is said of the run below the ribbon: what it was made with, figures, faults and paths. */
export function verdictOf({ setup, figures, faults, paths }: RunOverview, follow: Follow): HTMLElement {
  const parts: HTMLElement[] = [];
  if (faults.length > 0)
    parts.push(
      section("Faults", make("ol", { class: "faults" }, ...faults.map((fault) => faultItem(fault, follow)))),
    );
  parts.push(
    section("Figures", rows(figures)),
    section(
      "Paths",
      paths.sent.length > 1
        ? pathsPicture(paths)
        : make("p", { class: "soft" }, "The mouse sent no movement."),
      make(
        "p",
        { class: "legend" },
        make("span", { class: "sent" }, "sent"),
        make("span", { class: "received" }, "received"),
      ),
    ),
    section("Run with", rows(setup)),
  );
  return make("div", { class: "verdict" }, ...parts);
}

function section(title: string, ...inside: readonly Element[]): HTMLElement {
  return make("section", { "aria-label": title }, make("h2", {}, title), ...inside);
}

function rows(texts: readonly LabelledText[]): HTMLElement {
  return make("dl", {}, ...texts.flatMap(([label, text]) => [make("dt", {}, label), make("dd", {}, text)]));
}

function faultItem({ number, message, details, time, place }: FaultText, follow: Follow): HTMLElement {
  const item = make(
    "li",
    { value: number },
    make("div", {}, message),
    make("div", { class: "soft" }, details.join(" \u00b7 ")),
  );
  const links = make("div", { class: "links" });
  if (time !== undefined) links.append(link("Show in the ribbon", () => follow.moment(time)));
  if (place !== undefined) links.append(link(`${place.file}:${place.line}`, () => follow.place(place)));
  item.append(links);
  return item;
}

function link(words: string, follow: () => void): HTMLElement {
  const button = make("button", { type: "button", class: "link" }, words);
  button.addEventListener("click", follow);
  return button;
}
