import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { attempt, fetchPart } from '../../desk/fetch-part.ts';
import { keptLogo } from '../../desk/kept-logos.ts';
import { FilePicker } from '../../entry/file-picker.tsx';
import { getAtKeys } from '../../job/data.ts';

/** Chooses the shop's logo for the head of a quote: it is kept in this browser, and named in the shop file. */
export function LogoField(): JSX.Element {
  const desk = useDesk();
  const picker = useRef<HTMLInputElement>(null);
  const { shop } = desk.doc.value;
  const maker = getAtKeys(shop?.data, ['name']);
  const named = getAtKeys(shop?.data, ['logo']);
  const logo = named === undefined ? null : keptLogo(shop?.logo);
  const take = ([file]: readonly File[]) =>
    attempt(desk, async () => {
      if (file === undefined || shop === null) return;
      const { takeLogo } = await fetchPart(() => import('../../files/take-logo.ts'));
      const taken = await takeLogo(file.name, new Uint8Array(await file.arrayBuffer()));
      if ('fault' in taken) {
        desk.notice.value = { kind: 'fault', text: taken.fault };
        return;
      }
      desk.setLogo({ name: file.name, id: taken.id });
      desk.notice.value = {
        kind: 'note',
        text: `${file.name} stands at the head of your quotes. Keep the file beside the shop file.`,
      };
    });
  return (
    <div class="field logo-field">
      <span id="logo-name">Logo</span>
      {logo && <img src={logo.png} alt={`Logo, ${String(named)}`} />}
      <div class="buttons" role="group" aria-labelledby="logo-name">
        <button type="button" disabled={maker === undefined} onClick={() => picker.current?.click()}>
          {named === undefined ? 'Choose a logo…' : logo === null ? `Choose ${String(named)}…` : 'Another logo…'}
        </button>
        {named !== undefined && (
          <button type="button" class="quiet" aria-label="Remove the logo" onClick={() => desk.setLogo(null)}>
            Remove
          </button>
        )}
      </div>
      <FilePicker picker={picker} label="Logo, PNG, JPEG or SVG" accept=".png,.jpg,.jpeg,.svg" take={take} />
      {maker === undefined && <p class="hint">A logo stands beside the name of the shop: give that first.</p>}
      {named !== undefined && logo === null && (
        <p class="hint">
          The shop file names {String(named)}, which is not here: quotes go out without it until it is chosen.
        </p>
      )}
    </div>
  );
}
