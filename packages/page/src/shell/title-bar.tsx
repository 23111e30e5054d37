import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import type { Desk } from '../desk/desk.ts';
import { attempt, fetchPart } from '../desk/fetch-part.ts';
import type { Keeper } from '../desk/keeper.ts';
import { Later } from '../desk/later.tsx';
import { takeBack } from '../desk/take-back.ts';
import { FilePicker } from '../entry/file-picker.tsx';
import { useOneStop } from '../entry/one-stop.ts';
import type { Places } from '../stage/places.ts';
import { goStep } from './listen-to-keys.ts';
import { Menu } from './menu.tsx';

const SAVING = {
  saved: 'Kept in this browser',
  blocked: 'Not kept: this browser blocks storage. Save the job as a file.',
  full: 'Not kept: this browser has no room left. Save the job as a file.',
};

/** The job's name, what can be done with it, undo, and the unit that lengths are shown in. */
export function TitleBar({ places, keeper }: { places: Places; keeper: Keeper }): JSX.Element {
  const desk = useDesk();
  const picker = useRef<HTMLInputElement>(null);
  const commands = useRef<HTMLDivElement>(null);
  useOneStop(commands, 'summary');
  return (
    <header class="bar">
      <h1>
        <Mark />
        Fielded
      </h1>
      <div class="title">
        <input
          type="text"
          dir="auto"
          aria-label="Title of the job"
          value={String(desk.value('title') ?? 'Untitled job')}
          onInput={(event) => desk.change([['title', event.currentTarget.value || undefined]], 'title typed')}
          onBlur={() => desk.settle()}
          onKeyDown={({ key }) => {
            if (key === 'Escape') takeBack(desk, 'title typed');
            if (key === 'Enter') document.querySelector<HTMLElement>('.rooms [tabindex="0"]')?.focus();
          }}
        />
        <p class={`saving ${desk.saving.value}`}>{SAVING[desk.saving.value]}</p>
      </div>
      <div class="commands" role="toolbar" aria-label="Job and drawing" ref={commands}>
        <Step name="Undo" can={desk.canUndo.value} go={() => goStep(desk, 'undo')} />
        <Step name="Redo" can={desk.canRedo.value} go={() => goStep(desk, 'redo')} />
        <Units />
        <Menu name="Job">
          <Later load={loadJobMenu} keeper={keeper} places={places} open={() => picker.current?.click()} />
        </Menu>
        <Menu name="Drawing">
          <Later load={loadDrawingMenu} view={places.view.value} />
        </Menu>
        <FilePicker
          picker={picker}
          label="Job file, with its shop file and drawings if it names any"
          multiple
          accept=".yaml,.yml,.json,.svg,.dxf,.png,.jpg,.jpeg"
          take={(files) => takeIn(desk, keeper, files)}
        />
      </div>
    </header>
  );
}

const loadJobMenu = () => import('./job-menu.tsx').then(({ JobMenu }) => JobMenu);
const loadDrawingMenu = () => import('./drawing-menu.tsx').then(({ DrawingMenu }) => DrawingMenu);

/** Takes files in; the part that reads them is fetched only then. */
async function takeIn(desk: Desk, keeper: Keeper, files: readonly File[]): Promise<void> {
  await attempt(desk, async () => {
    const { takeInFiles } = await fetchPart(() => import('../files/take-in.ts'));
    await takeInFiles(desk, keeper, files);
  });
}

function Units(): JSX.Element {
  const desk = useDesk();
  return (
    <div class="units" role="radiogroup" aria-label="Lengths shown in">
      {(['mm', 'in'] as const).map((unit) => (
        <label key={unit}>
          <input
            type="radio"
            name="units"
            value={unit}
            checked={desk.units.value === unit}
            onChange={() => {
              desk.units.value = unit;
            }}
          />
          <span>{unit}</span>
        </label>
      ))}
    </div>
  );
}

/** A step back or forward. With none to go it keeps the focus, as a disabled button would not. */
function Step({ name, can, go }: { name: 'Undo' | 'Redo'; can: boolean; go: () => void }): JSX.Element {
  return (
    <button
      type="button"
      class={name === 'Redo' ? 'icon flip' : 'icon'}
      aria-label={name}
      aria-disabled={!can}
      onClick={go}
    >
      <Arrow />
    </button>
  );
}

/** A raised panel's edge. */
function Mark(): JSX.Element {
  return (
    <svg class="logo" viewBox="0 0 24 14" aria-hidden="true">
      <path d="M23 1H13C11 1 11 2.5 11 2.5 9.5 3 8 5 7 6H1V10H7L8 13H23" />
    </svg>
  );
}

function Arrow(): JSX.Element {
  return (
    <svg viewBox="0 0 20 20" aria-hidden="true">
      <path d="M7 4 3 8l4 4M3 8h9a4 4 0 0 1 0 8H9" />
    </svg>
  );
}
