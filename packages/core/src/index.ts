export {
  byJob,
  type CuttingList,
  type ForDoor,
  type ListedPanel,
  type ListedPart,
  makeCuttingList,
} from './door/cutting-list.ts';
export { type Guide, type MachineGuide, ringShortfall, templateOffset } from './door/guide.ts';
export { type TemplatePart, templateOutline } from './door/template.ts';
export { acceptJob, type GivenCut, type GivenJob, type GivenProfile } from './job/given-job.ts';
export type * from './job/job.ts';
export { cutOutline, edgeOutline } from './joint/outline-path.ts';
export type { ClearedRegion } from './joint/strip-reader.ts';
export { parseAngle } from './measure/angle.ts';

export { formatLength, formatNumber } from './measure/format.ts';
export { measureLength, parseLength, toMillimetres, type Units } from './measure/length.ts';
export type { Misreading } from './measure/misread.ts';
export { ALL_ENGLISH as ENGLISH } from './problem/all-english.ts';
export { type Code, FAULT_CODES, type FaultCode, type ProblemCode, SEVERITIES } from './problem/codes.ts';
export type { Language, NamePlace, Voice } from './problem/language.ts';
export type {
  Advice,
  Fault,
  Figures,
  FileValue,
  FileWord,
  Problem,
  Said,
  Severity,
  Subject,
} from './problem/problem.ts';
export { type Catalogue, type ReadLanguage, readLanguage } from './problem/read-language.ts';
export { phrase, say, translate } from './problem/say.ts';
export { sayMisread } from './problem/say-fault.ts';
export { createSpeaker, type FiguresOf, type Speaker } from './problem/speaker.ts';
export { sayTerm, type Term, type Terms, termsOf } from './problem/terms.ts';
export { type CountedJob, countJob, makeQuote, type QuoteOptions, quoteJob } from './quote/make-quote.ts';
export { decimalOf, formatMoney, formatPrice, minorDigits } from './quote/money.ts';
export { MOST_AMOUNT, priceQuantities, quantityShown } from './quote/price.ts';
export { listPromises, type Promises } from './quote/promises.ts';
export { countQuantities } from './quote/quantities.ts';
export type * from './quote/quote-report.ts';
export { QUOTE_WORDS, type QuoteWords } from './quote/quote-words.ts';
export type { Refusal } from './reading/fault-desk.ts';
export { sayFault } from './reading/fault-words.ts';
export { readLanguageText, writeLanguage } from './reading/language-file.ts';
export { findNearest } from './reading/nearest.ts';
export { readQuoteWords, type WordsFault, writeQuoteWords } from './reading/quote-words.ts';
export {
  type FileData,
  type ReadJob,
  type ReadOptions,
  type ReadShop,
  readFileData,
  readJob,
  readShop,
} from './reading/read.ts';
export { createJobReader, type JobReader, readJobData, readShopData } from './reading/read-data.ts';
export { assumedRules } from './report/assumed-rules.ts';
export { type Sample, sampleBoard } from './report/board.ts';
export { sayCurve } from './report/curve-words.ts';
export { answerDoors, type DoorsAnswer } from './report/doors.ts';
export {
  type Evaluated,
  type EvaluateOptions,
  evaluate,
  evaluateInSteps,
  evaluateJoint,
  evaluateWithPlan,
} from './report/evaluate.ts';
export { answerJoint } from './report/joint.ts';
export { answerKnives, type Knives, reportShopKnives } from './report/knives.ts';
export { type KnifeMatch, matchKnives, sweptOutline } from './report/match.ts';
export { answerPlan } from './report/plan.ts';
export { listKnifeProblems, listPlanProblems } from './report/plan-problems.ts';
export { sayCut, sayNotChecked, sayPlanCaution, sayStartChecks, sayStep } from './report/plan-words.ts';
export { prepareJob } from './report/prepare.ts';
export { type PreparedJob, prepareReadJob } from './report/prepared-job.ts';
export type * from './report/report.ts';
export { adviseRuns, listRuns } from './report/run-advice.ts';
export { answerSeasons, type Seasons } from './report/seasons.ts';
export { sayShare, shareSentence } from './report/share-words.ts';
export { answerSpread, type Spread, simulateJob } from './report/spread.ts';
export { type Stated, stateFit, stateRun } from './report/statements.ts';
export { runToEnd } from './report/steps.ts';
export { facePhrase, goesTogether, verdictSentence, verdictWord } from './report/verdict-sentence.ts';
export type { SeasonReport, SeasonState } from './season/seasons.ts';
export type { Planned } from './setup/make-plan.ts';
export type * from './setup/plan.ts';
export type * from './setup/set-up-report.ts';
export type { Maker, PricedRates, Rates } from './shop/rates.ts';
export type { Change } from './solve/compare-jobs.ts';
export { type Solved, solve, type Wanted } from './solve/solve.ts';
export { type SettingOfTwo, type SolvedByTwo, solveByTwo, type WantedByTwo } from './solve/solve-two.ts';
export { UnknownName } from './solve/unknown-name.ts';
export type { Arrangement } from './spread/arrangements.ts';
export { ONE_JOINT, type SpreadReport, withSimulated } from './spread/report.ts';
export type { Simulation, SimulationOptions } from './spread/simulation.ts';
export type { SourceShare, Stack } from './spread/stack.ts';
export { woodDensity } from './wood/density.ts';
export { equilibriumMoisture } from './wood/moisture.ts';
export { moveWood } from './wood/movement.ts';
export { findSpecies, listSpecies, nearestSpecies, type Species } from './wood/species.ts';
export { type Written, writeValues } from './writing/write-values.ts';
