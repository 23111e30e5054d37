/** What was read off a scan of a sample. */
export const TRACE_WORDS = {
  'print.trace.head':
    '{file}: {thickness} thick, {edge} at the edge ({pixels} pixels to the inch, turned by {turned}°)',
  'print.trace.front':
    'front: reaches {reach}, {depth} deep at the edge; lines and arcs within {deviation} of the scan',
  'print.trace.back': 'back: reaches {reach}, {depth} deep at the edge; lines and arcs within {deviation} of the scan',
  'print.trace.back.none': 'back: no cut',
  'print.trace.arc': 'arc {from} to {to} from the edge: radius {radius} ± {uncertainty}',
  'print.trace.arc.nominal':
    'arc {from} to {to} from the edge: radius {radius} ± {uncertainty}; {nominal} mm would lie {deviation} off in its middle',
  'print.trace.look':
    'Draw it over the scan with -o FILE.svg and look before a knife is ordered; measure the thickness with a calliper.',
} as const;
