import { formatLength, formatNumber, type Voice } from '@fielded/core';

/** The language and the units that figures are written in, such as a report. */
export type InVoice = Pick<Voice, 'units' | 'terms' | 'language'>;

/**
 * A length as a dimension shows it: the report's own figure without its unit, which the drawing states once; where a
 * fraction was rounded, the decimal goes under the line.
 *
 * @example figureText(6.4, { units: 'in' }) // { text: '≈1/4', under: '0.252' }
 */
export function figureText(mm: number, voice: InVoice): { text: string; under: string } {
  const { units } = voice;
  const [text = '', under = ''] = withDecimal(formatLength(mm, units, 2), voice)
    .replaceAll(` ${units}`, '')
    .split(' (');
  return { text, under: under.replace(')', '') };
}

/** A length with its unit, in the language's own way; `digits` decimals in mm. */
export function spokenLength(mm: number, voice: InVoice, digits = 2): string {
  return withDecimal(formatLength(mm, voice.units, digits), voice);
}

/** A length in the unit that is not the drawing's own, with its unit, short enough to stand under a dimension line. */
export function otherUnitText(mm: number, voice: InVoice): string {
  const other = voice.units === 'mm' ? 'in' : 'mm';
  return withDecimal(formatLength(mm, other, 2), voice).split(' (')[0]!;
}

/** A number to so many digits, with the language's decimal sign. @example spokenNumber(0.5, 1, { units: 'mm' }) // '0.5' */
export function spokenNumber(value: number, digits: number, voice: Pick<InVoice, 'language'>): string {
  return withDecimal(formatNumber(value, digits), voice);
}

/** An angle in degrees, to a tenth. */
export function spokenAngle(degrees: number, voice: Pick<InVoice, 'language'>): string {
  return `${spokenNumber(degrees, 1, voice)}°`;
}

/** Figures that stand by themselves, with the language's decimal sign. */
export function withDecimal(words: string, { language }: Pick<InVoice, 'language'>): string {
  return language?.decimal === ',' ? words.replace(/(\d)\.(\d)/g, '$1,$2') : words;
}

/** A length as steel is ground to it: to 0.01 mm, or 0.0001 in, without its unit. */
export function groundTo(mm: number, voice: InVoice): string {
  const figure = voice.units === 'mm' ? mm.toFixed(2) : (mm / 25.4).toFixed(4);
  return withDecimal(figure.replace(/^-(0\.?0*)$/, '$1').replace('-', '−'), voice);
}

/** A scale as ISO 5455 writes it: enlargement 2:1, reduction 1:5. */
export function scaleText(scale: number, voice: Pick<InVoice, 'language'> = {}): string {
  const short = (value: number) => withDecimal(String(Math.round(value * 100) / 100), voice);
  return scale >= 1 ? `${short(scale)}:1` : `1:${short(1 / scale)}`;
}
