/** The public interface on one screen: what the command line, the page and scripts build on. */
export { DuctEnd } from './boundary/ductEnd.ts';
export {
  areaStep,
  closedEnd,
  collector,
  constriction,
  junction,
  mouth,
  type Node,
  nonReflecting,
  openEnd,
  orifice,
  valve,
} from './boundary/node.ts';
export { OpenAir, type RestState, Tapping, Volume } from './boundary/reservoir.ts';
export { type Band, bandMean, inBand } from './decision/band.ts';
export { brakeTorque } from './decision/brakeTorque.ts';
export {
  type Calibration,
  type CalibrationRefusal,
  type FittedUnknown,
  isRefusal,
} from './decision/calibration.ts';
export type { Reason } from './decision/choice.ts';
export type { Comparison } from './decision/comparison.ts';
export type { FloorMargin } from './decision/floor.ts';
export { gearChangeBands } from './decision/gearChange.ts';
export { type LengthUnit, METRES } from './decision/lengthUnit.ts';
export { flattestPair, type MixedLengths, mixedLengths } from './decision/mixedLengths.ts';
export { type GainAndPrice, paretoSet } from './decision/pareto.ts';
export type { Estimate, Spread } from './decision/sampleFigures.ts';
export { type Fit, fits, type ShelfAnswer, shelfAnswer } from './decision/shelf.ts';
export {
  bandsOf,
  type Floor,
  inTarget,
  type Score,
  scores,
  type Target,
  targetMean,
  type WeightedBand,
} from './decision/target.ts';
export type { WeighedLength } from './decision/tradeOff.ts';
export { efficiencies, type TradeOff, tradeOff } from './decision/tradeOff.ts';
export type {
  InputEffect,
  InputSample,
  LengthSpread,
  UncertaintyQuestion,
  UncertaintyStudy,
} from './decision/uncertainty.ts';
export type { VariantStudy, VariedKey, WeighedVariant } from './decision/variants.ts';
export { Duct, type DuctOptions, type InitialState } from './duct/duct.ts';
export { type Profile, profileOf } from './duct/profile.ts';
export { type Front, frontFrom } from './engine/front.ts';
export { type Moment, Network } from './engine/network.ts';
export { type CylinderFigures, type PointResult, runPoint } from './engine/point.ts';
export {
  STATIONS,
  type Station,
  type StationTrace,
  type Trace,
  tracePoint,
} from './engine/trace.ts';
export {
  ComputationError,
  InputError,
  issueText,
  NonPhysicalStateError,
  ScenarioError,
  type ScenarioIssue,
} from './errors.ts';
export { Gas, perfectGas } from './gas/gas.ts';
export { allSettled } from './report/audit.ts';
export { CAUTIONS, KNOWN, NOT_KNOWN } from './report/cautions.ts';
export { documentHead } from './report/document.ts';
export { type ErrorDocument, errorDocument } from './report/errorDocument.ts';
export { inTwo } from './report/inTwo.ts';
export { lengthDrawing } from './report/lengthDrawing.ts';
export { LENGTH_DRAWING, LENGTH_MEANING } from './report/lengthMeaning.ts';
export type { Mark, Plot, PlotLook, Series, Tiles } from './report/plot.ts';
export { axes, plotted } from './report/plot.ts';
export * as quantities from './report/quantities.ts';
export { type Report, reportHtml, reportText, type Section } from './report/report.ts';
export { defaultsTable } from './report/sections.ts';
export { svgPlot } from './report/svgPlot.ts';
export {
  asCsv,
  asGrid,
  type Column,
  column,
  csvPieces,
  type Filed,
  filedColumns,
  type LongTable,
  piecesOf,
  type Table,
  tableOf,
  type Value,
  words,
} from './report/table.ts';
export { throttleNamed } from './report/throttleNames.ts';
export { throttlePath } from './report/throttleOutline.ts';
export {
  type DoubtfulInput,
  type DoubtSample,
  doubtfulInputs,
  doubtSample,
} from './scenario/doubt.ts';
export type { FactSection } from './scenario/facts.ts';
export { scenarioHash } from './scenario/hash.ts';
export { type MeasuredRun, readMeasuredRun } from './scenario/measuredRun.ts';
export { type Offer, type OfferedSection, offersOf } from './scenario/offers.ts';
export {
  OWN_FIGURES,
  type OwnEngine,
  type OwnIssue,
  ownEngine,
} from './scenario/ownEngine.ts';
export type { Axis, RangeProblem } from './scenario/range.ts';
export { readScenario } from './scenario/read.ts';
export {
  readValue,
  readVariedKey,
  type ScenarioPath,
  shortestLength,
} from './scenario/readValue.ts';
export type { Scenario } from './scenario/resolve.ts';
export { FIGURE_GROUPS, type FigureField, isCondition, mayGo } from './scenario/schema.ts';
export { type Uncertainty, USUAL_UNCERTAINTY } from './scenario/sections/uncertainty.ts';
export {
  changedText,
  type ScenarioUnknown,
  scenarioUnknowns,
  UNKNOWN_NAMES,
  type UnknownName,
} from './scenario/unknowns.ts';
export { variantEngines } from './scenario/variants.ts';
export type { Sound } from './sound/samples.ts';
export type { EngineSpecification } from './specification.ts';
export { type AirboxStudy, airboxStudyOf } from './study/airbox/compute.ts';
export * as airboxFigures from './study/airbox/figure.ts';
export * as airboxTables from './study/airbox/tables.ts';
export { airboxSentences, BOX_CAUTIONS } from './study/airbox/tell.ts';
export { askedScrews } from './study/balance/ask.ts';
export { BALANCE_CAUTIONS } from './study/balance/cautions.ts';
export { airPlot } from './study/balance/figure.ts';
export { type ScrewsStudy, screwsStudy } from './study/balance/screws.ts';
export { type SpreadStudy, spreadStudy } from './study/balance/spread.ts';
export * as balanceTables from './study/balance/tables.ts';
export { screwsSentences } from './study/balance/tellScrews.ts';
export { spreadPlot, spreadSentences, spreadTable } from './study/balance/tellSpread.ts';
export { checkDocument } from './study/check/tables.ts';
export { checkReport } from './study/check/tell.ts';
export {
  type MeasuredQuestion,
  type MeasuredStudy,
  measuredStudy,
  type NoComparison,
} from './study/compare/compute.ts';
export { comparePlot } from './study/compare/figure.ts';
export { compareTable } from './study/compare/tables.ts';
export { type CompareWords, compareWords } from './study/compare/tell.ts';
export { drawnLine } from './study/curve/figure.ts';
export { curveDocument } from './study/curve/tables.ts';
export { curveSentences } from './study/curve/tell.ts';
export { type Doubt, doubtOf, uncertaintyStudy } from './study/doubt/compute.ts';
export { doubtPlot } from './study/doubt/figure.ts';
export { bandsTable, inputsTable } from './study/doubt/tables.ts';
export { uncertaintySentences } from './study/doubt/tell.ts';
export { type IdleStudy, idleStudyOf } from './study/idle/compute.ts';
export * as idleFigures from './study/idle/figure.ts';
export { type JoinedIdle, joinedIdleOf } from './study/idle/joined.ts';
export * as idleTables from './study/idle/tables.ts';
export { IDLE_CAUTIONS, idleSentences } from './study/idle/tell.ts';
export { STUDIES } from './study/index.ts';
export {
  type PlacementQuestion,
  type PlacementStudy,
  placementSettled,
  placementStudy,
} from './study/inject/compute.ts';
export * as injectFigures from './study/inject/figure.ts';
export * as injectTables from './study/inject/tables.ts';
export { FUEL_CAUTIONS, placementSentences } from './study/inject/tell.ts';
export {
  type LengthQuestion,
  type LengthStudy,
  lengthStudy,
  lengthsToRun,
} from './study/length/compute.ts';
export { mixedWords, shelfWords } from './study/length/offerWords.ts';
export { sweepReport } from './study/length/report.ts';
export { lengthsTable, studyCurves, sweepDocument } from './study/length/tables.ts';
export {
  type DecisionWords,
  decisionSentences,
  decisionWords,
  goodEnough,
} from './study/length/tell.ts';
export {
  type ListenQuestion,
  type ListenStudy,
  soundOf,
} from './study/listen/compute.ts';
export * as listenFigures from './study/listen/figure.ts';
export { mouthsInTheOpen } from './study/listen/source.ts';
export * as listenTables from './study/listen/tables.ts';
export { listenSentences, NOISE_CAUTIONS } from './study/listen/tell.ts';
export { loadQuestion } from './study/load/ask.ts';
export { fillingMap, type LoadStudy } from './study/load/compute.ts';
export * as loadFigures from './study/load/figure.ts';
export * as loadTables from './study/load/tables.ts';
export { LOAD_CAUTIONS, loadSentences } from './study/load/tell.ts';
export { meterQuestion } from './study/meter/ask.ts';
export { type MeterStudy, meterStudyOf } from './study/meter/compute.ts';
export * as meterFigures from './study/meter/figure.ts';
export * as meterTables from './study/meter/tables.ts';
export { METER_CAUTIONS, meterSentences } from './study/meter/tell.ts';
export { type PedalStudy, pedalStudyOf } from './study/pedal/compute.ts';
export * as pedalFigures from './study/pedal/figure.ts';
export * as pedalTables from './study/pedal/tables.ts';
export { PEDAL_CAUTIONS, pedalSentences } from './study/pedal/tell.ts';
export {
  type PlenumQuestion,
  type PlenumStudy,
  plenumStudyOf,
} from './study/plenum/compute.ts';
export * as plenumFigures from './study/plenum/figure.ts';
export * as plenumTables from './study/plenum/tables.ts';
export { PLENUM_CAUTIONS, plenumSentences } from './study/plenum/tell.ts';
export { usualResponse } from './study/response/ask.ts';
export { type ResponseStudy, responseStudyOf } from './study/response/compute.ts';
export { responsePlot } from './study/response/figure.ts';
export { waysTable as responseTable } from './study/response/tables.ts';
export { RESPONSE_CAUTIONS, responseSentences } from './study/response/tell.ts';
export { type SignalStudy, sensorStudy } from './study/signal/compute.ts';
export { barDrawing } from './study/signal/drawing.ts';
export * as signalFigures from './study/signal/figure.ts';
export * as signalTables from './study/signal/tables.ts';
export { HOSE_CAUTIONS, signalSentences } from './study/signal/tell.ts';
export type { Asked, Findings, Job, OptionValues, Study, StudyOption } from './study/study.ts';
export { readTrims } from './study/trims/ask.ts';
export { mixtureTrims, type TrimsStudy } from './study/trims/compute.ts';
export { mixturePlot } from './study/trims/figure.ts';
export * as trimsTables from './study/trims/tables.ts';
export { TRIM_CAUTIONS, trimsSentences } from './study/trims/tell.ts';
export { withConditions } from './study/vary/ask.ts';
export { type VariedStudy, variantStudy } from './study/vary/compute.ts';
export { variantPlot } from './study/vary/figure.ts';
export { variantsTable } from './study/vary/tables.ts';
export { variantSentences } from './study/vary/tell.ts';
export { bandWords, floorWords } from './study/verdict.ts';
export { type WorthStudy, worthStudyOf } from './study/worth/compute.ts';
export { worthTable } from './study/worth/tables.ts';
export { worthSentences } from './study/worth/tell.ts';
export { batched, type SpeedsJob } from './sweep/batch.ts';
export {
  isFailure,
  type PointFailure,
  type PointJob,
  type PointOutcome,
  type PointRunner,
  runHere,
  runJob,
  runSpeedsJob,
  runSpeedsQuickly,
} from './sweep/runner.ts';
export { parseShard, runPoints, type Shard, shardPoints } from './sweep/shard.ts';
export {
  type FinishedPoints,
  jobKey,
  ownerLine,
  pointLine,
  readStore,
  type StoreOwner,
  storedRunner,
  unfinished,
} from './sweep/store.ts';
export {
  allPoints,
  type LengthCurve,
  runLengths,
  type SweepObserver,
  sweep,
  type TablePoint,
  tablePoints,
  withLength,
} from './sweep/sweep.ts';
export { type Tally, tallyOf } from './sweep/tally.ts';
export {
  type Computer,
  TASKS,
  type TaskInput,
  type TaskName,
  type TaskOutput,
} from './sweep/tasks.ts';
export { PROGRAM } from './version.ts';
