// What the paperwork room offers to the rooms above it.
export * from './schedule.ts';
export * from './schedule-csv.ts';
export * from './findings-text.ts';
