// Moves what the guide says of its as-of day on to the reader's own day, and says when the guide has grown old. It only
// chooses among what was worked out when the guide was made. Without this script the as-of day stands as now.
{
  const DAY_MS = 86_400_000;
  /** From this age on the guide itself warns of it: about as long as ice-off or the start of turnover takes. */
  const OLD_DAYS = 7;
  const line = document.querySelector(".as-of");
  const now = new Date();
  const today = new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()));
  /** An example stands on its as-of day for ever. */
  const age =
    line.dataset.asOf === undefined ? 0 : Math.round((today - Date.parse(line.dataset.asOf)) / DAY_MS);
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
    const days = dataset.days.split(";");
    const [, place, chance] = /^(\d) (.*)$/.exec(days[age] ?? days.at(-1)) ?? [];
    return place === undefined || !isCovered ? undefined : { chance, ...guideWords.states[Number(place)] };
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

  /** Without the year: Sat 16 May. */
  const asOfWords = line.querySelector("strong").textContent.replace(/ \d+$/, "");
  const tellLake = (glance) => {
    if (Date.parse(glance.dataset.opens) > today) return;
    const state = stateOn(glance);
    if (state === undefined) {
      glance.querySelector("dt").textContent = `On ${asOfWords}`;
      glance.querySelector("dd").lastElementChild.textContent = "The forecast has ended since.";
      return;
    }
    const [name, words] = [glance.querySelector("dt"), glance.querySelector("dd")];
    name.textContent = "Today";
    words.replaceChildren(
      element("p", "big", `${state.verdict} `, element("span", "odds", state.chance)),
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

  /** What holds until some day only. */
  const tellPast = (part) => {
    if (today > Date.parse(part.dataset.until)) part.textContent = part.dataset.after;
  };

  /** The weekend that is next today; after the last of them none. */
  const tellAnswer = (answers) => {
    const next = answers.find(({ dataset }) => Date.parse(dataset.last) >= today);
    for (const answer of answers) answer.hidden = answer !== next;
  };

  /** Moves the chart's box to the days that come next, and what each row says of them. */
  const tellChart = () => {
    const columns = [...document.querySelectorAll(".chart-columns rect")];
    const coming = columns.findIndex(({ dataset }) => Date.parse(dataset.last) >= today);
    for (const mark of document.querySelectorAll(".chart [data-last]"))
      mark.classList.toggle("coming", mark.dataset.last === columns[coming]?.dataset.last);
    for (const words of document.querySelectorAll(".chart [data-on]"))
      words.textContent = words.dataset.on.split(";")[coming] ?? "forecast ended";
  };

  if (age > 0) {
    line.querySelector("strong").after(`, ${age} ${age === 1 ? "day" : "days"} ago`);
    tellChart();
    tellAnswer([...document.querySelectorAll(".answer")]);
    if (isCovered) document.querySelectorAll("svg [data-day]").forEach(moveMarker);
    document.querySelectorAll("[data-after]").forEach(tellPast);
    document.querySelectorAll(".glance[data-days]").forEach(tellLake);
    if (age >= OLD_DAYS || !isCovered)
      document
        .querySelector(".as-of")
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
