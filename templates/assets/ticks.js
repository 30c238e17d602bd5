// Remembers on this device which lines of the packing list are ticked, and counts them. Without this script the boxes
// still tick, and print.
{
  const list = document.querySelector("[data-trip]");
  const told = document.getElementById("packed");
  if (list !== null && told !== null) {
    const boxes = [...list.querySelectorAll("input[data-item]")];
    const keyOf = (box) => `packed:${list.dataset.trip}:${box.dataset.item}`;
    /** Storage may be switched off, or full: then the ticks last as long as the page. */
    const withStorage = (work) => {
      try {
        work(localStorage);
      } catch {
        // Nothing is remembered.
      }
    };
    const count = () => {
      const ticked = boxes.filter((box) => box.checked).length;
      told.querySelector("output").textContent = `${ticked} of ${boxes.length} packed`;
    };
    const keep = (box) =>
      withStorage((storage) =>
        box.checked ? storage.setItem(keyOf(box), "on") : storage.removeItem(keyOf(box)),
      );
    for (const box of boxes) {
      withStorage((storage) => {
        box.checked = storage.getItem(keyOf(box)) === "on";
      });
      box.addEventListener("change", () => {
        keep(box);
        count();
      });
    }
    told.querySelector("button").addEventListener("click", () => {
      if (!confirm("Clear all ticks of this trip?")) return;
      for (const box of boxes) {
        box.checked = false;
        keep(box);
      }
      count();
    });
    count();
    told.hidden = false;
  }
}
