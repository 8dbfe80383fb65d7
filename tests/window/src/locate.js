// Finds what a person would find: by role and accessible name, only what can be seen. Called with
// (role, name, exact, within, ready): `within` is null or [role, name] of something that encloses it;
// `ready` leaves out what cannot be used just now. Answers a list of elements; for a box or radio
// hidden behind its own label, the label.
const [wantedRole, wantedName, exact, within, ready] = arguments;
const tidy = (text) => (text || "").replace(/\s+/g, " ").trim();

const inputRoles = {
  button: "button", submit: "button", reset: "button", checkbox: "checkbox", radio: "radio",
  range: "slider", number: "spinbutton", search: "searchbox",
};
const tagRoles = {
  BUTTON: "button", SUMMARY: "button", TEXTAREA: "textbox", SELECT: "combobox", H1: "heading",
  H2: "heading", H3: "heading", H4: "heading", NAV: "navigation", MAIN: "main", DIALOG: "dialog",
  FIELDSET: "group", LI: "listitem", TABLE: "table", TR: "row", PROGRESS: "progressbar",
  ARTICLE: "article", OUTPUT: "status",
};
function roleOf(element) {
  const own = element.getAttribute("role");
  if (own) return own.split(" ")[0];
  if (element.tagName === "INPUT") return inputRoles[element.type] || "textbox";
  if (element.tagName === "A") return element.hasAttribute("href") ? "link" : "";
  if (element.tagName === "SECTION") return nameOf(element) ? "region" : "";
  return tagRoles[element.tagName] || "";
}
function spoken(element) {
  let text = "";
  for (const child of element.childNodes) {
    if (child.nodeType === 3) text += child.textContent;
    if (child.nodeType !== 1 || child.getAttribute("aria-hidden") === "true") continue;
    if (getComputedStyle(child).display === "none") continue;
    if (["SELECT", "INPUT", "TEXTAREA"].includes(child.tagName)) continue;
    const inline = getComputedStyle(child).display.startsWith("inline");
    const own = child.getAttribute("aria-label") || child.getAttribute("alt");
    text += inline ? own || spoken(child) : ` ${own || spoken(child)} `;
  }
  return text;
}
function nameOf(element) {
  const ids = element.getAttribute("aria-labelledby");
  if (ids) {
    return tidy(ids.split(/\s+/).map((id) => {
      const label = document.getElementById(id);
      return label ? spoken(label) : "";
    }).join(" "));
  }
  if (element.getAttribute("aria-label")) return tidy(element.getAttribute("aria-label"));
  if (element.labels && element.labels.length) {
    return tidy([...element.labels].map(spoken).join(" "));
  }
  if (element.tagName === "FIELDSET") {
    const legend = element.querySelector(":scope > legend");
    return legend ? tidy(spoken(legend)) : "";
  }
  if (["INPUT", "SELECT", "TEXTAREA"].includes(element.tagName)) {
    return tidy(element.getAttribute("title") || element.getAttribute("placeholder"));
  }
  if (["SECTION", "MAIN", "NAV", "DIALOG"].includes(element.tagName)) return "";
  return tidy(spoken(element)) || tidy(element.getAttribute("title"));
}
function seen(element) {
  if (element.closest("[aria-hidden=true], [hidden], [inert]")) return false;
  if (element.checkVisibility && !element.checkVisibility()) return false;
  const style = getComputedStyle(element);
  const box = element.getBoundingClientRect();
  return style.visibility === "visible" && style.display !== "none" && Number(style.opacity) > 0
    && box.width > 1 && box.height > 1;
}
function touched(element) {
  if (seen(element)) return element;
  const label = element.labels && [...element.labels].find(seen);
  return label || null;
}
function matches(element, role, name, isExact) {
  if (role && roleOf(element) !== role) return false;
  if (name === null) return true;
  const own = nameOf(element);
  return isExact ? own === name : own.toLowerCase().includes(name.toLowerCase());
}
let roots = [document];
if (within) {
  roots = [...document.querySelectorAll("*")].filter((e) => matches(e, within[0], within[1], false) && seen(e));
}
const found = [];
for (const root of roots) {
  for (const element of root.querySelectorAll("*")) {
    if (!matches(element, wantedRole, wantedName, exact)) continue;
    if (ready && (element.disabled || element.ariaDisabled === "true" || element.ariaBusy === "true")) continue;
    const target = touched(element);
    const kept = wantedRole === null ? element : target;
    if (target && !found.includes(kept)) found.push(kept);
  }
}
if (wantedRole === null) {
  // Asked for the whole screen: what can be seen, in order, for a person to read.
  const told = found.filter((e) => !["", "listitem", "main"].includes(roleOf(e)));
  return told.map((e) => {
    const ticked = e.type === "checkbox" || e.type === "radio";
    const value = ticked ? (e.checked ? " (chosen)" : "") : e.value && e.tagName !== "BUTTON" ? ` = ${e.value}` : "";
    return `  ${roleOf(e)} "${nameOf(e)}"${value}${e.disabled || e.ariaDisabled === "true" ? " (not now)" : ""}`;
  });
}
return found;
