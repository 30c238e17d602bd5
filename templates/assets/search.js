// Finds entries of the guide by the words typed. Works from a disk: the entries come as a script.
{
  /** Most results shown. */
  const MOST = 50;
  const form = document.querySelector("main form");
  const box = form.elements.namedItem("q");
  const count = document.getElementById("count");
  const results = document.getElementById("results");
  const list = document.createElement("ul");
  list.className = "plain results";
  const all = document.getElementById("all");
  const root = new URL("..", document.currentScript.src);

  /** Words without accents, capitals and signs: “Étang” is found by “etang”. */
  const wordsOf = (text) =>
    text
      .normalize("NFD")
      .replace(/\p{M}/gu, "")
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? [];

  const entries = searchEntries.map((entry) => ({
    ...entry,
    title: wordsOf(entry.name),
    text: [...new Set(wordsOf(entry.text))],
  }));

  /** How well one word fits: the whole name's word, the beginning of one, the text's. */
  const fit = ({ title, text }, word) => {
    if (title.includes(word)) return 8;
    if (title.some((name) => name.startsWith(word))) return 4;
    if (text.includes(word)) return 2;
    return text.some((found) => found.startsWith(word)) ? 1 : 0;
  };
  const score = (entry, words) => {
    const fits = words.map((word) => fit(entry, word));
    return fits.includes(0) ? 0 : fits.reduce((sum, one) => sum + one, 0);
  };

  const item = ({ name, kind, about, address }) => {
    const made = document.createElement("li");
    const link = document.createElement("a");
    link.href = new URL(address, root).href;
    link.textContent = name;
    const small = document.createElement("span");
    small.className = "small";
    small.textContent = ` ${[kind, about].filter((part) => part !== "").join(" · ")}`;
    made.append(link, small);
    return made;
  };

  const search = () => {
    const words = wordsOf(box.value);
    all.hidden = words.length > 0;
    const found = entries
      .map((entry) => ({ entry, score: score(entry, words) }))
      .filter((one) => one.score > 0)
      .sort((a, b) => b.score - a.score)
      .map(({ entry }) => entry);
    const items = words.length === 0 ? [] : found.slice(0, MOST).map(item);
    list.replaceChildren(...items);
    if (items.length > 0) results.replaceChildren(list);
    else results.replaceChildren();
    count.textContent =
      words.length === 0
        ? ""
        : found.length === 0
          ? "Nothing found. Try fewer or shorter words."
          : `${found.length} found${found.length > MOST ? `, the first ${MOST} shown` : ""}.`;
  };

  box.value = new URLSearchParams(location.search).get("q") ?? "";
  box.addEventListener("input", search);
  form.hidden = false;
  search();
}
