/** One entry of a DXF file: a group code and its value as text. */
export interface DxfGroup {
  readonly code: number;
  readonly value: string;
}

/** One entity: its type and its groups in order, without the handle's meaning. */
export interface DxfEntity {
  readonly type: string;
  readonly groups: readonly DxfGroup[];
}

/** A DXF file's header variables and the entities of its drawing. */
export interface DxfContents {
  readonly header: ReadonlyMap<string, readonly DxfGroup[]>;
  readonly entities: readonly DxfEntity[];
}

/**
 * Takes a text DXF file apart: pairs of lines, a group code and a value each. undefined where it is no such file
 * (a drawing in another format, a binary DXF, a file that breaks off).
 */
export function takeApart(text: string): DxfContents | undefined {
  const groups = pairLines(text);
  if (groups === undefined || groups.at(-1)?.value !== 'EOF') return undefined;
  const header = new Map<string, DxfGroup[]>();
  const entities: { type: string; groups: DxfGroup[] }[] = [];
  let section = '';
  let variable: DxfGroup[] = [];
  groups.forEach(({ code, value }, index) => {
    if (code === 0 && value === 'SECTION') section = groups[index + 1]?.value ?? '';
    else if (code === 0 && value === 'ENDSEC') section = '';
    else if (section === 'HEADER' && code === 9) {
      variable = [];
      header.set(value, variable);
    } else if (section === 'HEADER') variable.push({ code, value });
    else if (section === 'ENTITIES' && code === 0) entities.push({ type: value, groups: [] });
    else if (section === 'ENTITIES') entities.at(-1)?.groups.push({ code, value });
  });
  return { header, entities };
}

function pairLines(text: string): DxfGroup[] | undefined {
  const lines = text.split(/\r\n|\r|\n/);
  while (lines.at(-1)?.trim() === '') lines.pop();
  if (lines.length < 2 || lines.length % 2 !== 0) return undefined;
  const groups: DxfGroup[] = [];
  for (let i = 0; i < lines.length; i += 2) {
    const code = lines[i]!.trim();
    if (!/^\d{1,4}$/.test(code)) return undefined;
    groups.push({ code: Number(code), value: lines[i + 1]!.trim() });
  }
  return groups;
}

/** The number under a code; `otherwise` where there is none, NaN where it is no number. */
export function numberOf(groups: readonly DxfGroup[], code: number, otherwise: number): number {
  const group = groups.find((g) => g.code === code);
  return group === undefined ? otherwise : figureOf(group.value);
}

/** A value as a number; NaN where it is none, also where it is empty. */
export function figureOf(value: string): number {
  return value === '' ? Number.NaN : Number(value);
}

/** The text under a code, '' where there is none. */
export function textOf(groups: readonly DxfGroup[], code: number): string {
  return groups.find((g) => g.code === code)?.value ?? '';
}
