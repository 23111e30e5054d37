import type { Report } from '@fielded/core';
import { facePhrase } from '@fielded/core';
import { sayView } from './english/view.ts';
import { spokenLength } from './lengths.ts';

/** The tongue in words; '' where there is none. */
export function tongueSentence(report: Report): string {
  const { thicknessAtTip: tip, thicknessAtMouth: mouth, grooveNeeded: groove } = report.tongue;
  if (tip === null || mouth === null || groove === null) return '';
  const even = spokenLength(tip, report) === spokenLength(mouth, report);
  const clearance = report.fit.clearance ?? 0;
  if (clearance < 0) {
    const figures = { tip, mouth, groove, short: -clearance };
    return sayView(even ? 'tongue.even.wider' : 'tongue.taper.wider', figures, report);
  }
  return sayView(even ? 'tongue.even' : 'tongue.taper', { tip, mouth, groove }, report);
}

/** How the panel's faces stand to the frame's, over the panel's float; '' when it does not enter. */
export function facesSentence(report: Report): string {
  const { fit, units } = report;
  if (!fit.frontFace || !fit.backFace) return '';
  const [front, back] = [fit.frontFace, fit.backFace].map((face) => facePhrase(face, units, report));
  return sayView('faces', { front: front!, back: back! }, report);
}
