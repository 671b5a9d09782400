// What the paperwork room offers to the rooms above it.
export * from './formula-start.ts';
export * from './schedule.ts';
export * from './schedule-csv.ts';
export * from './findings-text.ts';
export * from './schedule-xlsx.ts';
export * from './sheets/all-plan-sheets.ts';
export * from './sheets/bench-list.ts';
export * from './sheets/page.ts';
export * from './sheets/sheet.ts';
export * from './sheets/sheet-text.ts';
export * from './sheets/tags.ts';
export * from './sheets/test-sheets-on-paper.ts';
export * from './sheets/plan-sheets.ts';
export * from './sheets/table-csv.ts';
export * from './sheets/shelf-sheet.ts';
export { buildPage, type PageDrawing, type PageOptions } from './page/build-page.ts';
export { buildClubFacts, copyrightWord, type FactGroup } from './page/club-facts.ts';
