export { arcAngle } from './geometry/along.ts';
export { arc, type Chain, type Curve, line } from './geometry/curve.ts';
export { type ArcFit, FIT_TOLERANCE, fitArcs, type SmoothCurve } from './geometry/fit-arcs.ts';
export { fitBezier, type Point } from './geometry/fit-bezier.ts';
export { fitPoints, SCAN_TOLERANCE } from './geometry/fit-points.ts';
export { type Sample, sampleBoard } from './job/board.ts';
export { type EvaluateOptions, evaluate } from './job/evaluate.ts';
export type * from './job/job.ts';
export { type Knives, reportShopKnives } from './job/knives.ts';
export type * from './job/report.ts';
export { adviseRuns, listRuns } from './job/run-advice.ts';
export { sayShare, shareSentence } from './job/share-words.ts';
export { simulateJob } from './job/spread.ts';
export { facePhrase, verdictSentence, verdictWord } from './job/verdict-sentence.ts';
export { parseAngle } from './measure/angle.ts';
export type { Misreading } from './measure/figure.ts';
export { formatLength, formatNumber } from './measure/format.ts';
export { parseLength, toMillimetres, type Units } from './measure/length.ts';
export { cutOutline } from './panel/outline-path.ts';
export type { ClearedRegion } from './panel/section.ts';
export type { Fault, Problem, Severity } from './problem.ts';
export { readReportPath } from './profile/report-path.ts';
export { findNearest } from './reading/nearest.ts';
export {
  type FileData,
  type ReadJob,
  type ReadOptions,
  type ReadShop,
  readFileData,
  readJob,
  readShop,
} from './reading/read.ts';
export { readJobData, readShopData } from './reading/read-data.ts';
export type { FileValue } from './solve/settings.ts';
export { type Change, type Solved, solve, type Wanted } from './solve/solve.ts';
export { type Written, writeValues } from './solve/write-values.ts';
export type { Arrangement } from './spread/arrangements.ts';
export { type SpreadReport, withSimulated } from './spread/report.ts';
export type { SeasonReport, SeasonState } from './spread/seasons.ts';
export type { Simulation, SimulationOptions } from './spread/simulation.ts';
export type { SourceShare, Stack } from './spread/stack.ts';
export { woodDensity } from './wood/density.ts';
export { equilibriumMoisture } from './wood/moisture.ts';
export { moveWood } from './wood/movement.ts';
export { findSpecies, listSpecies, nearestSpecies, type Species } from './wood/species.ts';
