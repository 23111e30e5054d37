import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { attempt } from '../../desk/fetch-part.ts';
import { keepShop, keptShop } from '../../desk/kept-shop.ts';
import { FilePicker } from '../../entry/file-picker.tsx';
import { Fold } from '../../entry/fold.tsx';
import { takeShop } from '../../files/open-shop.ts';
import { saveShop } from '../../files/save-shop.ts';
import { getAtKeys } from '../../job/data.ts';
import { adoptStyles } from '../../style/adopt-styles.ts';
import partsStyles from '../../style/parts.css?inline';
import shopStyles from '../../style/shop.css?inline';
import { addKnives } from './add-knives.ts';
import { Entries, Fields } from './entries.tsx';
import { KnifeEntry } from './knife-entry.tsx';
import { KnifeMatches } from './knife-match.tsx';
import { KnifePicture } from './knife-picture.tsx';
import { RateFields } from './rate-fields.tsx';
import {
  HEAD_FIELDS,
  MACHINE_FIELDS,
  NEW_HEAD,
  NEW_KNIFE,
  NEW_MACHINE,
  NEW_WOOD,
  RULE_FIELDS,
  WOOD_FIELDS,
} from './shop-fields.ts';

adoptStyles(partsStyles);
adoptStyles(shopStyles);

/** The shop: its heads, knives, machines, rules, rates and woods; kept in the browser for every job, and as the shop file. */
export function ShopPanel(): JSX.Element {
  const desk = useDesk();
  const { shop } = desk.doc.value;
  useEffect(() => {
    if (shop !== null) keepShop(shop);
  }, [shop]);
  const units = (getAtKeys(shop?.data, ['units']) ?? desk.job.value.units) === 'in' ? 'in' : 'mm';
  const common = 'A new one starts with common sizes: type over them what is marked on yours.';
  const begun = 'Assumed: sizes of a common one. Type over them what is marked on yours.';
  return (
    <section class="shop" aria-labelledby="shop-name">
      <h2 id="shop-name">Shop</h2>
      <ShopFile />
      <Entries what="heads" one="head" title="Heads" fresh={NEW_HEAD[units]} hint={common} begun={begun}>
        {(name) => <Fields at={['heads', name]} fields={HEAD_FIELDS} whose={name} />}
      </Entries>
      <Entries
        what="knives"
        one="knife"
        title="Knives"
        fresh={NEW_KNIFE[units]}
        hint="Each is drawn as the section that it leaves."
        begun="Assumed: a common cove. Type over it what yours is."
        picture={(name) => <KnifePicture name={name} />}
      >
        {(name) => <KnifeEntry name={name} />}
      </Entries>
      <button type="button" class="quiet" onClick={() => addKnives(desk)}>
        Add this job's profiles to the knives
      </button>
      <KnifeMatches />
      <Entries what="machines" one="machine" title="Machines" fresh={NEW_MACHINE[units]} hint={common} begun={begun}>
        {(name) => <Fields at={['machines', name]} fields={MACHINE_FIELDS} whose={name} />}
      </Entries>
      <Entries
        what="woods"
        one="wood"
        title="Woods of your own"
        fresh={NEW_WOOD}
        hint="Woods that are not in the table, or that you know better."
        begun="Assumed: figures near those of many woods. Type over them your own."
      >
        {(name) => <Fields at={['woods', name]} fields={WOOD_FIELDS} whose={name} />}
      </Entries>
      <div class="group">
        <Fold name="Rules of the shop">{() => <Fields at={['rules']} fields={RULE_FIELDS} whose="rules" />}</Fold>
        <Fold name="Rates">{() => <RateFields />}</Fold>
      </div>
    </section>
  );
}

/** The shop as a file: to open, to save, or as this browser keeps it. */
function ShopFile(): JSX.Element {
  const desk = useDesk();
  const { shop } = desk.doc.value;
  const kept = useSignal(keptShop());
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      {shop === null && (
        <p class="hint">
          Heads, knives, machines and rules that all your jobs share. With them this page can say whether a cut can be
          run, and how.
        </p>
      )}
      <div class="buttons">
        {shop === null && kept.value !== null && (
          <button type="button" class="main" onClick={() => desk.replace({ ...desk.doc.value, shop: kept.value })}>
            Use the shop kept in this browser
          </button>
        )}
        <button type="button" onClick={() => picker.current?.click()}>
          Open a shop file…
        </button>
        {shop !== null && (
          <button type="button" onClick={() => attempt(desk, () => saveShop(desk))}>
            Save the shop as a file
          </button>
        )}
      </div>
      <FilePicker
        picker={picker}
        label="Shop file, with the drawings and the logo that it names"
        multiple
        accept=".yaml,.yml,.json,.svg,.dxf,.png,.jpg,.jpeg"
        take={(files) => void attempt(desk, () => takeShop(desk, files))}
      />
    </>
  );
}
