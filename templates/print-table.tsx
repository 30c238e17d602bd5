import { Scroll, Section } from "./parts.tsx";
import { allFiles, type Printed, type PrintFile, SHEETS } from "./print-files.ts";
import { ADDRESS, type Sheet } from "./sheet.ts";

const Row = ({ file, sheet }: { file: PrintFile; sheet: Sheet }) => (
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
export const PrintTable = ({ printed, sheet }: { printed: Printed; sheet: Sheet }) => (
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
