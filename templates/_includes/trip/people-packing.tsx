import type { GuideTrip } from "../../../build/guide/guide-schema.ts";
import { floatPlanLines } from "../../../build/guide/trip-words.ts";
import { Fact, Section } from "../parts.tsx";

/** Who comes, and who sits where. */
export function TripPeople({ trip: { people, boats, ashore } }: { trip: GuideTrip }) {
  if (people.length === 0 && boats.length === 0) return null;
  return (
    <Section title="Who sits where" id="people">
      <dl>
        {boats.length === 0 ? <Fact name="On foot">{people.join(", ")}</Fact> : null}
        {boats.map(({ name, kind, seats, aboard }) => (
          <Fact name={name}>
            {aboard.length === 0 ? null : <strong>{aboard.join(", ")}</strong>}{" "}
            <span class="small">
              {kind}, {seats} {seats === 1 ? "seat" : "seats"}
            </span>
          </Fact>
        ))}
        {ashore.length === 0 ? null : (
          <Fact name="No seat">
            <strong>{ashore.join(", ")}</strong>: the boats are full.
          </Fact>
        )}
      </dl>
    </Section>
  );
}

/** Lines to fill in by hand and leave with someone ashore. */
export const TripFloatPlan = ({ trip }: { trip: GuideTrip }) => (
  <Section title="Who to tell" id="tell">
    <p>Fill this in by hand and leave it with someone who stays ashore.</p>
    <dl class="tell">
      {floatPlanLines(trip).map(({ label, given }) => (
        <div>
          <dt>{label}</dt>
          <dd>{given}</dd>
        </div>
      ))}
    </dl>
  </Section>
);

/** Everything to pack, a box to tick at each line; the page's script remembers the ticks on this phone. */
export function TripPacking({ trip: { slug, from, packing } }: { trip: GuideTrip }) {
  if (packing.length === 0) return null;
  return (
    <Section title="Packing list" id="packing">
      <p hidden id="packed">
        <output /> <button type="button">Clear all ticks</button>
      </p>
      <div class="packing" data-trip={`${from} ${slug}`}>
        {packing.map(({ group, items }) => (
          <section>
            <h3>{group}</h3>
            <ul class="plain">
              {items.map(({ id, item, count, how, why }) => (
                <li>
                  <label>
                    <input type="checkbox" data-item={id} />
                    <strong>{count}</strong>
                    <span>
                      {item}
                      <span class="small">
                        {" "}
                        {how}.{why === null ? "" : ` ${why}`}
                      </span>
                    </span>
                  </label>
                </li>
              ))}
            </ul>
          </section>
        ))}
      </div>
      <p class="small">Ticks stay on this phone or computer and are sent nowhere.</p>
    </Section>
  );
}
