const GENERAL = `fielded: the section, the fit and the drawing of raised-and-fielded panels

  fielded check JOB…     say whether the tongue goes into the groove, and every figure
  fielded draw JOB       draw the joint, the cuts, the door, sheets: SVG, PDF, PNG, HTML
  fielded solve JOB      find the setting that gives the fit wanted
  fielded knife JOB|SHOP what to grind: drawing, DXF or ordinates of a knife or limiter
  fielded board SHOP     draw the shop's sample board: every knife's section at one scale
  fielded open [JOB]     the page: change sizes on the drawing itself, in a browser
  fielded help COMMAND   say more about one of them
  fielded --version

JOB is a file in YAML or JSON; docs/job-file.md describes it and examples/ has some.
Exit status: 0 all is well, 1 a job has an error, 2 an input could not be read.
`;

const CHECK = `fielded check JOB… [--json] [--shop FILE]
                    [--simulate N] [--seed N] [--uniform]

Checks jobs: what the cuts leave, the tongue, the fit, the verdict, and what to do about
every problem. One job gives a sheet to pin up by the machine; several, or a folder and
the folders in it, give a table of them all.

  --json        print the report as JSON, lengths in mm at full precision;
                several jobs give a list of objects, each with its file
  --shop FILE   use this shop file, wherever it is, instead of the one a job names
  --simulate N  make N joints at random with the job's spread, 100,000 if not said;
                a long run shows how far it is, and Ctrl-C ends it with what there is
  --seed N      other joints than those of seed 1
  --uniform     spread each ± evenly instead of normally, three deviations to the ±

Exit status: the greatest of 0 all is well, 1 a job has an error, 2 one could not be
read; its faults then stand on standard error as FILE:LINE:COLUMN lines.
`;

const DRAW = `fielded draw JOB [--view VIEW] [-o FILE.svg|.pdf|.png|.html] [--paper a4 ...]

Draws one job true to scale, with the dimensions that decide and the verdict in words.
Problems found are listed on standard error; the drawing is made all the same.

  --view VIEW          joint: the panel in the frame's groove; the default
                       section: the panel's edge by itself
                       detail: tongue and groove enlarged, with what is free on all sides
                       cuts: what each cut takes, in running order, as the panel lies
                       panel, door: the front of a door's panel, of the door
                       sheet: all that a bench needs, on sheets with a title block
                       spread, season: charts of a job's spread, of its seasons
  -o, --output FILE    by its ending: .svg, .pdf, .png, or .html to put into a page or a
                       quote. Folders are made if need be; written whole or not at all.
                       Without it, SVG goes to standard output
  --scale 2:1|fit      keep to a scale: what is too wide is broken, not shrunk; fit takes
                       the largest standard scale that fits the paper
  --units mm|in|both   other units than the job's own; both puts the others under the line
  --door NAME          which door; the first, if not said
  --bare               only the drawing, nothing under it
  --theme light|dark   for screens; without it, ink on white
  --text outlines      letters as outlines, for office programs that lack the font (.svg)
  --font FILE          for letters that the shipped font lacks, before this machine's own
                       fonts (.pdf, .png, outlines); letters that none has are named
  --dpi N              how fine a .png is: 200 if not said
  --shop FILE          use this shop file instead of the one the job names
  --force              replace a file that is there already and fielded did not write

On paper, with a title block and a bar to check the print with a rule:
  --paper SIZE         a4, letter, a3 or tabloid; --landscape lays it across
  --sheet N            only that sheet; a .pdf or .html holds them all
  --date WORDS, --drawn-by NAME    as they shall stand in the title block

Exit status: 0 drawn, 1 drawn and the job has an error, 2 nothing written.
`;

const KNIFE = `fielded knife JOB|SHOP [--name N] [--part knife|limiter] [-o FILE.svg|.dxf|.csv]

Works out what to grind so that the wood comes out as drawn: the outline on the steel,
stretched by the rake and shear of the head, and what of it will rub. For a cut of a job
that names its head, or a knife of a shop file that does.

  --name N             the cut's name or the knife's; needed where there are several
  --part knife         the knife; the default
  --part limiter       the limiter that stands behind its edge
  -o, --output FILE    by its ending: .svg a drawing at full size with ordinates,
                       .dxf lines and arcs in millimetres, .csv the ordinates;
                       without it, the drawing goes to standard output
  --shop FILE          use this shop file instead of the one the job names
  --force              replace a file that is there already and fielded did not write

s runs along the tip line and grows with depth; t runs from it towards the axis. The
drawing shows the cutting face; DXF and CSV have s to the right, whichever face that is.

Exit status: 0 written, 1 the knife has an error, 2 an input could not be read.
`;

const BOARD = `fielded board SHOP [--title WORDS] [-o FILE.svg|.html]

Draws the shop's sample board: every knife's section at full size with its name and main
sizes, to hang on the wall or to show to clients.

  --title WORDS        what stands above it
  -o, --output FILE    .svg one drawing, .html a page that prints on A4 sheets;
                       without it, the drawing goes to standard output
  --force              replace a file that is there already and fielded did not write

Exit status: 0 written, 1 there is nothing to show, 2 an input could not be read.
`;

const SOLVE = `fielded solve JOB --for FIGURE=VALUE --by SIZE [--json] [--write] [--shop FILE]

Finds the setting of one size that gives a figure of the joint its wanted value: what to
set, how far to move and which way, what else changes. Where none gives it, says why and
how near it can come.

  --for FIGURE=VALUE   clearance=0.2, frontFace=0, visibleMargin=30, deepestInsertion=11,
                       bottomGap=2, season.dampest.bottomGap=1, ...; lengths as in a job
  --by SIZE            a cut by its name, "back relief.depth" or "raise.reach", or
                       panel.thickness, frame.swellGap, frame.groove.width, ...
  --json               print the report with the answer in it as JSON
  --write              put the setting into the job file; its comments stay as they are
  --shop FILE          use this shop file instead of the one the job names

Exit status: 0 a setting was found, 1 there is none, 2 wrong use or a file could not be
read or written.
`;

const OPEN = `fielded open [JOB] [--no-browser] [--port NUMBER]

Serves the page on this machine alone, prints its address and opens it in the browser;
with a job, that job lies on it. The job file itself is only read: save from the page.
Ctrl+C stops it.

  --no-browser     only serve, and print the address
  --port NUMBER    at this port; otherwise 8347, or any that is free where that is taken.
                   What the browser keeps of your jobs belongs to the address

Exit status: 0 stopped, 2 wrong use or the job could not be read.
`;

/** What help there is, by the command it is about; '' is the overview. */
export const HELP: Readonly<Record<string, string>> = {
  '': GENERAL,
  check: CHECK,
  draw: DRAW,
  solve: SOLVE,
  knife: KNIFE,
  board: BOARD,
  open: OPEN,
};
