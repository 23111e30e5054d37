import {
  formatLength,
  formatNumber,
  type Plan,
  type SetUp,
  sayCurve,
  sayNotChecked,
  type Units,
  type Voice,
} from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { HEAD_FIELDS, KNIFE_FIELDS, MACHINE_FIELDS } from '../shop/shop-fields.ts';
import { PlanView } from './plan-view.tsx';
import { SectionView } from './section-view.tsx';
import { TestPiece } from './test-piece.tsx';

/** The id of a set-up's sheet; `index` counts the set-ups from 0. */
export function sheetId(index: number): string {
  return `sheet-${index + 1}`;
}

/** One set-up on one sheet: the five figures that are set, large; a section and a plan; what was not checked, in a box. */
export function MachineSheet({ plan, index }: { plan: Plan; index: number }): JSX.Element {
  const desk = useDesk();
  const setUp = plan.setups[index]!;
  const number = index + 1;
  const units = desk.units.value;
  const { cut, machine, head, knife } = setUp;
  const voice = { units, terms: desk.report.value.terms };
  return (
    <article class="machine-sheet" id={sheetId(index)} tabIndex={-1} aria-label={`Set-up ${number}, ${cut}`}>
      <h3>
        {number}. {cut}
      </h3>
      <p class="hint">
        {machine}, head {head}
        {knife !== null && `, knife ${knife}`}, {sayHeld(setUp)}
      </p>
      <dl class="set">
        {bigFigures(setUp, units).map(({ name, figure, beside }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <BigFigure figure={figure} /> {beside && <small>{keepTogether(beside)}</small>}
            </dd>
          </div>
        ))}
      </dl>
      <SectionView plan={plan} index={index} />
      <PlanView setUp={setUp} />
      {setUp.passes.length > 1 && (
        <p>
          In {setUp.passes.length} passes, to a depth of{' '}
          {setUp.passes.map(({ depth }) => keepTogether(formatLength(depth, units))).join(', then ')}.
        </p>
      )}
      {sayCurve(setUp, voice).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <TestPiece setUp={setUp} corrections={plan.correction[index] ?? []} />
      <NotChecked setUp={setUp} voice={voice} />
      {setUp.problems.map(({ code, at, severity, message }) => (
        <p key={`${code} ${at}`} class={severity === 'error' ? 'fault' : ''}>
          {keepTogether(message)}
        </p>
      ))}
    </article>
  );
}

/** What was not checked, and what is assumed, in a box of its own; nothing where there is neither. */
function NotChecked({ setUp, voice }: { setUp: SetUp; voice: Voice }): JSX.Element | null {
  if (!setUp.assumed && setUp.notChecked.length === 0) return null;
  return (
    <div class="not-checked">
      <p>
        <b>Not checked</b>
      </p>
      <ul>
        {setUp.assumed && (
          <li>The hand of the knife is assumed: make sure that it cuts, and does not rub, turning so.</li>
        )}
        {setUp.notChecked.map((path) => (
          <li key={path}>{keepTogether(sayNotChecked(path, setUp, { ...voice, namePlace: nameField }))}</li>
        ))}
      </ul>
    </div>
  );
}

/** A figure as large as it can be read; the decimal of a rounded fraction has a line of its own under it. */
function BigFigure({ figure }: { figure: string }): JSX.Element {
  const [, fraction, decimal] = /^(.*) \((.*)\)$/.exec(figure) ?? [];
  if (fraction === undefined || decimal === undefined) return <>{keepTogether(figure)}</>;
  return (
    <>
      {keepTogether(fraction)} <span class="decimal">{keepTogether(decimal)}</span>
    </>
  );
}

/** A key of the shop file as its field on this page is called. */
function nameField(key: string): string {
  const field = [...HEAD_FIELDS, ...MACHINE_FIELDS, ...KNIFE_FIELDS].find((each) => each.key === key);
  return field === undefined ? key : `"${field.label}" in the shop`;
}

/** Height, fence, ring, speed and feed: what is set at the machine. */
function bigFigures(setUp: SetUp, units: Units): { name: string; figure: string; beside?: string }[] {
  const say = (mm: number) => formatLength(mm, units);
  const { seat, cuttingPoint, fence, hole, speed, feedRate, feedBy, curve } = setUp;
  return [
    seat === null
      ? { name: 'Height', figure: say(cuttingPoint), beside: 'deepest cutting point above the table' }
      : {
          name: 'Height',
          figure: say(Math.abs(seat)),
          beside: `seat ${seat < 0 ? 'below' : 'above'} the table; cuts to ${say(cuttingPoint)}`,
        },
    curve?.alone
      ? {
          name: 'Bearing',
          figure: say(curve.guide.bearing.available ?? curve.guide.bearing.needed),
          beside: 'and no straight fence: half of the shaped heads alone',
        }
      : { name: 'Fence', figure: say(fence.standsOut), beside: 'the knives stand out beyond it' },
    {
      name: 'Ring',
      figure: hole === null ? 'none' : hole.ring === null ? say(hole.needed) : say(hole.ring),
      ...(hole !== null && { beside: `a hole of ${say(hole.needed)} is needed` }),
    },
    { name: 'Speed', figure: `${formatNumber(speed, 0)} /min`, beside: `${formatNumber(setUp.rim, 0)} m/s at the rim` },
    {
      name: 'Feed',
      figure: `${formatNumber(feedRate, 1)} m/min`,
      beside: feedBy === 'feeder' ? 'by the feeder' : 'by hand, at most',
    },
  ];
}

/** How the panel is held and the head turned, in words. */
function sayHeld({ presented, run, turnedOver }: SetUp): string {
  const held =
    presented === 90
      ? 'panel on edge'
      : `${run === 'under' ? 'face down, cutter below' : 'cutter above the panel'}${presented === 0 ? '' : `, tilted ${formatNumber(presented, 1)}°`}`;
  return turnedOver ? `${held}, head turned over` : held;
}
