/** What is wrong with what the command was given, and the frame of the help; the texts of each command stand in its own file, as `command-texts.ts` names them. */
export const USAGE_WORDS = {
  'print.help.title': 'fielded: the section, the fit and the drawing of raised-and-fielded panels',
  'print.help.job': 'JOB is a file in YAML or JSON; docs/job-file.md describes it and examples/ has some.',
  'print.help.statuses': 'Exit status: 0 all is well, 1 a job has an error, 2 an input could not be read.',
  'print.help.status.two': 'Exit status: 0 {all}, 2 {wrong}.',
  'print.help.status.three': 'Exit status: 0 {all}, 1 {error}, 2 {wrong}.',

  'print.usage.see-overview': 'See fielded --help.',
  'print.usage.see-command': 'See fielded help {command}.',
  'print.usage.near': 'Did you mean {name}?',
  'print.usage.known': 'There are {names:said}.',
  'print.usage.known.one': 'There is {name}.',
  'print.usage.and': '{one} and {other}',
  'print.usage.or': '{one} or {other}',
  'print.usage.alone': '{one}',

  'print.usage.unknown-command': '{name} is no command.',
  'print.usage.unknown-option': '{name} is no option.',
  'print.usage.option-not-here': '{name} is no option here.',
  'print.usage.needs-options': '{command} needs {options:said}.',
  'print.usage.twice': '--{option} is given twice. Give it once.',
  'print.usage.too-often': '--{option} is given more than {times} times. Give it {times} times at most.',
  'print.usage.needs-value': '{option} needs a value after it.',
  'print.usage.takes-no-value': '--{option} takes no value.',
  'print.usage.unknown-value': '--{option} {value} is not known.',
  'print.usage.not-whole': '--{option} needs a whole number from {least} to {most}, not {value}.',
  'print.usage.ending': '{file} does not say what to write: end the name in {endings:said}.',
  'print.usage.unknown-shell': '{name} is no shell known here.',

  'print.usage.json-alone': '--json goes to standard output. Leave it out, or leave out -o.',
  'print.usage.all-alone': '--all goes to standard output. Leave it out, or leave out -o.',
  'print.usage.json-not-in-file': '--json goes to standard output: take -o out.',
  'print.usage.json-by-itself': '--json goes to standard output by itself: take -o and --labels out.',
  'print.usage.doors-alone': '--doors are written to a PDF by themselves: name it with -o doors.pdf.',
  'print.usage.labels-pdf': '--labels are written to a PDF: name it with -o labels.pdf.',
  'print.usage.outlines-of-labels': '--outlines is for labels: say which with --labels 65.',
  'print.usage.labels-size':
    '--labels {size}: write 65, or width x height of one label such as 70x36, each 8 mm or more.',
  'print.usage.labels-too-large': '--labels {size}: not one label of this size fits an A4 sheet.',
  'print.usage.fewer-jobs': 'List fewer jobs or doors at a time.',
  'print.usage.fewer-jobs.csv': 'List fewer jobs or doors at a time, or write a .csv, which holds any number.',
  'print.usage.fewer-doors': 'Give equal doors a quantity, split the job, or write a .csv.',

  'print.usage.sheet-in-svg':
    '--sheet is for an .svg: a .pdf or .html holds every sheet. Add -o plan.svg, or leave it out.',
  'print.usage.sheet': '--sheet {sheet}: there are {count:count}.',
  'print.usage.sheet.one': '--sheet {sheet}: there is one.',
  'print.usage.machine': '--machine {name}: there is no such machine.',
  'print.usage.machines': 'The shop has {names:said}.',

  'print.usage.of-wood': '--{option} is for drawings of wood. Leave it out of --view {view}.',
  'print.usage.off-paper': '--{option} is for drawings without paper. Leave it out, or --paper.',
  'print.usage.on-paper': '--{option} is for drawings on paper. Add --paper, or take --view sheet.',
  'print.usage.with-figures': '--{option} is for drawings with figures: a .dxf is outlines at 1:1. Leave it out.',
  'print.usage.dxf-views': 'A .dxf holds the outlines of {views}. Take one of these with --view.',
  'print.usage.theme': '--theme is for screens: a PDF is always ink on white. Leave it out, or write an .svg.',
  'print.usage.text': '--text is for .svg: the other formats bring their letters with them. Leave it out.',
  'print.usage.font':
    "--font is for .pdf, .png and --text outlines: live letters are drawn in the reader's own fonts. Leave it out.",
  'print.usage.dpi': '--dpi is for .png. Leave it out.',
  'print.usage.dpi-too-fine':
    '--dpi {dpi} would make a picture of more than 100 million pixels. Up to --dpi {most} fits.',
  'print.usage.dpi-too-large':
    '--dpi {dpi} would make a picture of more than 100 million pixels. Up to --dpi {most} fits, which is below the least: take a smaller --scale too.',
  'print.usage.scale-fit': '--scale fit needs paper to fit. Add --paper, or give a scale such as 2:1.',
  'print.usage.scale': '--scale {scale} is no scale. Write 1:1, 2:1, 1:5, or fit; from 1:100 to 50:1.',
  'print.usage.no-spread':
    'This job has no spread to draw. Add {example} to it, and see what fielded check says of it.',
  'print.usage.no-seasons':
    'This job has no seasons to draw. Add {example} to it, and see what fielded check says of it.',
  'print.usage.view-of-door': '--view {view} needs a door, and the job has none. Add it under doors, with its sizes.',
  'print.usage.view-of-corner':
    '--view corner shows rails coped to a sticking, and the job has none. Give frame.sticking, with frame.joint left out or of kind cope.',
  'print.usage.door': '--door {name}: there is no such door.',
  'print.usage.doors': 'There are {names}.',
  'print.usage.doors.none': 'The job has none.',

  'print.usage.shaped-door': '--door {name}: there is no such door with a shaped head.',
  'print.usage.cut-of-bearing': '--cut says which cut --bearing is for. Add --bearing, or leave it out.',
  'print.usage.bearing-of-panel': '--bearing is for the panel: take it out, or --part {part}.',
  'print.usage.bearing-without-head':
    '--bearing needs a cut that names a head of the shop: its own bearing is not known.',
  'print.usage.bearing': '--bearing {bearing}: write the diameter of the bearing, such as 60 or 2-1/2 in.',
  'print.usage.headless-cut': '--cut {name}: there is no such cut with a head.',

  'print.usage.several-cuts': 'There are several cuts: say which with --cut.',
  'print.usage.cut': '--cut {name}: there is no such cut.',
  'print.usage.several-knives': 'There are several: say which with --name.',
  'print.usage.name-of-cut': '--name {name}: there is no such cut.',
  'print.usage.name-of-knife': '--name {name}: there is no such knife.',
  'print.usage.of-orders': '--{option} is for orders. Write a .pdf or .html with -o, or leave it out.',
  'print.usage.paper-of-pages': '--paper is for pages. Write a {endings:said} with -o, or leave it out.',
  'print.usage.part-of-order': '--part is for drawings and figures: an order has both knife and limiter. Leave it out.',

  'print.usage.solve': 'solve needs --for FIGURE=VALUE and --by SIZE.',
  'print.usage.for': '--for {asked} has no value. Write it as --for clearance=0.2.',
  'print.usage.unknown-figure': '{name} is not a figure of this job: it knows {known}.',
  'print.usage.unknown-figure.near': '{name} is not a figure of this job: did you mean {near}?',
  'print.usage.unknown-size': '{name} is not a size to set of this job: it knows {known}.',
  'print.usage.unknown-size.near': '{name} is not a size to set of this job: did you mean {near}?',
  'print.usage.for-length': '--for {asked}: the value is {read}. Write {instead}.',

  'print.usage.no-rates': '{file}: a quote needs a shop file with rates and their currency.',
  'print.usage.date': '--date: {date} is not a date such as 2026-03-14.',
  'print.usage.port': 'the port {port} is taken. Choose another, or leave --port out.',
} as const;
