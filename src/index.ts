/**
 * The public API: a scenario in, a run, its figures and its report out.
 *
 * @module countertorque
 */

// assess
export type { LimitKey } from './assess/againstLimit.ts';
export { CRITERION_KEYS, type Criterion, type CriterionKey, type Outcome } from './assess/criterion.ts';
export { CRITERION_DEFINITIONS, type CriterionDefinition } from './assess/criterionDefinitions.ts';
export type { AdiabaticRises } from './assess/heat/adiabaticRises.ts';
export type { DutyType } from './assess/heat/dutyType.ts';
export type { HeatPulse, OperationHeat } from './assess/heat/heat.ts';
export type { Heating, NoLoadStarts } from './assess/heat/heating.ts';
export type { PeriodicState } from './assess/heat/periodicState.ts';
export type { PermissibleOperations } from './assess/heat/permissibleOperations.ts';
export type {
  NodeName,
  ParameterOrigin,
  PerNode,
  ThermalLink,
  ThermalModel,
  ThermalNode,
  ThermalParameter,
} from './assess/heat/thermalNetwork.ts';
export type { RelayJudgement } from './assess/protection/relayJudgement.ts';
export type { RelayUse } from './assess/protection/stopsUntilTrip.ts';
export type { OperationCurrent, TimeCurrentData, TimeCurrentPoint } from './assess/protection/timeCurrent.ts';
export type { WithstandShare, WithstandUse } from './assess/protection/withstandUse.ts';
export { type SourcedValue, STANDARD_LIMITS } from './assess/standardLimits.ts';
export type { CoastDown } from './assess/stop/coastDown.ts';
export type { FailureConsequences } from './assess/stop/failureConsequences.ts';
export type { Standstill } from './assess/stop/standstill.ts';
export { type Suitability, suitability } from './assess/suitability.ts';
export type { Verdict, VerdictOutcome } from './assess/verdict.ts';
export type { BreakingCategory } from './assess/wear/breakingCategory.ts';
export type { WearPlant } from './assess/wear/breakingWear.ts';
export { type ContactLife, type LifeBasis, lifeAtBreaking } from './assess/wear/contactLife.ts';
export { contactWear } from './assess/wear/contactWear.ts';
export {
  type BreakingOccasion,
  type BreakingWear,
  type ContactorWear,
  type ContactWear,
  type CountRange,
  type DateRange,
  type MakingOccasion,
  WEAR_EVENTS,
  type WearEvent,
} from './assess/wear/contactWearTypes.ts';
export type { MakeErosion } from './assess/wear/makeErosion.ts';
// estimate
export { type CircuitVariant, equallyGoodCircuits } from './estimate/equallyGoodCircuits.ts';
export { circuitEstimator } from './estimate/estimator.ts';
export { parseScenario } from './estimate/parseScenario.ts';
export { parseScenarioWithOrigins } from './estimate/parseScenarioWithOrigins.ts';
// machine
export { breakdown } from './machine/breakdown.ts';
export {
  type CharacteristicCurve,
  type CharacteristicMarks,
  type CharacteristicOptions,
  type CharacteristicPoint,
  characteristicCurve,
} from './machine/characteristicCurve.ts';
export type { Inserted } from './machine/inserted.ts';
export { openCircuitTime } from './machine/openCircuitTime.ts';
export { type RatedOrigin, type RatedPoint, ratedPoint } from './machine/ratedPoint.ts';
export { type SteadyState, type SteadySupply, steadyState } from './machine/steadyState.ts';
export { twoPoleSteadyState } from './machine/twoPoleSteadyState.ts';
// measure
export { type ClampReading, clampReading, type PhaseReading } from './measure/clampReading.ts';
export type { ControlFinding } from './measure/controlFindings.ts';
export type { EnergyLedger } from './measure/energyLedger.ts';
export type { BreakingPole, MakingPole, MeanBreaking, MeanDuties, MeanMaking } from './measure/meanDuties.ts';
export { measure } from './measure/measure.ts';
export { METRIC_KEYS, type Metric, type MetricKey, type Metrics } from './measure/metric.ts';
export type { Operations, ReversalOperation, StartOperation } from './measure/operations.ts';
export { integral, type Quadrature, quadratureOf, type Stretch } from './measure/quadrature.ts';
export type { RunResult } from './measure/result.ts';
export { INTEGRANDS, type Integrand } from './measure/signals.ts';
export { simulate } from './measure/simulate.ts';
export type { StopFigures } from './measure/stopFigures.ts';
// numeric
export type { Complex } from './numeric/complex.ts';
// recording
export { type LoggedOperation, type OperationLog, parseOperationLog } from './recording/operationLog.ts';
export { planTable } from './recording/planTable.ts';
export type { LogTime } from './recording/readTime.ts';
export { surveyCsv } from './recording/surveyCsv.ts';
export { surveyParquet } from './recording/surveyParquet.ts';
export { type LogWear, type WearOfLog, wearOfLog } from './recording/wearOfLog.ts';
// report
export { buildReportFiles, type ReportFile } from './report/buildReportFiles.ts';
export { buildSuitabilityFiles } from './report/buildSuitabilityFiles.ts';
export {
  type Curve,
  type CurvesOptions,
  type CurvesPanel,
  curvesFigure,
} from './report/curvesFigure.ts';
export { energyFigure } from './report/energyFigure.ts';
export type * from './report/figureSpec.ts';
export type { UnitSystem } from './report/formatQuantity.ts';
export type { JudgedRun } from './report/judgedRun.ts';
export type { JudgementOptions as JudgementReportOptions } from './report/judgement/judgementOptions.ts';
export type { LaboratoryOptions, LaboratoryPageOptions } from './report/laboratory/laboratoryOptions.ts';
export { renderLaboratoryCsv } from './report/laboratory/renderLaboratoryCsv.ts';
export { renderLaboratoryHtml } from './report/laboratory/renderLaboratoryHtml.ts';
export type { Quantity, Theme } from './report/palette.ts';
export {
  type ComparedJudgement,
  type CompareOptions,
  renderCompareHtml,
} from './report/renderCompareHtml.ts';
export { renderPlanCalendar } from './report/renderPlanCalendar.ts';
export { renderPlanCsv } from './report/renderPlanCsv.ts';
export { type PlanOptions, renderPlanHtml } from './report/renderPlanHtml.ts';
export { type ReportOptions, renderReportHtml } from './report/renderReportHtml.ts';
export { renderSheetCsv } from './report/renderSheetCsv.ts';
export { renderSheetHtml, type SheetOptions } from './report/renderSheetHtml.ts';
export { renderSuitabilityHtml } from './report/renderSuitabilityHtml.ts';
export { renderSuitabilityJson } from './report/renderSuitabilityJson.ts';
export {
  renderSuitabilityTerminal,
  type SuitabilityTerminalOptions,
} from './report/renderSuitabilityTerminal.ts';
export { renderSummaryJson, type SummaryOptions } from './report/renderSummaryJson.ts';
export { renderSvg, type SvgOptions } from './report/renderSvg.ts';
export { renderTerminal, type TerminalOptions } from './report/renderTerminal.ts';
export { renderTraceCsv, type TraceOptions } from './report/renderTraceCsv.ts';
export type { SummaryFile, SummaryMetric, SummarySegment } from './report/summaryFile.ts';
export type { BinnedField, BinnedMetric } from './report/survey/binnedSpread.ts';
export { buildSurveyFiles, type SurveyFile } from './report/survey/buildSurveyFiles.ts';
export { renderSurveyHtml } from './report/survey/renderSurveyHtml.ts';
export { renderSurveyTerminal } from './report/survey/renderSurveyTerminal.ts';
export { type SurveyFindings, surveyFindings } from './report/survey/surveyFindings.ts';
export type { SurveyOptions as SurveyReportOptions } from './report/survey/surveyOptions.ts';
export type { SurveyShard } from './report/survey/surveyWords.ts';
export type { SweepCurve } from './report/survey/sweepFigure.ts';
export { switchingFigures } from './report/switchingFigures.ts';
export { type FigureOptions, timeFigure } from './report/timeFigure.ts';
export { torqueSpeedFigure } from './report/torqueSpeedFigure.ts';
export type { SampleDensity } from './report/traces.ts';
export { renderWiring, type WiringOptions } from './report/wiring/renderWiring.ts';
export type { SymbolSet } from './report/wiring/symbolSet.ts';
// scenario
export { assertScenario } from './scenario/assertScenario.ts';
export type * from './scenario/nameplate.ts';
export type { StatedLockedRotorCurrent } from './scenario/nameplateInput.ts';
export type { Origin, OriginKind } from './scenario/origin.ts';
export { placeProblems } from './scenario/placeProblems.ts';
export { formatProblem, type Problem, type ProblemCode } from './scenario/problem.ts';
export type { ParseOptions } from './scenario/readScenario.ts';
export { renderScenario } from './scenario/renderScenario.ts';
export type { ScenarioWithOrigins } from './scenario/resolveScenario.ts';
export type * from './scenario/scenario.ts';
export { isCommand } from './scenario/scenario.ts';
export { ScenarioError } from './scenario/scenarioError.ts';
export { scenarioJsonSchema } from './scenario/scenarioJsonSchema.ts';
export { scenarioToYaml } from './scenario/scenarioToYaml.ts';
// shaft
export type { ShaftNote } from './shaft/reviewShaft.ts';
export type { GearEfficiencies, MotorLoss, Shaft } from './shaft/shaft.ts';
export type { SpeedPieces, TorquePiece } from './shaft/speedPieces.ts';
export { steadySpeed } from './shaft/steadySpeed.ts';
export { torsionalFrequency } from './shaft/torsionalFrequency.ts';
// simulate
export type { Channel, ChannelOf, ChannelValue, ThermalRecord } from './simulate/channels.ts';
export type { WorkCount } from './simulate/integrate.ts';
export { runTrajectory } from './simulate/run.ts';
export type { Blocked } from './simulate/shortCircuit.ts';
export { isSuccessful, type RunStatus, type RunStatusCode } from './simulate/status.ts';
export type { Point, RunEvent, RunEventKind, ShortCircuit, Trajectory } from './simulate/trajectory.ts';
// starter
export type {
  Branch as CoilBranch,
  CoilCircuit,
  CoilDevice,
  Contact,
  ControlCircuit,
  Device,
  InputDevice,
  Network as ContactNetwork,
} from './starter/control/controlCircuit.ts';
export { circuitOfStarter, controlCircuit } from './starter/control/schemes.ts';
export {
  checkInterlocks,
  type FaultVerdict,
  type InterlockReport,
  type PropertyVerdict,
  type Verdict as InterlockVerdict,
} from './starter/interlocks/checkInterlocks.ts';
export type { Counterexample } from './starter/interlocks/describePath.ts';
export type { PropertyId } from './starter/interlocks/property.ts';
export type { ContactorName } from './starter/starter.ts';
export type { StarterEvent } from './starter/starterEvent.ts';
// survey
export {
  type Alternative,
  STOP_NAMES,
  type StopCost,
  type StopName,
} from './survey/alternatives/alternative.ts';
export {
  type CommissioningRow,
  type CommissioningSheet,
  commissioningSheet,
  type RowResult as CommissioningResult,
  type RowVerdict as CommissioningVerdict,
} from './survey/commissioning/commissioningSheet.ts';
export type { Readings as InstrumentReadings, SpeedReading } from './survey/commissioning/readings.ts';
export type { FinalState as TestEnd } from './survey/commissioning/run.ts';
export type {
  Sequence as TestSequence,
  SequenceItem as TestSequenceItem,
} from './survey/commissioning/sequence.ts';
export type {
  CommissioningTest,
  Requirement as TestRequirement,
  TestGroup as CommissioningTestGroup,
  Timing as TestTiming,
} from './survey/commissioning/test.ts';
export { runList } from './survey/draws/runList.ts';
export type { Boundary } from './survey/inverse/boundary.ts';
export { EXTREME_NAMES, type Extreme, type ExtremeName } from './survey/inverse/extreme.ts';
export { type Judgement, type JudgementOptions, judgement } from './survey/judgement.ts';
export type { Instrument } from './survey/laboratory/instruments.ts';
export type {
  LaboratorySheet,
  LaboratoryStep,
  Prediction,
  RangePart,
  StepKey,
} from './survey/laboratory/laboratory.ts';
export { laboratorySheet } from './survey/laboratory/laboratorySheet.ts';
export type { LateSwitch } from './survey/laboratory/lateSwitch.ts';
export type { Pause } from './survey/laboratory/pause.ts';
export type { Tolerance, ToleranceKey } from './survey/laboratory/tolerances.ts';
export { type OpeningInstants, openingInstants } from './survey/openingInstants.ts';
export type {
  AssumptionEffect,
  AssumptionKey,
  ImpossibleStarter,
  KitDemand,
  MaintenancePlan,
  PlannedPart,
  PlannedStarter,
  UnplannedStarter,
  WearingPart,
} from './survey/plan/plan.ts';
export type {
  Inspection,
  PlanContactor,
  PlanDuty,
  PlanLoad,
  PlanMotor,
  PlanRow,
} from './survey/plan/planRow.ts';
export { planStarters } from './survey/plan/planStarters.ts';
export { simulatedWear } from './survey/plan/simulatedWear.ts';
export type {
  StarterWear,
  WearImpossible,
  WearNotFound,
  WearOfStarter,
  WearOutcome,
  WearPerOperation,
} from './survey/plan/starterWear.ts';
export { BAND_KEYS, type PlugBand, type PlugBands, plugBands } from './survey/plugBands.ts';
export { type Runner, runner } from './survey/runs/runner.ts';
export { scenarioOfRun } from './survey/runs/scenarioOfRun.ts';
export { readSurvey, type SurveyOptions } from './survey/spec/readSurvey.ts';
export type * from './survey/spec/survey.ts';
export { surveyJsonSchema } from './survey/spec/surveyJsonSchema.ts';
export type { Histogram } from './survey/spread/histogram.ts';
export { type MapAxis, type MapTable, mapOf, type SurveyMap } from './survey/spread/map.ts';
export type { RunValue } from './survey/spread/moments.ts';
export type { Quantile } from './survey/spread/orderedMetric.ts';
export type { ReasonGroup, Reasons } from './survey/spread/reasons.ts';
export type { RowSource } from './survey/spread/rowSource.ts';
export {
  type FieldSensitivity,
  type MetricSensitivity,
  type Sensitivity,
  type SensitivityIndex,
  sensitivityOf,
} from './survey/spread/sensitivity.ts';
export { type MetricSummary, type SurveySummary, summaryOf } from './survey/spread/summary.ts';
export { type Tornado, type TornadoBar, tornadoOf } from './survey/spread/tornado.ts';
export type { VerdictChange, VerdictLine } from './survey/spread/verdictChanges.ts';
export type { DecisiveCount, VerdictCounts } from './survey/spread/verdictCounts.ts';
export { extremeOf, type FoundExtreme } from './survey/worst/extremeOf.ts';
export type { Stage as SearchStage } from './survey/worst/searchPlan.ts';
export { type WorstSearch, worstSearch } from './survey/worst/worstSearch.ts';
