export { answerSheet } from '../../report/lesson/answerSheet.ts';
export { renderAnswerSheetCsv } from '../../report/lesson/renderAnswerSheetCsv.ts';
export { renderAnswerSheetHtml } from '../../report/lesson/renderAnswerSheetHtml.ts';
export { renderHandoutHtml } from '../../report/lesson/renderHandoutHtml.ts';
