// How keys get from what has the focus to this. Called with (target): something that `locate.js` found. Answers with
// the next keys to press: `{keys: "tab", n}` (n < 0: with Shift), `{keys: "arrow", n}` inside a group of radio buttons,
// `{keys: "space"}` on a radio button that is not chosen yet, or `{keys: ""}` when it has been reached; beside it where
// the focus is, how often it has moved so far, and whether it can be seen there. It only looks.
const [found] = arguments;
const target = found.tagName === "LABEL" ? found.control : found;

if (window.nFocusMoves === undefined) {
  window.nFocusMoves = 0;
  document.addEventListener("focusin", () => (window.nFocusMoves += 1), true);
}

const isRadio = (e) => e.tagName === "INPUT" && e.type === "radio";
const isSameGroup = (a, b) => a === b || (isRadio(a) && isRadio(b) && a.name === b.name && a.form === b.form);

// Where Tab stops, in order; a group of radio buttons is one stop.
const dialog = document.querySelector("dialog:modal");
const stops = [];
for (const element of (dialog || document).querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")) {
  if (element.tabIndex < 0 || element.disabled || element.closest("[inert], [hidden]")) continue;
  if (!element.checkVisibility({ visibilityProperty: true })) continue;
  if (!stops.some((stop) => isSameGroup(stop, element))) stops.push(element);
}

const focus = document.activeElement || document.body;
const name = (e) => (e.getAttribute("aria-label") || e.innerText || e.name || e.id || "").split("\n")[0];
function isInSight(element) {
  const box = element.getBoundingClientRect();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const hit = document.elementFromPoint(x, y);
  const label = element.labels && [...element.labels].find((one) => one.contains(hit));
  return hit !== null && (element.contains(hit) || hit.contains(element) || Boolean(label));
}
const told = {
  focus: `${focus.tagName.toLowerCase()} "${name(focus)}"`,
  nFocusMoves: window.nFocusMoves,
  isShown: focus.matches(":focus-visible"),
  isInSight: isInSight(focus),
};

function way() {
  if (focus === target) return isRadio(target) && !target.checked ? { keys: "space" } : { keys: "" };
  if (isRadio(target) && isSameGroup(focus, target)) {
    const group = [...document.querySelectorAll("input")].filter((e) => isSameGroup(e, target) && !e.disabled);
    return { keys: "arrow", n: group.indexOf(target) - group.indexOf(focus) };
  }
  const to = stops.findIndex((stop) => isSameGroup(stop, target));
  if (to < 0) return { keys: "none" };
  // With no focus the first Tab brings it back to about where it was lost.
  if (focus === document.body) return { keys: "tab", n: 1 };
  const at = stops.findIndex((stop) => isSameGroup(stop, focus));
  if (at >= 0) return { keys: "tab", n: to - at };
  const after = stops.findIndex((stop) => focus.compareDocumentPosition(stop) & Node.DOCUMENT_POSITION_FOLLOWING);
  const next = after < 0 ? stops.length : after;
  return { keys: "tab", n: to >= next ? to - next + 1 : to - next };
}
return { ...way(), ...told };
