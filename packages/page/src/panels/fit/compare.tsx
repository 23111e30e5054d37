import { formatLength, type Report, verdictWord } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { adoptStyles } from '../../style/adopt-styles.ts';
import fitStyles from '../../style/fit.css?inline';

adoptStyles(fitStyles);

/** The differences between the joint that was kept and the one on the sheet. */
export function Compare(): JSX.Element | null {
  const desk = useDesk();
  const before = desk.trace.value;
  if (before === null) return null;
  const list = listDifferences({ ...before, units: desk.units.value }, desk.report.value);
  return (
    <section class="panel compare-panel" aria-label="Compared with the joint kept">
      <p>
        {list.length === 0
          ? 'The joint you kept is drawn behind, as a dashed line. Change something to see what differs.'
          : 'Against the joint you kept, drawn dashed:'}
      </p>
      {list.length > 0 && (
        <ul class="changes">
          {list.map(({ name, words }) => (
            <li key={name}>
              {name}: {words}
            </li>
          ))}
        </ul>
      )}
      <button
        type="button"
        class="quiet"
        onClick={() => {
          document.querySelector<HTMLElement>('.deeds [aria-pressed]')?.focus();
          desk.trace.value = null;
        }}
      >
        Stop comparing
      </button>
    </section>
  );
}

interface Difference {
  readonly name: string;
  readonly words: string;
}

/** Sizes and figures that two reports do not share, in words. */
function listDifferences(before: Report, after: Report): Difference[] {
  const was = figuresOf(before);
  const is = figuresOf(after);
  const names = [...new Set([...was.keys(), ...is.keys()])];
  return names.flatMap((name) => {
    const [old, now] = [was.get(name) ?? 'none', is.get(name) ?? 'none'];
    return old === now ? [] : [{ name, words: `from ${old} to ${now}` }];
  });
}

function figuresOf(report: Report): Map<string, string> {
  const { units, panel, frame, section, tongue, fit } = report;
  const say = (mm: number | null) => (mm === null ? 'none' : formatLength(mm, units));
  const figures = new Map<string, string>([
    ['Verdict', verdictWord(fit.verdict)],
    ['Tongue at tip', say(tongue.thicknessAtTip)],
    ['Tongue at mouth', say(tongue.thicknessAtMouth)],
    ['Clearance', say(fit.clearance)],
    ['Goes in at most', say(fit.deepestInsertion)],
    ['Margin', say(fit.visibleMargin)],
    ['Front face, pressed forward', say(fit.frontFace?.most ?? null)],
    ['Stock', say(panel.measured)],
    ['Frame', say(frame.thickness)],
    ['Groove, width', say(frame.groove.width)],
    ['Groove, depth', say(frame.groove.depth)],
    ['Groove, setback', say(frame.groove.setback)],
    ['Swell gap', say(frame.swellGap)],
  ]);
  for (const { name, shape, depth, reach, land, shoulder } of section.cuts) {
    figures.set(`Shape of the ${name}`, shape);
    figures.set(`Depth of the ${name}`, say(depth));
    figures.set(`Reach of the ${name}`, say(reach));
    figures.set(`Land of the ${name}`, say(land));
    figures.set(`Shoulder of the ${name}`, say(shoulder));
  }
  return figures;
}
