import type { Guide } from "../build/guide/guide-schema.ts";
import { fishableText } from "../build/guide/trip-words.ts";
import type { Occasion, Outing, When } from "../build/guide/when-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { dayMonth, dayRange } from "../build/model/calendar.ts";
import { chanceNumber, chanceText } from "../build/model/units.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { ForecastNote, Scroll, Section } from "./_includes/parts.tsx";

const LakeChance = ({
  lake,
  sheet,
}: {
  lake: Pick<Outing, "slug" | "name" | "good">;
  sheet: PageContext;
}) => (
  <>
    <a href={sheet.to(ADDRESS.lake(lake.slug))}>{lake.name}</a>{" "}
    <span class="odds">{chanceText(lake.good)}</span>
  </>
);

/** Two lakes in one line, and the chance of one of them. */
function NextBest({ next }: { next: Outing | null }) {
  if (next === null) return null;
  return (
    <>
      {next.name}
      {next.fallback === null ? "" : ` or ${next.fallback.name}`}{" "}
      <span class="odds">{chanceText(next.either)}</span>
    </>
  );
}

function OccasionRow({ occasion, sheet }: { occasion: Occasion; sheet: PageContext }) {
  const { name, from, to, best, isLikely, next, fishable, out } = occasion;
  const left = [
    ...(fishable.length === 0 ? [] : [<span class="under">{fishableText(fishable)}</span>]),
    ...out.map((lake) => (
      <span class="under">
        Not {lake.name}: {lake.why}.
      </span>
    )),
  ];
  return (
    <tr>
      <th scope="row">
        <span class="odds">{dayRange(from, to)}</span>
        {name === null ? null : <strong class="under">{name}</strong>}
      </th>
      {best === null || !isLikely ? (
        <td colSpan={4}>
          {best === null
            ? "No road is open."
            : fishable.length === 0
              ? "No lake is likely; "
              : "None is likely at its best; "}
          {best === null ? null : <LakeChance lake={best} sheet={sheet} />}
          {left}
        </td>
      ) : (
        <>
          <td>
            <strong>
              <LakeChance lake={best} sheet={sheet} />
            </strong>
          </td>
          <td>{best.fallback === null ? null : <LakeChance lake={best.fallback} sheet={sheet} />}</td>
          <td>
            <strong class="odds">{chanceText(best.either)}</strong>
          </td>
          <td class="next-best">
            <NextBest next={next} />
            {left}
          </td>
        </>
      )}
    </tr>
  );
}

const Occasions = ({ when: { occasions, pool }, sheet }: { when: When; sheet: PageContext }) => (
  <Section title="Weekends and holidays" id="occasions">
    {occasions.length === 0 ? (
      <p>The spring weeks are over.</p>
    ) : (
      <>
        <Scroll label="Where to go on each weekend and holiday">
          <table class="when">
            <caption>Chance that it is good: ice-off or best weeks, mean over the days</caption>
            <thead>
              <tr>
                <th scope="col">Days</th>
                <th scope="col">Go to</th>
                <th scope="col">Or else</th>
                <th scope="col">One of the two</th>
                <th scope="col">Next best two</th>
              </tr>
            </thead>
            <tbody>
              {occasions.map((occasion) => (
                <OccasionRow occasion={occasion} sheet={sheet} />
              ))}
            </tbody>
          </table>
        </Scroll>
        <p class="small">
          Each row is the pair most likely to hold a good lake, found by comparing{" "}
          {pool === null ? "all pairs" : `all pairs of the ${pool} lakes best alone on those days`}. Lakes of
          one region share a spring, so two lakes that fail together are no fallback for each other. Of the
          two the better alone is named first. “One of the two” is the chance on any one of the days, averaged
          over them: how many of the days have a good lake. A day before a lake’s road opens does not count
          for it.
        </p>
      </>
    )}
  </Section>
);

/** How dark a cell is: five steps from nothing to more than likely. */
const shade = (good: number): string => `c${Math.min(4, Math.floor(good * 5))}`;

const Weeks = ({ when: { weeks, lakes }, sheet }: { when: When; sheet: PageContext }) => (
  <Section title="All lakes by weeks" id="weeks">
    <Scroll label="Chance of each lake, week by week">
      <table class="weeks">
        <caption>Percent chance of being good, mean over the week that begins on the day above</caption>
        <thead>
          <tr>
            <th scope="col">Lake</th>
            {weeks.map(({ from }) => (
              <th scope="col">{dayMonth(from)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lakes.map(({ slug, name, good }) => (
            <tr>
              <th scope="row">
                <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a>
              </th>
              {good.map((chance) =>
                chance === null ? <td>–</td> : <td class={shade(chance)}>{chanceNumber(chance)}</td>,
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
    <p class="small">A dash: the road is closed all week.</p>
  </Section>
);

interface Data {
  readonly guide: Guide;
}

export const data = {
  permalink: () => ADDRESS.when,
  inputs: ({ guide }: Data) => ({ when: guide.when }),
} as const;

/** Where to go on every weekend and holiday to come, and every lake's chances week by week. */
export function render({ when, sheet }: Rendered<typeof data>) {
  const { asOf, window, season } = sheet.guide;
  return (
    <Page
      sheet={sheet}
      title="Where and when"
      description={`Which lake to fish on each weekend and holiday of spring ${season}, and the best one to fall back on, from ${dayRange(asOf, window.to)}.`}
    >
      <h1>Where and when</h1>
      <Occasions when={when} sheet={sheet} />
      {when.weeks.length === 0 ? null : <Weeks when={when} sheet={sheet} />}
      <ForecastNote sheet={sheet} />
    </Page>
  );
}
