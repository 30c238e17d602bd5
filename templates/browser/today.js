// Moves what the guide says of its as-of day on to the reader's own day, and says when the guide has grown old. It only
// chooses among what was worked out when the guide was made. Without this script the as-of day stands as now.
{
  const DAY_MS = 86_400_000;
  /** From this age on the guide itself warns of it: about as long as ice-off or the start of turnover takes. */
  const OLD_DAYS = 7;
  const line = document.querySelector(".as-of");
  const now = new Date();
  const today = new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()));
  const age = Math.round((today - Date.parse(line.dataset.asOf)) / DAY_MS);
  /** In words; none beyond the last day of the forecast. */
  const dayWords = guideWords.days[today.toISOString().slice(0, 10)];
  const isCovered = dayWords !== undefined;

  const element = (name, className, ...children) => {
    const made = document.createElement(name);
    if (className !== "") made.className = className;
    made.append(...children);
    return made;
  };

  /** "3 89 %": a state by its place in the season and its chance, one for each day from the as-of day on. */
  const stateOn = ({ dataset }) => {
    const [, place, chance] = /^(\d) (.*)$/.exec(dataset.days.split(";")[age] ?? "") ?? [];
    return place === undefined ? undefined : { chance, ...guideWords.states[Number(place)] };
  };

  const moveMarker = (marker) => {
    const { width } = marker.ownerSVGElement.viewBox.baseVal;
    const x = Number(marker.dataset.x) + age * Number(marker.dataset.day);
    if (x > width) return marker.remove();
    for (const path of marker.querySelectorAll("path"))
      path.setAttribute("d", path.getAttribute("d").replace(/^M[\d.]+/, `M${x.toFixed(1)}`));
    const text = marker.querySelector("text");
    if (text === null) return;
    text.textContent = `today, ${dayWords}`;
    const half = text.getComputedTextLength() / 2;
    text.setAttribute("x", Math.min(Math.max(x, half), width - half).toFixed(1));
  };

  const caution = ({ short, agency }) =>
    element("li", "", element("strong", "", short), " ", element("span", "small", agency));

  const tellLake = (glance) => {
    const state = stateOn(glance);
    if (state === undefined) return;
    const [name, words] = [glance.querySelector("dt"), glance.querySelector("dd")];
    name.textContent = "Today";
    words.replaceChildren(
      element("p", "big", `${state.name} `, element("span", "odds", state.chance)),
      element(
        "p",
        "",
        `${state.words} `,
        element("span", "small", `${dayWords}, as forecast on the as-of day.`),
      ),
    );
    const list = glance.querySelector(".cautions ul");
    const cautions = state.cautions.map(caution);
    if (list !== null) list.replaceChildren(...cautions);
    else if (cautions.length > 0)
      glance.querySelector("dl").after(element("div", "cautions", element("ul", "", ...cautions)));
    for (const phase of document.querySelectorAll(".phase[data-state]")) {
      phase.querySelector(".now")?.remove();
      if (phase.dataset.state === state.state)
        phase.querySelector("h3").append(element("span", "now", " now"));
    }
  };

  const tellRow = (row) => {
    const state = stateOn(row);
    if (state !== undefined) row.textContent = `Today ${state.name.toLowerCase()}, ${state.chance}`;
  };

  /** Headings that hold for some days only. */
  const tellHeading = (heading) => {
    if (today > Date.parse(heading.dataset.until)) heading.textContent = heading.dataset.after;
  };

  if (age > 0) {
    line.append(`, ${age} ${age === 1 ? "day" : "days"} ago`);
    document.querySelectorAll("[data-after]").forEach(tellHeading);
    if (isCovered) {
      document.querySelectorAll("svg [data-day]").forEach(moveMarker);
      document.querySelectorAll(".glance[data-days]").forEach(tellLake);
      document.querySelectorAll(".state[data-days]").forEach(tellRow);
    }
    if (age >= OLD_DAYS || !isCovered)
      document
        .querySelector(".masthead")
        .after(
          element(
            "p",
            "notice cautions old",
            element("strong", "", `This guide is ${age} days old.`),
            isCovered
              ? " It knows nothing of what was seen since; its chances for today were worked out then."
              : " Its forecast has ended and says nothing about today.",
            " Open it with a signal to get a newer one, or ask your club.",
          ),
        );
  }
  // A page can stay open for days.
  document.addEventListener("visibilitychange", () => {
    if (!document.hidden && new Date().toDateString() !== now.toDateString()) location.reload();
  });
}
