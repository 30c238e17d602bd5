import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Guide, GuideLake, GuideTrip } from "../../guide/guide-schema.ts";
import { CARD, onPaper, PAPERS } from "../../model/addresses.ts";
import { type CardFiles, type CardKind, type CardProblem, cardFiles, overflowProblem } from "../card-kind.ts";
import type { Face, Overflow } from "../layout/page.ts";
import { A6 } from "../layout/page.ts";
import { cardPdf } from "../pdf/card-pdf.ts";
import { sheetsPdfs } from "../pdf/sheets.ts";
import { layoutBoxPlan } from "./box-card.ts";
import { pairSides } from "./sides.ts";
import { layoutTripCard } from "./trip-card.ts";

/** One card of a trip: its file, its sides, and what does not fit on them. */
interface TripCard {
  readonly file: string;
  /** Of the file, and of the card on sheets. */
  readonly title: string;
  readonly faces: readonly Face[];
  readonly misfits: readonly Overflow[];
}

const hasBox = ({ box }: GuideTrip): boolean => box.rows.length > 0;
const tripFile = ({ slug }: GuideTrip): string => CARD.trip(slug);
const boxFile = ({ slug }: GuideTrip): string => CARD.box(slug);

const problemsOf = ({ file, misfits }: TripCard): CardProblem[] =>
  misfits.map((misfit) => overflowProblem(file, misfit));

type TripNeeds = {
  readonly guide: GuideFrame;
  readonly trip: GuideTrip;
  readonly lakes: readonly Pick<GuideLake, "slug" | "access">[];
};

/** A trip's own card, its box's where it has flies, and sheets of both. */
export const TRIP_CARDS: CardKind<TripNeeds> = {
  kind: "trip cards",
  place: ({ guide, trip, lakes }, { ruler }) => {
    const box = hasBox(trip) ? layoutBoxPlan(guide, trip, ruler) : [];
    const cards: TripCard[] = [
      {
        file: tripFile(trip),
        title: `${trip.name}: trip card`,
        ...layoutTripCard({ ...guide, lakes }, trip, ruler),
      },
      {
        file: boxFile(trip),
        title: `${trip.name}: box card`,
        faces: box.map(({ face }) => face),
        misfits: box.flatMap(({ misfits }) => misfits),
      },
    ].filter(({ faces }) => faces.length > 0);
    const pairs = cards.flatMap(({ title, faces }) => pairSides(title, faces));
    return {
      problems: cards.flatMap(problemsOf),
      ink: async (fonts) => [
        ...(await Promise.all(
          cards.map(({ title, faces }) => cardPdf(guide, faces, { title, paper: A6 }, fonts)),
        )),
        ...(await sheetsPdfs(
          guide,
          { what: `${trip.name}: cards`, cards: pairs, count: pairs.length },
          fonts,
        )),
      ],
    };
  },
};

function planTrip(frame: GuideFrame, one: GuideTrip, lakes: Guide["lakes"]): CardFiles {
  const pair = [one.pick?.slug, one.pick?.fallback?.slug];
  const roads = lakes.filter(({ slug }) => pair.includes(slug)).map(({ slug, access }) => ({ slug, access }));
  const names = [
    tripFile(one),
    ...(hasBox(one) ? [boxFile(one)] : []),
    ...PAPERS.map((paper) => onPaper(tripFile(one), paper)),
  ];
  return cardFiles(TRIP_CARDS, names, { guide: frame, trip: one, lakes: roads });
}
/** The cards of each trip, of unlisted ones too: on files of their own, so that an unlisted trip is not given away. */
export const planTripCards = (frame: GuideFrame, { trips, lakes }: Guide): CardFiles[] =>
  trips.map((trip) => planTrip(frame, trip, lakes));
