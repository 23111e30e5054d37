const GENERAL = `fielded: the section, the fit and the drawing of raised-and-fielded panels

  fielded check JOB…     say whether the tongue goes into the groove, and every figure
  fielded draw JOB       draw the panel's section or the joint, as SVG
  fielded help COMMAND   say more about one of them
  fielded --version

JOB is a file in YAML or JSON; docs/job-file.md describes it and examples/ has some.
Exit status: 0 all is well, 1 a job has an error, 2 an input could not be read.
`;

const CHECK = `fielded check JOB… [--json] [--shop FILE]

Checks jobs: what the cuts leave, the tongue, the fit, the verdict, and what to do about
every problem. One job gives a sheet to pin up by the machine; several, or a folder and
the folders in it, give a table of them all.

  --json        print the report as JSON, lengths in mm at full precision;
                several jobs give a list of objects, each with its file
  --shop FILE   use this shop file, wherever it is, instead of the one a job names

Exit status: the greatest of 0 all is well, 1 a job has an error, 2 one could not be
read; its faults then stand on standard error as FILE:LINE:COLUMN lines.
`;

const DRAW = `fielded draw JOB [--view section|joint] [-o FILE.svg] [--shop FILE]

Draws one job as SVG in true size on paper, scale stated, with the dimensions that
decide. Problems found are listed on standard error; the drawing is made all the same.

  --view section       the panel's edge by itself
  --view joint         the panel in the frame's groove; the default
  -o, --output FILE    write it there, making the folder if need be; written whole or
                       not at all. Without it, the drawing goes to standard output
  --shop FILE          use this shop file instead of the one the job names

Exit status: 0 drawn, 1 drawn and the job has an error, 2 nothing written.
`;

/** What help there is, by the command it is about; '' is the overview. */
export const HELP: Readonly<Record<string, string>> = { '': GENERAL, check: CHECK, draw: DRAW };
