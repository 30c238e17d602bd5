import type { GuideTrip } from "../../build/guide/guide-schema.ts";
import { tellLines } from "../../build/guide/trip-tell.ts";
import { Fact, Section } from "../parts.tsx";

/** Who comes, and who sits where. */
export function TripPeople({ trip: { people, boats, ashore } }: { trip: GuideTrip }) {
  if (people.length === 0 && boats.length === 0) return null;
  return (
    <Section title="Who sits where" id="people">
      <dl>
        {boats.length === 0 ? <Fact name="On foot">{people.join(", ")}</Fact> : null}
        {boats.map(({ name, seats, aboard }) => (
          <Fact name={name}>
            {aboard.length === 0 ? null : <strong>{aboard.join(", ")}</strong>}{" "}
            <span class="small">
              {seats} {seats === 1 ? "seat" : "seats"}
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
export const TripTell = ({ trip }: { trip: GuideTrip }) => (
  <Section title="Who to tell" id="tell">
    <p>Fill this in by hand and leave it with someone who stays ashore.</p>
    <dl class="tell">
      {tellLines(trip).map(({ label, given }) => (
        <div>
          <dt>{label}</dt>
          <dd>{given}</dd>
        </div>
      ))}
    </dl>
  </Section>
);
