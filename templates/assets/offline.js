// Has the whole guide saved on this device, and says how far that has come. Does nothing for a guide opened from a disk.
{
  const root = new URL("..", document.currentScript.src);
  const asOf = document.querySelector(".as-of");
  const footer = document.querySelector("footer");
  const brief = document.createElement("span");
  const whole = document.createElement("p");
  whole.id = "saved";

  const say = ({ asOf: made, asOfWords, saved, total }) => {
    const left = total - saved;
    const isNewer = made > asOf.dataset.asOf;
    brief.textContent = left === 0 ? " · saved" : ` · ${saved} of ${total} saved`;
    whole.textContent =
      left === 0
        ? `Saved on this device, as of ${asOfWords}: all pages and cards open without a signal.${isNewer ? " Open this page again to see it." : ""}`
        : `Saving the guide as of ${asOfWords} on this device: ${saved} of ${total} files, ${left} still missing. Missing ones open only with a signal; stay on a page, or open one later, to have them saved.`;
    asOf.append(brief);
    footer.append(whole);
  };

  /** An unlisted page is saved by nobody but those who opened it: the page, and what only it leads to. */
  const saveUnlisted = (worker) => {
    if (document.querySelector('meta[name="robots"]') === null) return;
    const links = [...document.querySelectorAll("main a[href]")].map(({ href }) => href.replace(/#.*/, ""));
    worker.postMessage({ saveOwn: [location.href.replace(/[?#].*/, ""), ...new Set(links)] });
  };

  if ("serviceWorker" in navigator && location.protocol !== "file:") {
    const { serviceWorker } = navigator;
    serviceWorker.addEventListener("message", ({ data }) => say(data));
    serviceWorker
      .register(new URL("offline-worker.js", root), { scope: root.pathname, updateViaCache: "none" })
      .catch(() => undefined); // not offered here, such as while previewing
    serviceWorker.ready.then(({ active }) => {
      active.postMessage({});
      saveUnlisted(active);
    });
  }
}
