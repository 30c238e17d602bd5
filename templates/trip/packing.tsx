import type { GuideTrip } from "../../build/guide/guide-schema.ts";
import { Section } from "../parts.tsx";

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
              {items.map(({ id, item, count, why }) => (
                <li>
                  <label>
                    <input type="checkbox" data-item={id} />
                    <strong>{count}</strong>
                    <span>
                      {item}
                      {why === null ? null : <span class="small"> {why}</span>}
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
