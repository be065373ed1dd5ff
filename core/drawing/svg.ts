import type { Figure, FigurePath, PathStroke, Stroke, TextStroke } from './figure.ts';

const number = (value: number) => String(Math.round(value * 100) / 100);

/** A figure as an SVG text: presentation attributes only, every text escaped, named for assistive tools. */
export function svgOf(figure: Figure): string {
  const { width, height, title, strokes } = figure;
  const body = strokes.map(elementOf).join('');
  return `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escape(title)}" viewBox="0 0 ${number(width)} ${number(height)}" width="${number(width)}" height="${number(height)}" data-scale="${figure.scale}">${HATCH}${body}</svg>`;
}

/** The accent, as the theme of the screens has it: a drawing stands alone as a file too. */
export const ACCENT = '#99201b';

const HATCH = `<defs><pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="#fff"/><line x1="0" y1="0" x2="0" y2="6" stroke="#444" stroke-width="1.2"/></pattern><pattern id="waste" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><rect width="5" height="5" fill="#fff"/><line x1="0" y1="0" x2="0" y2="5" stroke="${ACCENT}" stroke-width="2.4"/></pattern></defs>`;

const FILLS: Readonly<Record<PathStroke['fill'], string>> = {
  none: 'none',
  paper: '#fff',
  wood: '#fbf8f1',
  section: 'url(#hatch)',
  waste: 'url(#waste)',
  tool: '#d9d9d9',
  ink: '#111',
};

const PENS: Readonly<Record<PathStroke['pen'], string>> = {
  edge: 'stroke="#111" stroke-width="1.8"',
  hidden: 'stroke="#555" stroke-width="1.2" stroke-dasharray="6 4"',
  fine: 'stroke="#888" stroke-width="0.7"',
  cut: `stroke="${ACCENT}" stroke-width="3"`,
  centre: 'stroke="#555" stroke-width="0.9" stroke-dasharray="12 4 2 4"',
  ghost: 'stroke="#222" stroke-width="1.2" stroke-dasharray="3 2"',
  dimension: 'stroke="#111" stroke-width="1.1"',
  datum: 'stroke="#111" stroke-width="1"',
  none: '',
};

function elementOf(stroke: Stroke): string {
  return stroke.kind === 'path' ? pathElement(stroke) : textElement(stroke);
}

/** Where words stand in the way of a filled path's line, the fill and what is drawn of the line are two paths. */
function pathElement(stroke: PathStroke): string {
  const { path, gapped = path, pen } = stroke;
  const fill = FILLS[stroke.fill];
  if (gapped === path || stroke.fill === 'none')
    return `<path d="${pathOf(gapped)}" fill="${fill}" ${PENS[pen]} ${dataOf(stroke)}/>`;
  return `<path d="${pathOf(path)}" fill="${fill}" ${dataOf(stroke)}/><path d="${pathOf(gapped)}" fill="none" ${PENS[pen]} data-role="stroke"/>`;
}

function textElement(stroke: TextStroke): string {
  const [x, y] = [number(stroke.x), number(stroke.y)];
  const weight = stroke.bold ? ' font-weight="700"' : '';
  const turn = stroke.turn === 0 ? '' : ` transform="rotate(${number(-stroke.turn)} ${x} ${y})"`;
  return `<text x="${x}" y="${y}" font-size="${number(stroke.size)}" text-anchor="${stroke.anchor}"${weight}${turn} fill="#111" ${dataOf(stroke)}>${escape(stroke.text)}</text>`;
}

/** What a stroke is, and which value of the plan it draws. */
function dataOf(stroke: Stroke): string {
  const { role, name, value, place } = stroke;
  return [
    `data-role="${escape(role)}"`,
    ...(name === undefined
      ? []
      : [`data-name="${escape(name)}"`, `data-drawn-value="${escape(String(value))}"`]),
    ...(place === undefined ? [] : [`data-drawn-place="${escape(place)}"`]),
    ...(stroke.kind === 'path' && stroke.broken === true ? ['data-broken="true"'] : []),
  ].join(' ');
}

function pathOf(path: FigurePath): string {
  const runs = path.runs.map((run) =>
    run.kind !== 'arc'
      ? `${run.kind === 'line' ? 'L' : 'M'}${number(run.x)} ${number(run.y)}`
      : `A${number(run.radius)} ${number(run.radius)} 0 ${run.large ? 1 : 0} ${run.sweep ? 1 : 0} ${number(run.x)} ${number(run.y)}`,
  );
  return `M${number(path.x)} ${number(path.y)}${runs.join('')}${path.closed ? 'Z' : ''}`;
}

function escape(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}
