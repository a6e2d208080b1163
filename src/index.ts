/** The public API: a scenario in, a run, its figures and its report out. */

// assess
export { CRITERION_KEYS, type Criterion, type CriterionKey, type Outcome } from './assess/criterion.ts';
export { STANDARD_LIMITS } from './assess/standardLimits.ts';
export { type Suitability, suitability } from './assess/suitability.ts';
export type { Verdict } from './assess/verdict.ts';
export type { ContactWear } from './assess/wear/contactWearTypes.ts';
// estimate
export { circuitEstimator } from './estimate/estimator.ts';
export { parseScenario } from './estimate/parseScenario.ts';
export { parseScenarioWithOrigins } from './estimate/parseScenarioWithOrigins.ts';
export { breakdown } from './machine/breakdown.ts';
// machine
export {
  type CharacteristicCurve,
  characteristicCurve,
} from './machine/characteristicCurve.ts';
export { type RatedPoint, ratedPoint } from './machine/ratedPoint.ts';
export { type SteadyState, steadyState } from './machine/steadyState.ts';
export { twoPoleSteadyState } from './machine/twoPoleSteadyState.ts';
// measure
export { type ClampReading, clampReading } from './measure/clampReading.ts';
export type { ControlFinding } from './measure/controlFindings.ts';
export type { EnergyLedger } from './measure/energyLedger.ts';
export { measure } from './measure/measure.ts';
export { METRIC_KEYS, type Metric, type MetricKey, type Metrics } from './measure/metric.ts';
export type { RunResult } from './measure/result.ts';
export { simulate } from './measure/simulate.ts';
// recording
export { parseOperationLog } from './recording/operationLog.ts';
export { planTable } from './recording/planTable.ts';
export { surveyCsv } from './recording/surveyCsv.ts';
export { surveyParquet } from './recording/surveyParquet.ts';
export { wearOfLog } from './recording/wearOfLog.ts';
// report
export { buildReportFiles, type ReportFile } from './report/buildReportFiles.ts';
export { buildSuitabilityFiles } from './report/buildSuitabilityFiles.ts';
export { renderCompareHtml } from './report/renderCompareHtml.ts';
export { renderPlanCalendar } from './report/renderPlanCalendar.ts';
export { renderPlanCsv } from './report/renderPlanCsv.ts';
export { type PlanOptions, renderPlanHtml } from './report/renderPlanHtml.ts';
export { renderReportHtml } from './report/renderReportHtml.ts';
export { renderSheetCsv } from './report/renderSheetCsv.ts';
export { renderSheetHtml } from './report/renderSheetHtml.ts';
export { renderSuitabilityHtml } from './report/renderSuitabilityHtml.ts';
export { renderSuitabilityJson } from './report/renderSuitabilityJson.ts';
export { renderSuitabilityTerminal } from './report/renderSuitabilityTerminal.ts';
export { renderSummaryJson } from './report/renderSummaryJson.ts';
export { renderTerminal } from './report/renderTerminal.ts';
export { renderTraceCsv } from './report/renderTraceCsv.ts';
export type { SummaryFile } from './report/summaryFile.ts';
export { buildSurveyFiles, type SurveyFile } from './report/survey/buildSurveyFiles.ts';
export { renderSurveyHtml } from './report/survey/renderSurveyHtml.ts';
export { renderSurveyTerminal } from './report/survey/renderSurveyTerminal.ts';
export type { SurveyOptions as SurveyReportOptions } from './report/survey/surveyOptions.ts';
export { renderWiring } from './report/wiring/renderWiring.ts';
// scenario
export { assertScenario } from './scenario/assertScenario.ts';
export type * from './scenario/nameplate.ts';
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
export { steadySpeed } from './shaft/steadySpeed.ts';
export { torsionalFrequency } from './shaft/torsionalFrequency.ts';
// simulate
export { runTrajectory } from './simulate/run.ts';
export { isSuccessful, type RunStatus, type RunStatusCode } from './simulate/status.ts';
export type { Point, RunEvent, ShortCircuit, Trajectory } from './simulate/trajectory.ts';
// starter
export type { ControlCircuit } from './starter/control/controlCircuit.ts';
export { circuitOfStarter, controlCircuit } from './starter/control/schemes.ts';
export { checkInterlocks, type InterlockReport } from './starter/interlocks/checkInterlocks.ts';
// survey
export type { Alternative, StopName } from './survey/alternatives/alternative.ts';
export { commissioningSheet } from './survey/commissioning/commissioningSheet.ts';
export { runList } from './survey/draws/runList.ts';
export type { Extreme, ExtremeName } from './survey/inverse/extreme.ts';
export { type Judgement, type JudgementOptions, judgement } from './survey/judgement.ts';
export { openingInstants } from './survey/openingInstants.ts';
export type { MaintenancePlan, PlannedPart, PlannedStarter } from './survey/plan/plan.ts';
export type { PlanRow } from './survey/plan/planRow.ts';
export { planStarters } from './survey/plan/planStarters.ts';
export { simulatedWear } from './survey/plan/simulatedWear.ts';
export { BAND_KEYS, type PlugBand, type PlugBands, plugBands } from './survey/plugBands.ts';
export { type Runner, runner } from './survey/runs/runner.ts';
export { scenarioOfRun } from './survey/runs/scenarioOfRun.ts';
export { readSurvey, type SurveyOptions } from './survey/spec/readSurvey.ts';
export type * from './survey/spec/survey.ts';
export { surveyJsonSchema } from './survey/spec/surveyJsonSchema.ts';
export { mapOf, type SurveyMap } from './survey/spread/map.ts';
export type { RowSource } from './survey/spread/rowSource.ts';
export { type Sensitivity, sensitivityOf } from './survey/spread/sensitivity.ts';
export { type SurveySummary, summaryOf } from './survey/spread/summary.ts';
export { type Tornado, tornadoOf } from './survey/spread/tornado.ts';
export { extremeOf, type FoundExtreme } from './survey/worst/extremeOf.ts';
export { worstSearch } from './survey/worst/worstSearch.ts';
