// Remembers the sun-glare box from page to page. Without this script the box still works, one page at a time.
const box = document.getElementById("glare");
const KEY = "glare";
try {
  box.checked = localStorage.getItem(KEY) === "on";
  box.addEventListener("change", () => localStorage.setItem(KEY, box.checked ? "on" : "off"));
} catch {
  // Storage is switched off: nothing to remember.
}
