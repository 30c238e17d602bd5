// Keeps every page and card of the guide on the phone. What to keep stands in offline-files.js: a new guide has a new
// list, which the browser notices by itself; then only files with new contents are fetched.
importScripts("offline-files.js");
const { asOf, asOfWords, files } = self.guideFiles;
const addresses = Object.keys(files);

const SCOPE = self.registration.scope;
const GUIDE = `guide ${SCOPE}`;
/** Pages with an unlisted address that this phone was given, and their files. */
const OWN = `own ${SCOPE}`;
const AT_ONCE = 6;
const NOT_FOUND = "404.html";

const urlOf = (address) => new URL(encodeURI(address), SCOPE).href;
/** A file's place in the store tells its contents: files that stay the same stay where they are. */
const keyOf = (address) => `${urlOf(address)}?sha256=${encodeURIComponent(files[address])}`;

/** A plain copy: a response that came by a redirect may not be shown as a page. */
const copyOf = async (response) =>
  new Response(await response.blob(), {
    headers: { "Content-Type": response.headers.get("Content-Type") ?? "" },
  });

async function save(cache, address) {
  const response = await fetch(urlOf(address), { cache: "no-cache", integrity: `sha256-${files[address]}` });
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  await cache.put(keyOf(address), await copyOf(response));
}

async function missing(cache) {
  const saved = new Set((await cache.keys()).map(({ url }) => url));
  return addresses.filter((address) => !saved.has(keyOf(address)));
}

async function tell(absent) {
  const status = { asOf, asOfWords, saved: addresses.length - absent, total: addresses.length };
  for (const client of await self.clients.matchAll({ includeUncontrolled: true })) client.postMessage(status);
}

async function fetchMissing() {
  const cache = await caches.open(GUIDE);
  const wanted = await missing(cache);
  const queue = [...wanted];
  let absent = wanted.length;
  const work = async () => {
    for (let address = queue.shift(); address !== undefined; address = queue.shift())
      try {
        await save(cache, address);
        await tell(--absent);
      } catch {
        // No signal, or the guide is being replaced this moment: the next page that is opened asks again.
      }
  };
  await tell(absent);
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  return absent;
}

let filling;
/** Fetches what is not there yet, one run at a time. Comes to the number of files that could not be had. */
function fill() {
  filling ??= fetchMissing().finally(() => {
    filling = undefined;
  });
  return filling;
}

async function install() {
  const absent = await fill();
  // The guide that is here whole is better than half of a newer one.
  if (absent > 0 && self.registration.active !== null) throw new Error(`${absent} files could not be saved`);
}

async function removeOld() {
  const cache = await caches.open(GUIDE);
  const wanted = new Set(addresses.map(keyOf));
  for (const request of await cache.keys()) if (!wanted.has(request.url)) await cache.delete(request);
  await self.clients.claim();
}

/** The guide's file at a web address, under each of the names that servers give a folder's page. */
const addressOf = ({ origin, pathname }) => {
  const path = `${origin}${pathname}`.slice(SCOPE.length);
  return [path, `${path}index.html`, `${path}/index.html`, `${path}.html`].find((name) =>
    Object.hasOwn(files, name),
  );
};

async function saveOwn(urls) {
  const cache = await caches.open(OWN);
  for (const url of urls.map((text) => new URL(text)))
    if (url.href.startsWith(SCOPE) && addressOf(url) === undefined)
      try {
        const response = await fetch(url, { cache: "no-cache" });
        if (response.ok) await cache.put(url, await copyOf(response));
        else await cache.delete(url);
      } catch {
        // No signal: what is saved stays.
      }
}

/** From the network, or else what was saved of an unlisted page, or else the page for missing addresses. */
async function elsewhere(request) {
  try {
    return await fetch(request);
  } catch (error) {
    const saved = await (await caches.open(OWN)).match(request, { ignoreSearch: true });
    if (saved !== undefined) return saved;
    if (request.mode === "navigate") return Response.redirect(urlOf(NOT_FOUND));
    throw error;
  }
}

async function answer(request) {
  const address = addressOf(new URL(request.url));
  if (address === undefined) return elsewhere(request);
  const saved = await (await caches.open(GUIDE)).match(keyOf(address));
  return saved ?? fetch(request);
}

self.addEventListener("install", (event) => {
  self.skipWaiting();
  event.waitUntil(install());
});
self.addEventListener("activate", (event) => event.waitUntil(removeOld()));
self.addEventListener("fetch", (event) => {
  if (event.request.method === "GET" && event.request.url.startsWith(SCOPE))
    event.respondWith(answer(event.request));
});
self.addEventListener("message", (event) => {
  event.waitUntil(event.data.saveOwn === undefined ? fill() : saveOwn(event.data.saveOwn));
});
