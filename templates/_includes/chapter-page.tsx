import type { Caution, GuidePage } from "../../build/guide/guide-schema.ts";
import { allFiles, type Printed, type PrintFile, SHEETS } from "../../build/guide/print-files.ts";
import { ADDRESS } from "../../build/model/addresses.ts";
import { STATE_WORDS } from "../../build/model/phase.ts";
import { Page } from "./layout.tsx";
import type { PageContext } from "./page-context.ts";
import { Harmless, Scroll, Section } from "./parts.tsx";
import { Backtest, ClearDays, LearntReporting, type Scored } from "./scores.tsx";

const Row = ({ file, sheet }: { file: PrintFile; sheet: PageContext }) => (
  <tr>
    <th scope="row">{file.what}</th>
    <td>{file.size}</td>
    <td>{file.sides}</td>
    <td>{file.alone === null ? "" : <a href={sheet.to(ADDRESS.card(file.alone))}>alone</a>}</td>
    {SHEETS.map(([ending, paper]) => (
      <td>
        {file.sheets === null ? "" : <a href={sheet.to(ADDRESS.card(`${file.sheets}-${ending}`))}>{paper}</a>}
      </td>
    ))}
  </tr>
);

/** Every file to print of this guide. */
const PrintTable = ({ printed, sheet }: { printed: Printed; sheet: PageContext }) => (
  <Section title="The files of this guide" id="files">
    <Scroll label="Cards, their sizes and their files">
      <table>
        <caption>
          Alone: a page of the card’s own size. Sheets: cards to cut, with crop marks. All PDF.
        </caption>
        <thead>
          <tr>
            <th scope="col">Card</th>
            <th scope="col">Size</th>
            <th scope="col">Sides</th>
            <th scope="col">Alone</th>
            {SHEETS.map(([, paper]) => (
              <th scope="col">On {paper}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {allFiles(printed, sheet.guide).map((file) => (
            <Row file={file} sheet={sheet} />
          ))}
        </tbody>
      </table>
    </Scroll>
  </Section>
);

const whenText = ({ when }: Caution): string =>
  when.map((state) => (state === "always" ? "always" : STATE_WORDS[state].name.toLowerCase())).join(", ");

/** The short cautions that stand on lake pages and cards, all in one place. */
function ShortCautions({ sheet }: { sheet: PageContext }) {
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
const Licences = ({ sheet }: { sheet: PageContext }) => (
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
  scored = null,
  printed = null,
  sheet,
}: {
  chapter: GuidePage;
  /** Past seasons' scores and what was learnt of reports; shown on the page of methods. */
  scored?: Scored | null;
  /** What there is to print; shown on the page about printing. */
  printed?: Printed | null;
  sheet: PageContext;
}) => (
  <Page sheet={sheet} title={chapter.title} description={`${chapter.title}: ${sheet.guide.club.name}.`}>
    <h1>{chapter.title}</h1>
    {sheet.address === ADDRESS.chapter("cautions") ? <ShortCautions sheet={sheet} /> : null}
    <Harmless class="prose" html={chapter.html} />
    {sheet.address === ADDRESS.chapter("about") ? <Licences sheet={sheet} /> : null}
    {scored === null ? null : <LearntReporting reporting={scored.reporting} />}
    {scored === null ? null : <Backtest rows={scored.backtest} />}
    {scored === null ? null : <ClearDays score={scored.clearDays} />}
    {printed === null ? null : <PrintTable printed={printed} sheet={sheet} />}
  </Page>
);
