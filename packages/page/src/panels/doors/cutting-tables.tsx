import { type CuttingList, formatLength, formatNumber } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { attempt, fetchPart } from '../../desk/fetch-part.ts';
import { fileName, handOver } from '../../files/hand-over.ts';
import { keepTogether } from '../../words/keep-together.ts';

/** What is to be sawn: frames, panels, the blanks that narrow panels ride in, and the timber to order. */
export function CuttingTables({ list }: { list: CuttingList }): JSX.Element {
  const desk = useDesk();
  const units = desk.units.value;
  // Nor is a fraction broken after its whole inches.
  const say = (mm: number) => keepTogether(formatLength(mm, units)).replace(/(\d-)(?=\d)/g, '$1\u2060');
  return (
    <div class="cutting">
      <h3>Cutting list</h3>
      <Rows name="Frames" heads={['', 'Part', 'Length', 'Width', 'Thick']} by={1} rows={frameRows(list, say)} />
      <Rows name="Panels" heads={['', 'Grain', 'Height', 'Width', 'Field']} rows={panelRows(list, say)} />
      {list.blanks.length > 0 && (
        <Rows
          name="Blanks: run the ends before ripping"
          heads={['', 'Length', 'Width', 'Holds', 'Rip at']}
          by={3}
          rows={blankRows(list, say)}
        />
      )}
      {list.leftOver.map(({ door, missing, quantity }) => (
        <p key={door} class="fault">
          {quantity} × {door}: too narrow to run alone on the end grain. A spare or a carrier{' '}
          {missing > 0 ? `of ${say(missing)}` : 'of any width'} beside it would do.
        </p>
      ))}
      <Rows
        name="Timber to order"
        heads={['Thick', 'Wood', 'Finished', 'Order']}
        by={0}
        rows={timberRows(list, say, units === 'in')}
      />
      <button type="button" class="main" onClick={() => saveCuttingList(desk)}>
        Cutting list as PDF
      </button>
    </div>
  );
}

/** Says a length in mm. */
type Say = (mm: number) => string;
type Row = readonly string[];

function frameRows({ parts }: CuttingList, say: Say): Row[] {
  return parts.map(({ quantity, part, length, width, thickness }) => [
    `${quantity}`,
    part,
    say(length),
    say(width),
    say(thickness),
  ]);
}

function panelRows({ panels }: CuttingList, say: Say): Row[] {
  return panels.map(({ quantity, grain, height, width, field }) => [
    `${quantity}`,
    grain,
    say(height),
    say(width),
    field === null ? 'none' : `${say(field.height)} × ${say(field.width)}`,
  ]);
}

function blankRows({ blanks }: CuttingList, say: Say): Row[] {
  return blanks.map(({ quantity, length, width, panels, rips }) => [
    `${quantity}`,
    say(length),
    say(width),
    panels.map(({ door }) => door).join(', '),
    rips.map(say).join(', '),
  ]);
}

function timberRows({ timber }: CuttingList, say: Say, inBoardFeet: boolean): Row[] {
  return timber.map(({ thickness, wood, finished, order, boardFeet }) => [
    say(thickness),
    wood || 'not named',
    ...(inBoardFeet
      ? [`${formatNumber(boardFeet.finished, 1)} BF`, `${formatNumber(boardFeet.order, 1)} BF`]
      : [`${formatNumber(finished, 4)} m³`, `${formatNumber(order, 4)} m³`]),
  ]);
}

/** A table of the list; `by` is the column that tells one row from another, where one does. */
function Rows({
  name,
  heads,
  by,
  rows,
}: {
  name: string;
  heads: readonly string[];
  by?: number;
  rows: readonly Row[];
}): JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls within its place, and keys must reach it
    <div class="rows" tabIndex={0} role="region" aria-label={name}>
      <table>
        <caption>{name}</caption>
        <thead>
          <tr>
            {heads.map((head, i) => (
              <th key={`${i}`} scope="col">
                {head === '' ? <span class="unseen">How many</span> : head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.join(' ')}>
              {row.map((cell, i) =>
                i === by ? (
                  <th key={`${i}`} scope="row">
                    {cell}
                  </th>
                ) : (
                  <td key={`${i}`}>{cell}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

async function saveCuttingList(desk: Desk): Promise<void> {
  await attempt(desk, async () => {
    const { cuttingPdf } = await fetchPart(() => import('../../files/cutting-pdf.ts'));
    const name = fileName(`${desk.job.value.title} cutting list`, 'pdf');
    handOver(name, await cuttingPdf({ ...desk.job.value, units: desk.units.value }), 'application/pdf');
    desk.notice.value = { kind: 'note', text: `Saved as ${name}.` };
  });
}
