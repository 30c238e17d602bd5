import { calibrationPlot, MOMENT_WORDS } from "../../build/draw/charts.ts";
import { screenInk } from "../../build/draw/ink.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import type { Caution, Guide, GuidePage } from "../../build/guide/guide-schema.ts";
import { allFiles, type Printed, type PrintFile, SHEETS } from "../../build/guide/print-files.ts";
import { ADDRESS } from "../../build/model/addresses.ts";
import { STATE_WORDS } from "../../build/model/phase.ts";
import { chanceText, rounded } from "../../build/model/units.ts";
import { Page } from "./layout.tsx";
import type { PageContext } from "./page-context.ts";
import { Harmless, Scroll, Section } from "./parts.tsx";

type BacktestRow = NonNullable<Guide["backtest"]>[number];

const days = (value: number): string => value.toFixed(1);

const Scores = ({ rows }: { rows: readonly BacktestRow[] }) => (
  <Scroll label="Scores of past seasons">
    <table>
      <caption>Scores of past seasons, in days</caption>
      <thead>
        <tr>
          <th scope="col">Moment</th>
          <th scope="col">Lake-seasons</th>
          <th scope="col">Error, usual</th>
          <th scope="col">Error, guide</th>
          <th scope="col">CRPS, usual</th>
          <th scope="col">CRPS, guide</th>
          <th scope="col">50 % span held</th>
          <th scope="col">80 % span held</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ moment, n, baseline, model }) => (
          <tr>
            <th scope="row">{MOMENT_WORDS[moment]}</th>
            <td>{n}</td>
            <td>{days(baseline.mae)}</td>
            <td>
              <strong>{days(model.mae)}</strong>
            </td>
            <td>{days(baseline.crps)}</td>
            <td>
              <strong>{days(model.crps)}</strong>
            </td>
            <td>{chanceText(model.cover50)}</td>
            <td>{chanceText(model.cover80)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </Scroll>
);

/** The plot's points as a table. */
function CalibrationTable({ rows }: { rows: readonly BacktestRow[] }) {
  const said = [...new Set(rows.flatMap(({ calibration }) => calibration.map((point) => point.said)))].sort(
    (a, b) => a - b,
  );
  return (
    <details>
      <summary>The same as a table</summary>
      <Scroll label="Said and came">
        <table>
          <thead>
            <tr>
              <th scope="col">Said</th>
              {rows.map(({ moment }) => (
                <th scope="col">Came, {MOMENT_WORDS[moment].toLowerCase()}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {said.map((chance) => (
              <tr>
                <th scope="row">{rounded(chance * 100)} %</th>
                {rows.map(({ calibration }) => {
                  const came = calibration.find((point) => point.said === chance)?.came;
                  return <td>{came === undefined ? "" : `${rounded(came * 100)} %`}</td>;
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}

/** How well past seasons of this club's records would have been called. */
function Backtest({ rows }: { rows: Guide["backtest"] }) {
  if (rows === null || rows.length === 0) return null;
  return (
    <Section title="How good it is" id="score">
      <p>
        Each past season was left out in turn and forecast from the others. Error: how far the middle date was
        off, on average. CRPS: the same for the whole spread; lower is better. Usual: the lake’s own past mean
        and spread.
      </p>
      <Scores rows={rows} />
      <h3>Does a chance come true as often as it says?</h3>
      <Harmless class="plot" html={renderSvg(calibrationPlot(rows, screenInk))} />
      <CalibrationTable rows={rows} />
    </Section>
  );
}

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
  backtest = null,
  printed = null,
  sheet,
}: {
  chapter: GuidePage;
  /** Of past seasons; shown on the page of methods. */
  backtest?: Guide["backtest"];
  /** What there is to print; shown on the page about printing. */
  printed?: Printed | null;
  sheet: PageContext;
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
