import type { Caution, Guide, GuidePage } from "../build/guide/guide-schema.ts";
import { STATE_WORDS } from "../build/model/phase.ts";
import { Page } from "./layout.tsx";
import { Backtest } from "./methods-score.tsx";
import { Harmless, Section } from "./parts.tsx";
import type { Printed } from "./print-files.ts";
import { PrintTable } from "./print-table.tsx";
import { ADDRESS, type Sheet } from "./sheet.ts";

const whenText = ({ when }: Caution): string =>
  when.map((state) => (state === "always" ? "always" : STATE_WORDS[state].name.toLowerCase())).join(", ");

/** The short cautions that stand on lake pages and cards, all in one place. */
function ShortCautions({ sheet }: { sheet: Sheet }) {
  const { cautions } = sheet.guide;
  if (cautions.length === 0) return null;
  return (
    <Section title="As they stand on the cards" id="short">
      <ul>
        {cautions.map((caution) => (
          <li>
            <strong>{caution.short}</strong>{" "}
            <span class="small">
              {caution.agency}; {whenText(caution)}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** The licences under which others' work is in the guide or made it. */
const Licences = ({ sheet }: { sheet: Sheet }) => (
  <Section title="Licence texts" id="licences">
    <ul>
      <li>
        <a href={sheet.to(ADDRESS.fontLicence)}>The typeface’s licence</a>
      </li>
      <li>
        <a href={sheet.to(ADDRESS.notices)}>Licences of everything the program is built from</a>
      </li>
    </ul>
  </Section>
);

/** A standing chapter or a page of the club's own; methods, cautions and printing add what is this guide's own. */
export const ChapterPage = ({
  chapter,
  backtest = null,
  printed = null,
  sheet,
}: {
  chapter: GuidePage;
  /** Of past seasons; shown on the page of methods. */
  backtest?: Guide["backtest"];
  /** What there is to print; shown on the page about printing. */
  printed?: Printed | null;
  sheet: Sheet;
}) => (
  <Page sheet={sheet} title={chapter.title} description={`${chapter.title}: ${sheet.guide.club.name}.`}>
    <h1>{chapter.title}</h1>
    {sheet.address === ADDRESS.chapter("cautions") ? <ShortCautions sheet={sheet} /> : null}
    <Harmless class="prose" html={chapter.html} />
    {sheet.address === ADDRESS.chapter("about") ? <Licences sheet={sheet} /> : null}
    <Backtest rows={backtest} />
    {printed === null ? null : <PrintTable printed={printed} sheet={sheet} />}
  </Page>
);

/** For an address that is not there. */
export const NotFoundPage = ({ sheet }: { sheet: Sheet }) => (
  <Page sheet={sheet} title="Not here" description="There is no such page in this guide.">
    <h1>Not here</h1>
    <p class="lead">
      There is no such page in this guide. All lakes are on the{" "}
      <a href={sheet.to(ADDRESS.board)}>season board</a>.
    </p>
  </Page>
);
