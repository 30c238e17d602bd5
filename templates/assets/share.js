// Offers the page's address to hand on: through the device's own sheet where it has one, and to the clipboard.
if (location.protocol !== "file:") {
  const place = document.createElement("p");
  place.className = "share";
  const button = (words, act) => {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = words;
    made.addEventListener("click", () => act(made));
    place.append(made);
  };
  const url = location.href.replace(/#.*/, "");
  if (navigator.share !== undefined)
    button("Share this page", () => navigator.share({ title: document.title, url }).catch(() => undefined));
  if (navigator.clipboard !== undefined)
    button("Copy link", async (made) => {
      try {
        await navigator.clipboard.writeText(url);
        made.textContent = "Link copied";
      } catch {
        made.textContent = "Could not copy: copy the address from the browser’s own line";
      }
    });
  if (place.childElementCount > 0) document.querySelector("footer").prepend(place);
}
